package org.keeplit.outcome;

import com.google.common.collect.ImmutableList;
import org.keeplit.procedure.Instance;

/**
 * All single slips of a procedure at one place, each with its end.
 *
 * @param instance the procedure, where it was tried and from which start
 * @param holds whether it holds without a slip; if not, nothing was tried
 * @param cut whether a limit was reached before it was known whether it holds, or it was stopped; then slips are missing
 * @param slips the slips, in the order of the acts
 */
public record SlipTable(Instance instance, boolean holds, boolean cut, ImmutableList<SlipResult> slips) {
    /**
     * A table of which nothing is missing.
     *
     * @param instance the procedure, where it was tried and from which start
     * @param holds whether it holds without a slip
     * @param slips the slips, in the order of the acts
     */
    public SlipTable(Instance instance, boolean holds, ImmutableList<SlipResult> slips) {
        this(instance, holds, false, slips);
    }

    /**
     * {@return how many slips end in one way}
     *
     * @param ending the way
     */
    public long count(SlipResult.Ending ending) {
        return slips.stream().filter(s -> s.ending() == ending).count();
    }
}
