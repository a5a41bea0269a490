package org.keeplit.outcome;

import org.keeplit.condition.Condition;

/**
 * A question inside a rule that is answered by itself: an atom, a comparison, a question about the past. What stands
 * under {@code and}, {@code or}, a quantifier or a name is taken apart; an atom with its {@code not} is one question.
 *
 * @param place where in the rule it stands
 * @param condition the question
 * @param text the question in words, its variables as the rule writes them
 */
public record RulePart(Place place, Condition condition, String text) {

    /** Where in a rule a question stands. */
    public enum Place {
        /** In its scope: {@code while}, or what narrows a variable. */
        WHEN("when it is judged"),
        /** In what is required. */
        REQUIRED("require"),
        /** In what excuses. */
        UNLESS("unless");

        private final String word;

        Place(String word) {
            this.word = word;
        }

        /** {@return the word by which reports name it} */
        public String word() {
            return word;
        }
    }
}
