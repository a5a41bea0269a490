package org.keeplit.network;

/** The two sides of an element that joins two nodes. */
public enum Side {
    /** The side of the node written after {@code from}; for a device, the source side. */
    SOURCE("source"),
    /** The side of the node written after {@code to}; for a device, the load side. */
    LOAD("load");

    private final String word;

    Side(String word) {
        this.word = word;
    }

    /** {@return the word that files use} */
    public String word() {
        return word;
    }

    /** {@return the other side} */
    public Side other() {
        return this == SOURCE ? LOAD : SOURCE;
    }
}
