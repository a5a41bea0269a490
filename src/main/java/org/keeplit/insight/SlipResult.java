package org.keeplit.insight;

import org.keeplit.explore.Finding;
import org.keeplit.program.Slip;

import com.google.common.collect.ImmutableList;

/**
 * How one slip ends.
 *
 * @param slip the slip
 * @param step the name of the step at which it happens
 * @param ending how it ends
 * @param findings what was found: the harm of an exposed slip, shortest first; the checks that catch one; what cannot be
 *     done; nothing for a harmless one
 */
public record SlipResult(Slip slip, String step, Ending ending, ImmutableList<Finding> findings) {
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
