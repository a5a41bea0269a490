package org.keeplit.network;

/** What closing an open contact asks of it, from nothing to the worst. */
public enum ClosingDuty {
    /** Both sides are dead, or already joined with no voltage between them and nothing alive. */
    NOTHING("nothing"),
    /** Both sides are alive from one supply, same phase and same angle. */
    PARALLEL("parallel make"),
    /** Both sides are alive from one supply, with a regulator off neutral between them at the site. */
    UNEQUAL("unequal parallel"),
    /** One side is alive and the other, which holds no load, goes alive with it. */
    ENERGIZE("energizing"),
    /** One side is alive and the other, which holds load, goes alive with it. */
    PICKUP("energizing load"),
    /** The two sides are, or may be, alive from different supplies. */
    JOIN("joining two supplies"),
    /** The two sides are alive from one supply, but on two phases or at two angles. */
    CROSS("cross-phase"),
    /** One side is, or may be, alive and the other is grounded. */
    GROUND("onto a ground");

    private final String phrase;

    ClosingDuty(String phrase) {
        this.phrase = phrase;
    }

    /** {@return the words that files use} */
    public String phrase() {
        return phrase;
    }
}
