package org.keeplit.electric.flow;

/** How a step regulator's taps act on its ratio; a step is 5/8 percent. */
public enum RegulatorKind {
    /** The exciting winding on the source side: load volts = (1 + 0.00625 tap) source volts. */
    TYPE_A,
    /** The exciting winding on the load side: source volts = (1 - 0.00625 tap) load volts. */
    TYPE_B;

    private static final double STEP = 0.00625;

    /**
     * The ratio at a tap.
     *
     * @param tap the tap, positive to raise
     * @return load volts over source volts at no load
     */
    public double ratio(int tap) {
        return this == TYPE_A ? 1 + STEP * tap : 1 / (1 - STEP * tap);
    }
}
