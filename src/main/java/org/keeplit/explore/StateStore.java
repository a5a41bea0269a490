package org.keeplit.explore;

/** Every state found so far, exactly, by number in the order of finding, with the state and the edge that first led to it. */
interface StateStore {
    /** Looks states up. One belongs to one thread; several may look at once as long as nobody adds. */
    interface Finder {
        /** {@return the number of a state, or -1 if it was not found yet} */
        int find(long[] state);
    }

    /** {@return a store for states of so many longs} @param packed whether parts that states share are kept once */
    static StateStore of(int words, boolean packed) {
        return packed ? new TreeStore(words) : new FlatStore(words);
    }

    int size();

    /** {@return the number of a state, or -1 if it was not found yet} */
    int find(long[] state);

    /** Adds a state that is not there yet; {@return its number}. */
    int add(long[] state, int parent, int edge);

    /** Copies a state out. */
    void load(int number, long[] into);

    /** {@return the state from which a state was first reached; -1 for the start} */
    int parent(int number);

    /** {@return the edge by which a state was first reached; -1 for the start} */
    int edge(int number);

    /** Notes a shorter way to a state. */
    void reach(int number, int parent, int edge);

    /** {@return how many bytes the states and what finds them again take} */
    long bytes();

    /** {@return what looks states up for another thread} */
    Finder finder();
}
