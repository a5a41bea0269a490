package org.keeplit.outcome;

import com.google.common.collect.ImmutableList;

/**
 * One act of a trace, or what came by itself after it, with what it changed.
 *
 * @param number its place, from 1
 * @param byItself whether nobody did it
 * @param actor who acts; the device, if it came by itself
 * @param text what is done
 * @param step the name of the step that it belongs to
 * @param line the line of the procedure file
 * @param changes what changed, in words
 * @param lost the loads that lost supply with it
 */
public record TraceStep(
        int number,
        boolean byItself,
        String actor,
        String text,
        String step,
        int line,
        ImmutableList<String> changes,
        ImmutableList<Lost> lost) {

    /**
     * A load that lost supply.
     *
     * @param load its name
     * @param customers how many customers
     * @param phases on which phases
     * @param critical who depends on it, or empty
     */
    public record Lost(String load, int customers, String phases, String critical) {}
}
