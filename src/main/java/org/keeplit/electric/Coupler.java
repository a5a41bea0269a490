package org.keeplit.electric;

import org.keeplit.network.Element;

/**
 * A transformer bank as the graph sees it. All vertex numbers; -1 stands for the earth.
 *
 * @param transformer the bank
 * @param primary the ends of each primary winding, {@code [winding][2]}
 * @param secondary the ends of each secondary winding, {@code [winding][2]}
 * @param from the primary vertex of each phase that it has
 * @param to the secondary vertices; where there are as many as primary ones, of the same phases
 * @param base for each secondary vertex the place in {@code from} of the phase that its angle follows from
 * @param hours how many hours its phase lags that one
 */
record Coupler(
        Element.Transformer transformer,
        int[][] primary,
        int[][] secondary,
        int[] from,
        int[] to,
        int[] base,
        int[] hours) {
    /** {@return whether each secondary phase hangs on the primary winding of its own} */
    boolean isWindingByWinding() {
        return primary.length == to.length && from.length == to.length && !transformer.centreTapped();
    }
}
