package org.keeplit.network;

/** What opening a closed contact asks of it, from nothing to the worst. */
public enum OpeningDuty {
    /** No current flows and no voltage appears across it. */
    NOTHING("nothing"),
    /** Both sides stay alive from one supply, joined another way. */
    PARALLEL("parallel break"),
    /** The side that goes dead is a bushing, a lead or a jumper end. */
    BUSHING("bushing charging"),
    /** The side that goes dead has overhead line and no load. */
    LINE("line charging"),
    /** The side that goes dead has cable and no load. */
    CABLE("cable charging"),
    /** The side that goes dead has an unloaded transformer. */
    TRANSFORMER("transformer magnetizing"),
    /** The side that goes dead has a capacitor bank. */
    CAPACITOR("capacitor bank"),
    /** The side that goes dead holds load. */
    LOAD("load break"),
    /** Fault current flows. */
    FAULT("fault break");

    private final String phrase;

    OpeningDuty(String phrase) {
        this.phrase = phrase;
    }

    /** {@return the words that files use} */
    public String phrase() {
        return phrase;
    }
}
