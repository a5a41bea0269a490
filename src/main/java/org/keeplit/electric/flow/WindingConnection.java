package org.keeplit.electric.flow;

/** How the three windings of one side of a bank lie between phases 0, 1, 2 (A, B, C). */
public enum WindingConnection {
    /** Each winding from a phase to the neutral. */
    WYE,
    /** Windings AB, BC, CA. */
    DELTA_FORWARD,
    /** Windings AC, BA, CB. */
    DELTA_BACKWARD;

    /** The phase that the to end of a winding is on, or -1 for the neutral. */
    int back(int winding) {
        return switch (this) {
            case WYE -> -1;
            case DELTA_FORWARD -> (winding + 1) % 3;
            case DELTA_BACKWARD -> (winding + 2) % 3;
        };
    }

    /** The voltage of a winding for a line-to-line voltage of 1. */
    double windingVolts() {
        return this == WYE ? 1 / Math.sqrt(3) : 1;
    }
}
