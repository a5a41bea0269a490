package org.keeplit.outcome;

import com.google.common.collect.ImmutableList;
import org.keeplit.rule.Rule;

/**
 * How a rule was put to the test in one run.
 *
 * @param rule the rule
 * @param parts its questions with the answers that came up
 */
public record RuleSeen(Rule rule, ImmutableList<PartSeen> parts) {

    /** {@return whether something excused it} */
    public boolean isExcused() {
        return parts.stream().anyMatch(p -> p.part().place() == RulePart.Place.UNLESS && p.isTrue());
    }

    /**
     * A question with the answers that came up wherever the rule was judged.
     *
     * @param part the question
     * @param isTrue whether it was true somewhere
     * @param isFalse whether it was false somewhere, or could not be shown to be true
     */
    public record PartSeen(RulePart part, boolean isTrue, boolean isFalse) {
        /**
         * {@return both runs together}
         *
         * @param other the same question in another run
         */
        public PartSeen and(PartSeen other) {
            return new PartSeen(part, isTrue || other.isTrue, isFalse || other.isFalse);
        }

        /** {@return whether it was seen both true and false} */
        public boolean isCovered() {
            return isTrue && isFalse;
        }
    }
}
