package org.keeplit.electric;

/** How alive a vertex is, from nothing to supplied. */
public enum Level {
    /** No source can put voltage on it. */
    DEAD,
    /** Only a customer's generator feeds it, if that runs. */
    MAY_BE,
    /** It is fed backwards, through windings or loads that couple phases: alive, but never supply. */
    BACKFED,
    /** A source in service feeds it. */
    ENERGIZED;

    /** {@return whether it has voltage for certain} */
    public boolean isAlive() {
        return compareTo(BACKFED) >= 0;
    }

    /** {@return the greater of both} @param other the other */
    public Level max(Level other) {
        return compareTo(other) >= 0 ? this : other;
    }

    /** {@return this level as it passes a coupling that cannot supply} */
    public Level coupled() {
        return this == ENERGIZED ? BACKFED : this;
    }
}
