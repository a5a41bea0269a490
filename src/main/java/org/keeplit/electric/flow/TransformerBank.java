package org.keeplit.electric.flow;

import org.keeplit.electric.complex.Complex;

/** Three single-phase units, or three legs of one core, as a three-phase bank. */
public final class TransformerBank {
    private TransformerBank() {}

    /**
     * One side of a bank.
     *
     * @param phases its three phase terminals
     * @param neutral where the neutral of a wye is: a terminal, or ground; a delta does not use it
     * @param connection how the windings lie
     * @param lineToLineVolts rated volts
     */
    public record Side(int[] phases, int neutral, WindingConnection connection, double lineToLineVolts) {
        private Winding winding(int k, double kva, Complex perUnit) {
            double volts = lineToLineVolts * connection.windingVolts();
            int back = connection.back(k);
            Complex leakage = perUnit.times(volts * volts / (kva * 1000 / 3));
            return new Winding(phases[k], back < 0 ? neutral : phases[back], volts, leakage);
        }
    }

    /**
     * Adds a bank; half of the impedance goes to each side. The clock shift follows from the two
     * connections, since winding k of one side shares its core with winding k of the other.
     *
     * @param builder takes the units, named "name.1" to "name.3"
     * @param name the bank's name
     * @param primary one side
     * @param secondary the other side
     * @param kva three-phase rating
     * @param perUnit leakage R + jX in parts of the rating's base
     * @return the element indices of the units
     */
    public static int[] add(
            FlowModelBuilder builder, String name, Side primary, Side secondary, double kva, Complex perUnit) {
        int[] units = new int[3];
        Complex half = perUnit.times(0.5);
        for (int k = 0; k < 3; k++) {
            units[k] = builder.transformer(
                    name + "." + (k + 1), primary.winding(k, kva, half), secondary.winding(k, kva, half));
        }
        return units;
    }
}
