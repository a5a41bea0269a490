package org.keeplit.outcome;

import com.google.common.collect.ImmutableList;
import java.util.Optional;

/**
 * How one slip ends.
 *
 * @param kind what goes wrong
 * @param act the number of the act at which it does, from 0
 * @param words what is done instead, in words
 * @param step the name of the step at which it happens
 * @param ending how it ends
 * @param findings what was found: the harm of an exposed slip, shortest first; the checks that catch one; what cannot be
 *     done; nothing for a harmless one
 * @param cure of an exposed slip, the look that is proved to catch it and to leave the procedure holding; nothing if none was
 *     found
 */
public record SlipResult(
        SlipKind kind, int act, String words, String step, Ending ending, ImmutableList<Finding> findings, Optional<Cure> cure) {
    /**
     * A look that catches a slip.
     *
     * @param actor who looks: somebody else, if there is anybody
     * @param look what is looked at, in words
     * @param before the name of the step before which it comes; empty at the end
     */
    public record Cure(String actor, String look, String before) {}

    /**
     * {@return the same with a look that catches it}
     *
     * @param found the look
     */
    public SlipResult with(Cure found) {
        return new SlipResult(kind, act, words, step, ending, findings, Optional.of(found));
    }

    /** How a slip can end. */
    public enum Ending {
        /** Nothing comes of it, whatever the crew does then. */
        HARMLESS("harmless"),
        /** Something later cannot be done, and nothing is lost before. */
        NOTICED("noticed"),
        /** Somebody looks and finds otherwise before anything is lost. */
        CAUGHT("caught"),
        /** Some way leads to harm before anybody looks. */
        EXPOSED("exposed"),
        /** A limit was reached, or a figure could not be worked out. */
        UNDECIDED("undecided");

        private final String word;

        Ending(String word) {
            this.word = word;
        }

        /** {@return the word of reports} */
        public String word() {
            return word;
        }
    }
}
