package org.keeplit.electric.flow;

import org.keeplit.electric.complex.Complex;

/**
 * A single-phase transformer with a centre-tapped secondary, such as 7200 to 120/240 V: three windings on one core, the two
 * legs of the secondary interlaced. Of the nameplate's R + jX the primary has 0.5 R + j 0.8 X and each leg, on its own
 * voltage and the whole rating, R + j 0.4 X (Kersting, Distribution System Modeling and Analysis, chapter on centre-tapped
 * transformers; from memory). Both legs together are then R + jX, one leg alone 1.5 R + j 1.2 X.
 */
public final class CentreTapped {
    private CentreTapped() {}

    /**
     * Adds one.
     *
     * @param builder takes it
     * @param name its name
     * @param primary the two ends of the primary; {@link FlowModel#GROUND} for the neutral
     * @param secondary the first leg, the centre tap and the second leg
     * @param primaryVolts rated volts of the primary winding
     * @param legVolts rated volts of one leg, such as 120
     * @param kva rating
     * @param perUnit leakage R + jX in parts of the rating's base
     * @return its element index
     */
    public static int add(
            FlowModelBuilder builder,
            String name,
            int[] primary,
            int[] secondary,
            double primaryVolts,
            double legVolts,
            double kva,
            Complex perUnit) {
        Complex high = new Complex(0.5 * perUnit.re(), 0.8 * perUnit.im()).times(base(primaryVolts, kva));
        Complex leg = new Complex(perUnit.re(), 0.4 * perUnit.im()).times(base(legVolts, kva));
        return builder.transformer(
                name,
                new Winding(primary[0], primary[1], primaryVolts, high),
                new Winding(secondary[0], secondary[1], legVolts, leg),
                new Winding(secondary[1], secondary[2], legVolts, leg));
    }

    private static double base(double volts, double kva) {
        return volts * volts / (kva * 1000);
    }
}
