package org.keeplit.program;

import org.keeplit.condition.Condition;
import org.keeplit.network.Conductor;
import org.keeplit.network.Element;
import org.keeplit.network.LeadEnd;
import org.keeplit.network.Mode;
import org.keeplit.network.Phases;
import org.keeplit.network.Place;
import org.keeplit.network.Side;
import org.keeplit.procedure.Action;

/** What an atomic act does. Every consumer of acts interprets these and nothing else. */
public sealed interface Primitive {
    /** A pole, or a ganged set, opens or closes. @param phases one, or all of the ganged set */
    record MovePole(String device, Phases phases, boolean closed) implements Primitive {}

    /**
     * One end of a lead goes on or comes off.
     *
     * @param onto the phase of the line that the line end goes on; its own phase unless leads were rolled
     */
    record MoveEnd(String device, Side side, Conductor phase, LeadEnd end, boolean on, Conductor onto)
            implements Primitive {}

    /**
     * One clamp of temporary equipment goes on or comes off.
     *
     * @param family the family
     * @param phase the phase that the piece was brought for
     * @param clamp 1 or 2; for a ground 1 is the ground end
     * @param spot where it goes on; when it comes off, null, since it comes off wherever it is
     */
    record MoveClamp(String family, Conductor phase, int clamp, Vertex spot) implements Primitive {}

    /**
     * A mode takes a value.
     *
     * @param on the phases that the setting is for: one, or all where one setting serves all
     */
    record SetMode(String device, Phases on, String mode, String value) implements Primitive {
        /** {@return a setting} @param phase the phase of the unit; of no account where one setting serves all */
        public static SetMode of(Element element, Mode mode, Conductor phase, String value) {
            return new SetMode(element.name(), Units.modePhases(element, mode, phase), mode.name(), value);
        }

        /** {@return the phase by which its field is known: the first where one setting serves all} */
        public Conductor phase() {
            return on.list().get(0);
        }
    }

    /** A regulator runs to neutral. */
    record RunToNeutral(String regulator, Conductor phase) implements Primitive {}

    /** A removable unit goes to a place. @param phases one, or all of a ganged device */
    record Carry(String device, Phases phases, Place place) implements Primitive {}

    /** A person goes up at a site. */
    record GoUp(String person, String site) implements Primitive {}

    /** A person comes down. */
    record ComeDown(String person) implements Primitive {}

    /** Words about a hold or clearance. */
    record Speak(Action.Speech speech, String permit) implements Primitive {}

    /** A tag goes on or comes off. */
    record MoveTag(String device, boolean on) implements Primitive {}

    /** Somebody looks whether something is so. @param on the phase on which it is measured; none for all else */
    record Look(Condition condition, Phases on) implements Primitive {}

    /** Somebody proves something of a device, a jumper or a regulator. */
    record Prove(Action.Proof proof, String subject, Conductor phase) implements Primitive {}

    /** Somebody tests for absence of voltage. */
    record TestDead(Vertex vertex) implements Primitive {}

    /** Something is written down. */
    record Write(String item) implements Primitive {}

    /** Time passes. @param seconds how long */
    record Pass(String capacitor, Conductor phase, int seconds) implements Primitive {}

    /** Somebody waits until something is so. */
    record Await(Condition condition) implements Primitive {}

    /** An inspection comes out. @param outcome its number, from 0 */
    record ComeOut(String item, int outcome, String words) implements Primitive {}

    /** Hands go on a point. */
    record Touch(Vertex vertex) implements Primitive {}

    /** A person leaves the work, wherever they are. */
    record Leave(String person) implements Primitive {}

    /** A person cannot be spoken with from then on. */
    record CutOff(String person) implements Primitive {}

    /** A device does not trip from then on. */
    record FailToTrip(String device) implements Primitive {}

    /** A line section has a fault. @param stays whether it is there again when the section is made alive again */
    record Fault(String line, Phases phases, boolean stays) implements Primitive {}

    /** Nothing that the model knows. */
    record Nothing() implements Primitive {}
}
