package org.keeplit.insight;

import com.google.common.collect.ImmutableList;
import java.util.Optional;
import org.keeplit.explore.Finding;
import org.keeplit.program.Checking;
import org.keeplit.program.Slip;

/**
 * How one slip ends.
 *
 * @param slip the slip
 * @param step the name of the step at which it happens
 * @param ending how it ends
 * @param findings what was found: the harm of an exposed slip, shortest first; the checks that catch one; what cannot be
 *     done; nothing for a harmless one
 * @param cure of an exposed slip, the look that is proved to catch it and to leave the procedure holding; nothing if none was
 *     found
 */
public record SlipResult(Slip slip, String step, Ending ending, ImmutableList<Finding> findings, Optional<Cure> cure) {
    SlipResult(Slip slip, String step, Ending ending, ImmutableList<Finding> findings) {
        this(slip, step, ending, findings, Optional.empty());
    }

    /**
     * A look that catches a slip.
     *
     * @param check the look
     * @param before the name of the step before which it comes; empty at the end
     */
    public record Cure(Checking.Check check, String before) {}

    SlipResult with(Cure found) {
        return new SlipResult(slip, step, ending, findings, Optional.of(found));
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
