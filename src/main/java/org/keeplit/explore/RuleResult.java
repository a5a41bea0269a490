package org.keeplit.explore;

import java.util.Optional;
import org.keeplit.rule.Rule;

/**
 * What came of one rule.
 *
 * @param rulebook the rulebook that it is in
 * @param rule the rule
 * @param verdict what came of it
 * @param instances how many bindings were judged
 * @param judged how often it was judged
 * @param finding the shortest break, if it is broken
 * @param memoryBits how many bits of a state it takes to remember what it asks for
 * @param remark what can be said of it before any state is looked at, such as that nothing here can break it
 * @param example the rule explained in full in the state in which it was first put to the question, if that was asked
 */
public record RuleResult(
        String rulebook,
        Rule rule,
        Verdict verdict,
        int instances,
        long judged,
        Optional<Finding> finding,
        int memoryBits,
        Optional<String> remark,
        Optional<Why> example) {

    /** What can come of a rule. */
    public enum Verdict {
        /** It was put to the question and kept in every state. */
        HOLDS,
        /** It is broken with no earlier break. */
        BROKEN,
        /** It is broken, but only after another was. */
        ONLY_AFTER,
        /** Its case never came up. */
        NOT_EXERCISED,
        /** The run was cut before it was broken. */
        UNDECIDED
    }
}
