package org.keeplit.electric.flow;

/** What becomes of loads in a short-circuit calculation. */
public enum FaultLoads {
    /** They are left out, as protection studies mostly do. */
    IGNORED,
    /** Each is the impedance that it has at rated voltage. */
    AS_IMPEDANCES
}
