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
    /** By how much the voltage on one side of a device is turned against that on the other. */
    ANGLE("the angle across", Dimension.ANGLE),
    /** Voltage between the two sides of a contact once it is open. */
    RECOVERY("the recovery voltage across", Dimension.VOLTAGE),
    /** Current through a contact once it is closed; through a tie that closes a loop, the loop current. */
    CLOSING_CURRENT("the closing current through", Dimension.CURRENT),
    /** The closing current when what it picks up was dead for long. */
    COLD_LOAD("the cold-load current through", Dimension.CURRENT),
    /** What the transformers that it makes alive draw in the first cycles. */
    INRUSH("the inrush current through", Dimension.CURRENT),
    /** Current in percent of the continuous rating. */
    LOADING("the loading of", Dimension.RATIO),
    /** The largest short-circuit current at a point. */
    FAULT_CURRENT("the fault current at", Dimension.CURRENT),
    /** The largest short-circuit current on either side of a contact, which it may have to interrupt or to carry. */
    FAULT_THROUGH("the fault current through", Dimension.CURRENT),
    /** The least that a device sees of a phase-to-phase fault in the section beyond another. */
    SECTION_FAULT("the smallest fault current through", Dimension.CURRENT),
    /** The least that a device sees, all phases together, of a fault to ground in the section beyond another. */
    SECTION_GROUND("the smallest ground fault current through", Dimension.CURRENT),
    /** The largest short-circuit current where a ground or a jumper hangs, now or in the normal state. */
    AVAILABLE("the available fault current at", Dimension.CURRENT),
    /** What a ground or a jumper stands for as long as a fault where it hangs lasts. */
    WITHSTAND("the short-time withstand of", Dimension.CURRENT),
    /** The most voltage that a dead capacitor bank may have kept at a point. */
    TRAPPED("the trapped voltage at", Dimension.VOLTAGE),
    /** The most voltage that a dead capacitor bank may have kept which closing a contact would make alive. */
    TRAPPED_BEHIND("the trapped voltage behind", Dimension.VOLTAGE);

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

    /** {@return whether it is asked of one phase; some are of all phases together} */
    public boolean perPhase() {
        return switch (this) {
            case RESIDUAL, SECTION_FAULT, SECTION_GROUND, WITHSTAND -> false;
            default -> true;
        };
    }

    /** {@return whether somebody at the place can read it off, and need not work it out beforehand} */
    public boolean isSeen() {
        return switch (this) {
            case CURRENT, RESIDUAL, VOLTAGE, VOLTAGE_ACROSS, LOADING, FAULT_CURRENT -> true;
            default -> false;
        };
    }

    /** {@return whether it names a second object after {@code beyond}} */
    public boolean hasBeyond() {
        return this == SECTION_FAULT || this == SECTION_GROUND;
    }

    /** {@return whether it follows from the network and the contacts alone, whatever the loads draw} */
    public boolean ignoresLoad() {
        return switch (this) {
            case FAULT_CURRENT, FAULT_THROUGH, SECTION_FAULT, SECTION_GROUND, AVAILABLE, WITHSTAND, TRAPPED, TRAPPED_BEHIND, INRUSH -> true;
            default -> false;
        };
    }

    /** {@return what it measures} */
    public Dimension dimension() {
        return dimension;
    }
}
