package org.keeplit.electric.line;

import org.keeplit.electric.complex.Complex;
import org.keeplit.electric.complex.ComplexMatrix;

/**
 * What a line section is per mile.
 *
 * @param impedance ohm per mile, a row for each conductor kept
 * @param shunt siemens per mile
 */
public record LineConstants(ComplexMatrix impedance, ComplexMatrix shunt) {
    /**
     * Kron's reduction: takes out the conductors from {@code kept} on, which are grounded.
     *
     * @param primitive the matrix of all conductors
     * @param kept how many conductors stay
     * @return kept by kept
     */
    static ComplexMatrix reduce(ComplexMatrix primitive, int kept) {
        int all = primitive.rows();
        if (kept == all) {
            return primitive;
        }
        int[] stay = range(0, kept);
        int[] go = range(kept, all);
        ComplexMatrix across = primitive.pick(stay, go);
        ComplexMatrix change = across.times(
                primitive.pick(go, go).solve(primitive.pick(go, stay)));
        return primitive.pick(stay, stay).plus(change.times(-1)).symmetrized();
    }

    private static int[] range(int from, int to) {
        return java.util.stream.IntStream.range(from, to).toArray();
    }

    /**
     * The primitive impedance matrix by the modified Carson equations.
     *
     * @param resistance of each conductor, ohm per mile
     * @param feet the distance of two conductors; of one with itself its geometric mean radius
     */
    static ComplexMatrix primitive(double[] resistance, double[][] feet, Earth earth) {
        int n = resistance.length;
        return ComplexMatrix.of(n, n, (i, j) -> new Complex(
                (i == j ? resistance[i] : 0) + earth.resistance(), earth.reactance(feet[i][j])));
    }
}
