package org.keeplit.program;

import org.keeplit.network.Conductor;
import org.keeplit.network.LeadEnd;
import org.keeplit.network.Side;

/** What a field of the state is about. Fields hold small numbers; each key says what the numbers mean. */
public sealed interface FieldKey {
    /** A pole: 0 open, 1 closed. @param device the device @param phase the phase; the first for a ganged device */
    record Pole(String device, Conductor phase) implements FieldKey {}

    /** One end of a lead: 0 off, 1 on its own phase, else on another, see {@link #value}. */
    record End(String device, Side side, Conductor phase, LeadEnd end) implements FieldKey {
        /** {@return the value that stands for the end being on a phase of the line} @param onto the phase */
        public int value(Conductor onto) {
            return onto == phase ? 1 : 2 + onto.ordinal();
        }
    }

    /**
     * One clamp of temporary equipment: 0 off, else one more than the index of the place it is on.
     *
     * @param family the family
     * @param phase the phase that the piece was brought for
     * @param clamp 1 or 2; for a ground 1 is the ground end and 2 the line end, for a
     *     temporary source 1 is its output switch and 2 its cable
     */
    record Clamp(String family, Conductor phase, int clamp) implements FieldKey {}

    /** A mode: the index of its value. @param phase the phase; the first where one setting serves all */
    record Mode(String device, Conductor phase, String mode) implements FieldKey {}

    /** A regulator's tap: see {@link #NEUTRAL} and {@link #ANY}. */
    record Tap(String regulator, Conductor phase) implements FieldKey {
        /** It stands on neutral. */
        public static final int NEUTRAL = 0;
        /** It may stand anywhere, neutral included. */
        public static final int ANY = 1;
    }

    /** Where a removable unit is: the ordinal of {@link org.keeplit.network.Place}. */
    record Placed(String device, Conductor phase) implements FieldKey {}

    /**
     * Where a person is: 0 on the ground or at control, else one more than the index of the site; one more than the number of
     * sites for somebody who has left.
     */
    record Where(String person) implements FieldKey {}

    /** Whether a person cannot be spoken with: 0 no, 1 yes. */
    record CutOff(String person) implements FieldKey {}

    /** Whether a device has failed to trip: 0 no, 1 yes. */
    record Failed(String device) implements FieldKey {}

    /** An event that happened: 0 none, else one more than its number; the highest number comes first. @param place from 0 */
    record Happened(int place) implements FieldKey {}

    /** How far a hold or clearance has come: see the constants. */
    record Permitted(String permit) implements FieldKey {
        /** Nobody asked for it. */
        public static final int NONE = 0;
        /** It was asked for. */
        public static final int ASKED = 1;
        /** It was issued. */
        public static final int ISSUED = 2;
        /** The holder repeated it. */
        public static final int REPEATED = 3;
        /** The repetition was confirmed. */
        public static final int IN_FORCE = 4;
        /** It was given back. */
        public static final int RELEASED = 5;
    }

    /** A tag on a device: 0 none, 1 hangs. */
    record Tagged(String device) implements FieldKey {}

    /**
     * Something proved and not made doubtful since: 0 no, 1 yes.
     *
     * @param proof what
     * @param subject of what: a device, a jumper, a regulator, or the text of a vertex for dead
     * @param phase the phase
     */
    record Proved(String proof, String subject, Conductor phase) implements FieldKey {}

    /** A record: 0 not written, 1 written. */
    record Recorded(String item) implements FieldKey {}

    /** An inspection: 0 not done, else one more than the index of the outcome. */
    record Found(String item) implements FieldKey {}

    /** The operations counted since the start, at most the greatest number that the run asks for. */
    record Count(String device, Conductor phase) implements FieldKey {}

    /** How often a waiting time passed with the bank dead: seconds in steps of the run's waits. */
    record Waited(String capacitor, Conductor phase) implements FieldKey {}

    /**
     * Something that a rule remembers: 0 or 1 for a moment that came up, a stretch that is open, or a duty that is
     * pending; the ordinal of a truth for what was so all the time.
     *
     * @param number its number in the run
     */
    record Remembered(int number) implements FieldKey {}
}
