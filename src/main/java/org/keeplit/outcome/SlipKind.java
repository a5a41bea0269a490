package org.keeplit.outcome;

/** What can go wrong with an act. */
public enum SlipKind {
    /** It is not done, and everybody goes on. */
    LEFT_OUT("left out"),
    /** It is done again at once. */
    TWICE("twice"),
    /** It is done at any moment before its turn, and not again. */
    EARLY("early"),
    /** It is done on another phase. */
    WRONG_PHASE("wrong phase"),
    /** It is done to the next device of its kind, or at the next pole. */
    NEIGHBOUR("neighbour"),
    /** The opposite is done. */
    WRONG_WAY("wrong way"),
    /** What was to be one movement comes apart. */
    APART("apart");

    private final String word;

    SlipKind(String word) {
        this.word = word;
    }

    /** {@return the word of reports} */
    public String word() {
        return word;
    }
}
