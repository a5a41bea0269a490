package org.keeplit.electric.flow;

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
}
