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
 * @param unit the phase under which the unit's pole is kept; of a ground trip the device's first phase
 */
public record Reaction(int id, Kind kind, Element.Device device, Conductor unit) {
    /** What devices do by themselves. */
    public enum Kind {
        /** One unit, or the ganged set, opens on the current of a phase. */
        PHASE_TRIP,
        /** All closed poles open on the residual current. */
        GROUND_TRIP,
        /** A unit that tripped closes again, and holds. */
        RECLOSE
    }

    /** {@return the phases whose poles it may move} */
    public Phases phases() {
        return kind == Kind.GROUND_TRIP || device.ganged() ? device.phases() : Phases.of(unit);
    }

    /** {@return whether it closes rather than opens} */
    public boolean closes() {
        return kind == Kind.RECLOSE;
    }
}
