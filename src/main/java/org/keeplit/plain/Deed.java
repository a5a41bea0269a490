package org.keeplit.plain;

import org.keeplit.condition.Condition;
import org.keeplit.network.Conductor;
import org.keeplit.network.LeadEnd;
import org.keeplit.network.Phases;
import org.keeplit.network.Place;
import org.keeplit.network.Side;
import org.keeplit.procedure.Action;

/** What an act does, in the plain evaluator's own terms. */
sealed interface Deed {
    record Switch(String device, Phases phases, boolean close) implements Deed {}

    record LeadMove(String device, Side side, Conductor phase, LeadEnd end, Conductor onto) implements Deed {}

    record LeadOff(String device, Side side, Conductor phase, LeadEnd end) implements Deed {}

    record ClampOn(String family, Conductor phase, int clamp, String vertex, Conductor there) implements Deed {}

    record ClampOff(String family, Conductor phase, int clamp) implements Deed {}

    record Adjust(String device, Conductor phase, String mode, String value) implements Deed {}

    record Neutral(String regulator, Conductor phase) implements Deed {}

    record Bring(String device, Phases phases, Place place) implements Deed {}

    record Climb(String person, String site) implements Deed {}

    record Descend(String person) implements Deed {}

    record Talk(Action.Speech speech, String permit) implements Deed {}

    record Tie(String device, boolean on) implements Deed {}

    record See(Condition condition) implements Deed {}

    record Prove(Action.Proof proof, String subject, Conductor phase) implements Deed {}

    record Test(String vertex, Conductor phase) implements Deed {}

    record Note(String item) implements Deed {}

    record Pause(String capacitor, Conductor phase, int seconds) implements Deed {}

    record Hold(Condition condition) implements Deed {}

    record Find(String item, String outcome) implements Deed {}

    record Touch(String vertex, Conductor phase) implements Deed {}

    record Leave(String person) implements Deed {}

    record CutOff(String person) implements Deed {}

    record Lame(String device) implements Deed {}

    record Fault(String line, Phases phases, boolean stays) implements Deed {}

    record Talkless() implements Deed {}
}
