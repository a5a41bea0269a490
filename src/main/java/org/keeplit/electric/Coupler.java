package org.keeplit.electric;

import org.keeplit.network.Element;

/**
 * A transformer bank as the graph sees it. All vertex numbers; -1 stands for the earth.
 *
 * @param transformer the bank
 * @param primary the ends of each primary winding, {@code [winding][2]}
 * @param secondary the ends of each secondary winding, {@code [winding][2]}
 * @param from the primary vertex of each phase that it has
 * @param to the secondary vertex of the same phase
 */
record Coupler(Element.Transformer transformer, int[][] primary, int[][] secondary, int[] from, int[] to) {}
