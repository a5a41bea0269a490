package org.keeplit.procedure;

import com.google.common.collect.ImmutableList;
import java.util.Optional;
import org.keeplit.condition.Condition;
import org.keeplit.condition.Figure;
import org.keeplit.condition.PhaseTerm;
import org.keeplit.condition.Term;
import org.keeplit.network.Conductor;
import org.keeplit.network.LeadEnd;
import org.keeplit.network.Phases;
import org.keeplit.network.Side;
import org.keeplit.network.Verb;
import org.keeplit.unit.Quantity;

/** What one step does. */
public sealed interface Action {
    /**
     * A step that the kind of equipment declares.
     *
     * @param verb the declared verb
     * @param object to what
     */
    record Operate(Verb verb, DeviceSet object) implements Action {}

    /**
     * One end of a lead goes on or comes off.
     *
     * @param device whose lead
     * @param side which lead
     * @param end which end
     * @param on whether it ends on
     * @param onto the phase of the line that its line end goes on, when it is not its own
     */
    record MoveLead(Term device, Side side, LeadEnd end, boolean on, Optional<PhaseTerm> onto) implements Action {}

    /**
     * A jumper goes on with both clamps.
     *
     * @param jumper the jumper
     * @param first where its first clamp goes
     * @param second where its second clamp goes
     * @param ordered whether on each phase the first clamp must go on first; otherwise either may
     */
    record Install(Term jumper, Spot first, Spot second, boolean ordered) implements Action {}

    /**
     * A jumper comes off.
     *
     * @param jumper the jumper
     * @param first the side of the device it was brought for whose clamp comes off first on each phase; empty for either
     */
    record Remove(Term jumper, Optional<Side> first) implements Action {}

    /**
     * One clamp of a jumper goes on.
     *
     * @param jumper the jumper
     * @param clamp 1 or 2
     * @param spot where it goes
     */
    record Clamp(Term jumper, int clamp, Spot spot) implements Action {}

    /**
     * One clamp of a jumper comes off.
     *
     * @param jumper the jumper
     * @param clamp 1 or 2
     */
    record Unclamp(Term jumper, int clamp) implements Action {}

    /**
     * A place for a clamp.
     *
     * @param point the point
     * @param phase the phase there, when it is not the step's own
     */
    record Spot(Term point, Optional<PhaseTerm> phase) {}

    /** Which end of a ground moves first on each phase. */
    enum Order {
        /** The ground end. */
        GROUND_END,
        /** The line end. */
        LINE_END,
        /** Either; both orders are explored. */
        EITHER
    }

    /**
     * A protective ground goes on.
     *
     * @param ground the ground
     * @param point where
     * @param order which end first
     */
    record ApplyGround(Term ground, Term point, Order order) implements Action {}

    /**
     * A protective ground comes off.
     *
     * @param ground the ground
     * @param order which end first
     */
    record RemoveGround(Term ground, Order order) implements Action {}

    /**
     * A temporary source is started or stopped, on all its phases at once.
     *
     * @param source which
     * @param on whether it runs
     */
    record Run(Term source, boolean on) implements Action {}

    /**
     * A person goes up at a structure.
     *
     * @param at the device or regulator whose structure it is
     */
    record GoAloft(Term at) implements Action {}

    /** A person comes down and stands clear. */
    record ComeDown() implements Action {}

    /** What is said about a hold or a clearance. */
    enum Speech {
        /** The crew asks for it. */
        ASK,
        /** Control issues it. */
        ISSUE,
        /** The holder repeats it. */
        REPEAT,
        /** Control confirms the repetition. */
        CONFIRM,
        /** The holder gives it back. */
        RELEASE
    }

    /**
     * Words about a hold or clearance.
     *
     * @param speech what is said
     * @param permit about which
     */
    record Speak(Speech speech, Term permit) implements Action {}

    /**
     * A tag goes on or comes off.
     *
     * @param device on what
     * @param on whether it hangs afterwards
     */
    record Tag(DeviceSet device, boolean on) implements Action {}

    /**
     * Somebody looks whether something is so; if not, the crew stops.
     *
     * @param condition what must be seen
     */
    record Check(Condition condition) implements Action {}

    /** What a proof establishes. */
    enum Proof {
        /** The device is open, by handle and by amperes. */
        OPEN,
        /** The device is closed, by handle and by amperes. */
        CLOSED,
        /** It carries current. */
        CARRYING,
        /** The two sides of an open device are in phase. */
        IN_PHASE,
        /** A regulator stands on neutral, by two indications. */
        NEUTRAL
    }

    /**
     * Somebody proves something of an object; if it is not so, the crew stops.
     *
     * @param proof what
     * @param of what
     */
    record Prove(Proof proof, Term of) implements Action {}

    /**
     * Somebody tests a point for absence of voltage; if there is voltage, the crew stops.
     *
     * @param point where
     */
    record TestDead(Term point) implements Action {}

    /**
     * Somebody measures a figure; if it is not within the limit, the crew stops.
     *
     * @param figure the figure of the state
     * @param limit comparisons of that figure; empty if it is only to be known
     */
    record MeasureFigure(Figure.Measured figure, Optional<Condition> limit) implements Action {
        /**
         * What must be seen on one phase.
         *
         * @param phase the phase
         * @return the limit, with the figure on that phase alone
         */
        public Optional<Condition> limitOn(Conductor phase) {
            PhaseTerm on = new PhaseTerm.Given(Phases.of(phase));
            Figure there = new Figure.Measured(figure.measure(), figure.of(), figure.beyond(), on, figure.span());
            return limit.map(condition -> on(condition, there));
        }

        private static Condition on(Condition condition, Figure figure) {
            if (condition instanceof Condition.All all) {
                return new Condition.All(
                        all.parts().stream().map(part -> on(part, figure)).collect(ImmutableList.toImmutableList()),
                        all.span());
            } else if (condition instanceof Condition.Compare compare) {
                return new Condition.Compare(figure, compare.comparison(), compare.right(), compare.span());
            }
            throw new IllegalStateException("a limit is a comparison of what is measured");
        }
    }

    /**
     * Something is written down.
     *
     * @param item what
     */
    record Record(String item) implements Action {}

    /**
     * Time passes with a capacitor bank dead.
     *
     * @param time how long
     * @param of the bank that discharges
     */
    record WaitDead(Quantity time, Term of) implements Action {}

    /**
     * Somebody waits until something is so.
     *
     * @param condition what
     */
    record WaitUntil(Condition condition) implements Action {}

    /**
     * Somebody inspects something that is not modelled; both outcomes are explored.
     *
     * @param item what is inspected
     * @param outcomes the outcomes, at least two
     */
    record Inspect(String item, ImmutableList<String> outcomes) implements Action {}

    /**
     * Hands go on a point.
     *
     * @param point where
     * @param words what is done, in words
     */
    record Work(Term point, String words) implements Action {}

    /**
     * People are told the job, its hazards and who does what.
     *
     * @param people who is told
     */
    record Brief(ImmutableList<Term> people) implements Action {}

    /**
     * An event that nobody does comes up.
     *
     * @param event its name
     */
    record Happen(String event) implements Action {}

    /**
     * Something that changes nothing in the model.
     *
     * @param words what, in words
     */
    record Do(String words) implements Action {}
}
