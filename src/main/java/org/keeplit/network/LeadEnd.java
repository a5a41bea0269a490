package org.keeplit.network;

/** The two ends of a lead between a line conductor and a bushing. */
public enum LeadEnd {
    /** The clamp at the line conductor. */
    LINE("line"),
    /** The terminal at the bushing. */
    BUSHING("bushing");

    private final String word;

    LeadEnd(String word) {
        this.word = word;
    }

    /** {@return the word that files use} */
    public String word() {
        return word;
    }
}
