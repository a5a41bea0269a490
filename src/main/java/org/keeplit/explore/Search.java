package org.keeplit.explore;

import org.keeplit.program.Orders;

/**
 * How a search saves work. Nothing here changes what is found, how long the shortest way is, or how many states there are; it
 * can all be switched off to see that.
 *
 * @param contracts whether regions of the network that nothing can split are drawn together before the search
 * @param numbered up to how many combinations of acts are numbered through before the search, see {@link Orders}
 */
public record Search(boolean contracts, int numbered) {
    /** What is used unless something else is asked for. */
    public static final Search USUAL = new Search(true, Orders.NUMBERED);
    /** Nothing saved. */
    public static final Search PLAIN = new Search(false, 0);
}
