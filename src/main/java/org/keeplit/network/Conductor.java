package org.keeplit.network;

/** The labels that a conductor at a node may carry. */
public enum Conductor {
    /** Phase A. */
    A,
    /** Phase B. */
    B,
    /** Phase C. */
    C,
    /** The neutral. */
    N;

    /** {@return whether this is a phase, not the neutral} */
    public boolean isPhase() {
        return this != N;
    }

    /**
     * The place of the phase in the rotation.
     *
     * @return its lag behind phase A in clock hours of 30 degrees when the sequence is ABC: 0, 4 or 8
     */
    public int clock() {
        return switch (this) {
            case A, N -> 0;
            case B -> 4;
            case C -> 8;
        };
    }
}
