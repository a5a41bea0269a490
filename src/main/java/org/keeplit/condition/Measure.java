package org.keeplit.condition;

import org.keeplit.unit.Dimension;

/** The figures that can be asked of a state. */
public enum Measure {
    /** Current through a device, a jumper, a line section or a regulator. */
    CURRENT("the current through", Dimension.CURRENT),
    /** The residual (three times zero-sequence) current through a device. */
    RESIDUAL("the residual current through", Dimension.CURRENT),
    /** Voltage to ground at a point. */
    VOLTAGE("the voltage at", Dimension.VOLTAGE),
    /** Voltage between the two sides of a device. */
    VOLTAGE_ACROSS("the voltage across", Dimension.VOLTAGE),
    /** Current in percent of the continuous rating. */
    LOADING("the loading of", Dimension.RATIO),
    /** The largest short-circuit current at a point. */
    FAULT_CURRENT("the fault current at", Dimension.CURRENT);

    private final String words;
    private final Dimension dimension;

    Measure(String words, Dimension dimension) {
        this.words = words;
        this.dimension = dimension;
    }

    /** {@return the words before its object} */
    public String words() {
        return words;
    }

    /** {@return whether it is asked of one phase; the residual current is that of all phases together} */
    public boolean perPhase() {
        return this != RESIDUAL;
    }

    /** {@return what it measures} */
    public Dimension dimension() {
        return dimension;
    }
}
