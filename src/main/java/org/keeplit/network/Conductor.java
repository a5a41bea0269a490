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
    N,
    /** One leg of a centre-tapped secondary, by the mark of its terminal; its reference is the tap, X2, which is neutral. */
    X1,
    /** The other leg, which stands opposite. */
    X3;

    /** {@return whether this is a phase or a leg, not the neutral} */
    public boolean isPhase() {
        return this != N;
    }

    /** {@return whether this is a leg of a centre-tapped secondary} */
    public boolean isLeg() {
        return this == X1 || this == X3;
    }

    /**
     * The place of the phase in the rotation.
     *
     * @return its lag behind phase A in clock hours of 30 degrees when the sequence is ABC: 0, 4 or 8; of a leg that behind
     *     the first leg
     */
    public int clock() {
        return switch (this) {
            case A, N, X1 -> 0;
            case B -> 4;
            case C -> 8;
            case X3 -> 6;
        };
    }
}
