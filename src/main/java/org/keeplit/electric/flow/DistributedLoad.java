package org.keeplit.electric.flow;

import org.keeplit.electric.complex.ComplexMatrix;

/**
 * A load spread evenly along a line section, lumped so that both the voltage drop over the section
 * and its losses are right: two thirds at a quarter of the way, one third at the end (Kersting,
 * Distribution System Modeling and Analysis, chapter 3).
 */
public final class DistributedLoad {
    /** The part of the load that belongs at the quarter point. */
    public static final double AT_QUARTER = 2.0 / 3;

    /** The part of the load that belongs at the far end. */
    public static final double AT_END = 1.0 / 3;

    private DistributedLoad() {}

    /**
     * Adds a section in two pieces.
     *
     * @param builder takes the pieces, "name" (the quarter) and "name.rest"
     * @param name the section's name
     * @param from the sending terminals
     * @param quarter the terminals of the quarter point, made for it
     * @param to the receiving terminals
     * @param impedance ohm per unit of length
     * @param shunt siemens per unit of length
     * @param length in the same unit
     * @return the element indices of the two pieces
     */
    public static int[] section(
            FlowModelBuilder builder,
            String name,
            int[] from,
            int[] quarter,
            int[] to,
            ComplexMatrix impedance,
            ComplexMatrix shunt,
            double length) {
        return new int[] {
            builder.line(name, from, quarter, impedance, shunt, length / 4),
            builder.line(name + ".rest", quarter, to, impedance, shunt, length * 3 / 4)
        };
    }
}
