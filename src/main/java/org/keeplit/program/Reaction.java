package org.keeplit.program;

import org.keeplit.network.Conductor;
import org.keeplit.network.Element;
import org.keeplit.network.Phases;

/**
 * Something that a device does by itself.
 *
 * @param id its number in the program
 * @param kind what it does
 * @param device the device
 * @param unit the phase under which the unit's pole is kept; the device's first phase where it is all of them
 */
public record Reaction(int id, Kind kind, Element.Device device, Conductor unit) {
    /** What devices do by themselves. */
    public enum Kind {
        /** One unit, or the ganged set, opens on the current of a phase. */
        PHASE_TRIP,
        /** All closed poles open on the residual current. */
        GROUND_TRIP,
        /** A unit that tripped closes again, and holds. */
        RECLOSE,
        /** All poles close because one side lost its supply. */
        RESTORE,
        /** The control opens all poles. */
        CONTROL_OPEN,
        /** The control closes all poles. */
        CONTROL_CLOSE;

        /** {@return whether it is the doing of one unit, where units stand alone} */
        boolean isOfUnit() {
            return this == PHASE_TRIP || this == RECLOSE;
        }

        /** {@return whether a current makes it open} */
        public boolean isTrip() {
            return this == PHASE_TRIP || this == GROUND_TRIP;
        }
    }

    /** {@return the phases whose poles it may move} */
    public Phases phases() {
        return !kind.isOfUnit() || device.ganged() ? device.phases() : Phases.of(unit);
    }

    /** {@return whether it closes rather than opens} */
    public boolean closes() {
        return kind == Kind.RECLOSE || kind == Kind.RESTORE || kind == Kind.CONTROL_CLOSE;
    }
}
