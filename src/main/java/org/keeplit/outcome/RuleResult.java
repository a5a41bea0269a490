package org.keeplit.outcome;

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
        Optional<Remark> remark,
        Optional<Why> example) {

    /** What can be said of a rule before any state is looked at. */
    public enum Remark {
        /** Its case cannot come up in this network and procedure. */
        CANNOT_COME_UP("nothing in this network and procedure can bring it up", "cannot come up here"),
        /** Nothing that can be done here breaks it. */
        CANNOT_BE_BROKEN("nothing in this network and procedure can break it", "cannot be broken here");

        private final String sentence;
        private final String heading;

        Remark(String sentence, String heading) {
            this.sentence = sentence;
            this.heading = heading;
        }

        /** {@return the remark on one rule} */
        public String sentence() {
            return sentence;
        }

        /** {@return the words before a list of such rules} */
        public String heading() {
            return heading;
        }
    }

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
