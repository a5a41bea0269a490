package org.keeplit.exchange;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.keeplit.outcome.Finding;
import org.keeplit.outcome.TraceStep;
import org.keeplit.procedure.Block;
import org.keeplit.rule.Rule;
import org.keeplit.text.Source;
import org.keeplit.text.Span;

/**
 * One thing that was put to the question, for formats that know only that much of an answer.
 *
 * @param suite what it belongs to: the procedure and its place, or the group of examples
 * @param owner the procedure's name, or the group's
 * @param name what it is called in its suite
 * @param about what was asked
 * @param came what came of it
 * @param message one sentence on it
 * @param place where it stands
 * @param way the acts that show it; none where nothing is to be shown
 * @param fixes changed texts with which it would be so, the smallest change first
 */
record Case(
        String suite, String owner, String name, About about, Came came, String message, Optional<Span> place, List<Act> way, List<Fix> fixes) {

    Case(String suite, String owner, String name, About about, Came came, String message, Optional<Span> place, List<Act> way) {
        this(suite, owner, name, about, came, message, place, way, List.of());
    }

    /** A changed text. @param words what is changed @param source the file as it is @param text the file as it would be */
    record Fix(String words, Source source, String text) {}

    /** What can come of it. */
    enum Came {
        /** It was asked and is so. */
        KEPT,
        /** It is not so, with nothing wrong before. */
        BROKEN,
        /** It is not so, but only after something else was wrong. */
        AFTER,
        /** It is not so and should be looked at; nothing is broken by it. */
        WARNED,
        /** It is not so and is good to know. */
        NOTED,
        /** Nothing asked for it. */
        NOT_ASKED,
        /** Nothing asked for it, and somebody wants that everything is asked. */
        MISSED,
        /** It could not be decided. */
        OPEN
    }

    /**
     * What was asked, under a name that stays the same from run to run.
     *
     * @param id the name
     * @param text in one sentence
     * @param full why it matters, and where it comes from; may be empty
     */
    record About(String id, String text, String full) {
        /** {@return a rule as what was asked} @param rulebook the rulebook that it is in */
        static About of(String rulebook, Rule rule) {
            String source = rule.citation().orElse("common practice, no source");
            return new About(rulebook + "/" + rule.name(), rule.because(), rule.because() + "\nSource: " + source);
        }
    }

    /** An act that shows something. @param text who does what @param changes what it changes @param place where it is written */
    record Act(String text, List<String> changes, Optional<Span> place) {}

    /** {@return the acts of the way to a finding} @param steps the steps of what was explored */
    static List<Act> way(Finding finding, List<Block.Step> steps) {
        return finding.trace().stream()
                .map(act -> act(act, Where.of(act, steps)))
                .toList();
    }

    /** {@return an act of a way, with the loads that lose supply among what it changes} */
    static Act act(TraceStep act, Optional<Span> place) {
        List<String> changes = new ArrayList<>(act.changes());
        for (TraceStep.Lost lost : act.lost()) {
            changes.add("loses supply: " + lost.load() + ", " + lost.customers() + (lost.customers() == 1 ? " customer" : " customers")
                    + ", phase " + lost.phases() + (lost.critical().isEmpty() ? "" : ", critical: " + lost.critical()));
        }
        return new Act(act.actor() + " " + act.text(), changes, place);
    }
}
