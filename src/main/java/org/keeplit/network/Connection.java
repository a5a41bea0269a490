package org.keeplit.network;

/** How the phases of a load, a capacitor bank or a winding are joined. */
public enum Connection {
    /** Each phase to a grounded neutral; the phases do not couple. */
    GROUNDED_WYE("grounded wye"),
    /** Each phase to a neutral that floats; the phases couple through it. */
    WYE("ungrounded wye"),
    /** Phase to phase; the phases couple. */
    DELTA("delta");

    private final String phrase;

    Connection(String phrase) {
        this.phrase = phrase;
    }

    /** {@return the words that files use} */
    public String phrase() {
        return phrase;
    }

    /** {@return whether an open phase is fed backwards through the others} */
    public boolean couples() {
        return this != GROUNDED_WYE;
    }
}
