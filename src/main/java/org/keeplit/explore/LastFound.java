package org.keeplit.explore;

/** Looks states up, and remembers the last one: most states that are to be kept were looked for just before, to be judged. */
final class LastFound implements StateStore.Finder {
    private final StateStore.Finder finder;
    private long[] last;
    private int number;

    LastFound(StateStore.Finder finder) {
        this.finder = finder;
    }

    @Override
    public int find(long[] state) {
        if (state != last) {
            number = finder.find(state);
            last = state;
        }
        return number;
    }

    /** Another state was added. */
    void forget() {
        last = null;
    }
}
