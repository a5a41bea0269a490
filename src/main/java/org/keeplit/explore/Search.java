package org.keeplit.explore;

import org.keeplit.program.Orders;

/**
 * How a search saves work. Nothing but {@code events} changes what is found, how long the shortest way is, or how many states there are; it
 * can all be switched off to see that.
 *
 * @param contracts whether regions of the network that nothing can split are drawn together before the search
 * @param numbered up to how many combinations of acts are numbered through before the search, see {@link Orders}
 * @param packs whether parts that states share are kept once
 * @param threads how many threads search at once
 * @param worth how many states of one depth there must be for more than one thread
 * @param positions how many rules that read nothing but where contacts and taps stand there must be to remember where they were kept
 * @param events how many of the events happen at most that rules are judged in spite of; with more of them more may be found
 */
public record Search(boolean contracts, int numbered, boolean packs, int threads, int worth, int positions, int events) {
    /** Fewer states of one depth are done by one thread sooner. */
    public static final int WORTH = 256;
    /** With fewer rules than this, to judge them anew costs no more than to look whether they were kept. */
    public static final int RULES = 8;
    /** What is used unless something else is asked for. */
    public static final Search USUAL = new Search(true, Orders.NUMBERED, true, Runtime.getRuntime().availableProcessors(), WORTH, RULES, 0);
    /** Nothing saved. */
    public static final Search PLAIN = new Search(false, 0, false, 1, WORTH, Integer.MAX_VALUE, 0);

    /**
     * {@return the same with so many events at most}
     *
     * @param most 0 or more
     */
    public Search with(int most) {
        return new Search(contracts, numbered, packs, threads, worth, positions, most);
    }

    /**
     * {@return the same by so many threads}
     *
     * @param many 1 or more
     */
    public Search on(int many) {
        return new Search(contracts, numbered, packs, many, worth, positions, events);
    }
}
