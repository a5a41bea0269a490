package org.keeplit.outcome;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import java.util.Optional;
import org.keeplit.network.Conductor;
import org.keeplit.rule.Rule;

/**
 * Something that the exploration found.
 *
 * @param kind what sort of thing
 * @param rule the rule, for a broken rule
 * @param rulebook the rulebook that it is in, for a broken rule
 * @param unknown whether it is not known to be so, but cannot be shown not to be
 * @param bindings what the rule's variables stand for, by name
 * @param others how many more bindings fail at the same step and on the same phase
 * @param sentence what went wrong, in the rule's or the writer's words
 * @param step the name of the step at which it came up; empty at the start
 * @param stepNumber the number of that step in the program; -1 at the start
 * @param phase the phase, if the binding or the act has one
 * @param after for a break that is never the first, the rule that is always broken before
 * @param trace the shortest way there
 * @param why the condition with the value of each part
 * @param tree the whole rule with the value of every part, if full explanations were asked for
 */
public record Finding(
        Kind kind,
        Optional<Rule> rule,
        Optional<String> rulebook,
        boolean unknown,
        ImmutableMap<String, String> bindings,
        int others,
        String sentence,
        String step,
        int stepNumber,
        Optional<Conductor> phase,
        Optional<String> after,
        ImmutableList<TraceStep> trace,
        Why why,
        Why tree) {

    /** What sort of thing was found. */
    public enum Kind {
        /** A rule is broken. */
        RULE("rule"),
        /** What a step requires is not so. */
        REQUIREMENT("requirement"),
        /** A person looks, finds otherwise, and the crew stops. */
        STOP("stop"),
        /** A step cannot be done. */
        CANNOT("cannot"),
        /** What the writer expects is not so. */
        EXPECTATION("expectation"),
        /** What must hold at the end does not. */
        ENDING("ending"),
        /** Two voltages, or a voltage and a ground, meet, and no rule said so. */
        FLASH("flash"),
        /** Somebody waits for what never comes. */
        STUCK("stuck");

        private final String word;

        Kind(String word) {
            this.word = word;
        }

        /** {@return the word that {@code must fail on} uses} */
        public String word() {
            return word;
        }
    }

    /** {@return the name under which variants and reports know it: the rule's, or the kind's word} */
    public String name() {
        return rule.map(Rule::name).orElse(kind.word());
    }

    /** {@return how much it weighs; only rules can weigh less than a stop} */
    public Rule.Severity severity() {
        return rule.map(Rule::severity).orElse(Rule.Severity.STOP);
    }
}
