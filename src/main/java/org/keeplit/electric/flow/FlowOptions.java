package org.keeplit.electric.flow;

import static com.google.common.base.Preconditions.checkArgument;

/**
 * The numbers of the method. Part of the model, so that a solution depends on nothing else.
 *
 * @param tolerance iterations end when no voltage across a load moves by more than this part of the
 *     load's rated voltage
 * @param iterations the most iterations for one state
 * @param strayConductance siemens from every terminal to ground, which hold islands that nothing else
 *     refers to ground; their common voltage is that of equal stray conductances
 */
public record FlowOptions(double tolerance, int iterations, double strayConductance) {
    /** The usual numbers. */
    public static final FlowOptions DEFAULT = new FlowOptions(1e-10, 100, 1e-9);

    // Refuses what cannot work.
    public FlowOptions {
        checkArgument(tolerance > 0, "The tolerance must be above zero, not %s.", tolerance);
        checkArgument(iterations > 0, "There must be at least one iteration, not %s.", iterations);
        checkArgument(
                strayConductance > 0,
                "Without stray conductance an island may hang in the air; it must be above zero, not %s.",
                strayConductance);
    }
}
