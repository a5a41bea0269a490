package org.keeplit.outcome;

/**
 * What came of one procedure at one place.
 *
 * @param procedure the procedure's name
 * @param place where, in words
 * @param answer what came of it
 * @param detail why, in words; for one that holds how many states there are
 */
public record SweepResult(String procedure, String place, Answer answer, String detail) {
    /** What can come of it. */
    public enum Answer {
        /** Every rule that comes up is kept in every state. */
        HOLDS("holds"),
        /** Something is broken. */
        BREAKS("breaks"),
        /** It does not begin as the procedure asks for, or is not built so. */
        DOES_NOT_APPLY("does not apply"),
        /** A limit was reached, or a figure could not be worked out. */
        UNDECIDED("undecided"),
        /** Nothing is broken, but no rule that stops came up: nothing was asked. */
        NOT_PROVED("not proved");

        private final String words;

        Answer(String words) {
            this.words = words;
        }

        /** {@return the words of reports} */
        public String words() {
            return words;
        }
    }
}
