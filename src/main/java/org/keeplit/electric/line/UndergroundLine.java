package org.keeplit.electric.line;

import java.util.List;
import org.keeplit.electric.complex.Complex;
import org.keeplit.electric.complex.ComplexMatrix;

/** Underground lines of single-core cables whose shields are grounded at both ends. */
public final class UndergroundLine {
    private UndergroundLine() {}

    /**
     * A cable in its place.
     *
     * @param cable what it is
     * @param xFeet across the trench
     * @param yFeet up
     */
    public record Laid(Cable cable, double xFeet, double yFeet) {}

    /**
     * Computes a line.
     *
     * @param cables one a phase
     * @param grounded bare neutrals beside them; may be empty
     * @param earth the return path
     * @return impedance and admittance per mile
     */
    public static LineConstants of(List<Laid> cables, List<Wire> grounded, Earth earth) {
        int n = cables.size();
        int all = 2 * n + grounded.size();
        double[] resistance = new double[all];
        double[][] feet = new double[all][all];
        for (int i = 0; i < all; i++) {
            resistance[i] = i < n
                    ? cables.get(i).cable().core().ohmsPerMile()
                    : i < 2 * n
                            ? cables.get(i - n).cable().shieldOhmsPerMile()
                            : grounded.get(i - 2 * n).conductor().ohmsPerMile();
            for (int j = 0; j < all; j++) {
                feet[i][j] = distance(cables, grounded, i, j);
            }
        }
        ComplexMatrix impedance =
                LineConstants.reduce(LineConstants.primitive(resistance, feet, earth), n);
        double omega = 2 * Math.PI * earth.hertz();
        ComplexMatrix shunt = ComplexMatrix.of(n, n, (i, j) -> i != j
                ? Complex.ZERO
                : new Complex(0, omega * 1e-6 * cables.get(i).cable().microfaradPerMile()));
        return new LineConstants(impedance, shunt);
    }

    /** Conductors: the cores, the shields in the same order, the bare neutrals. */
    private static double distance(List<Laid> cables, List<Wire> grounded, int i, int j) {
        int n = cables.size();
        if (i >= 2 * n || j >= 2 * n) {
            int bare = Math.max(i, j) - 2 * n;
            Wire wire = grounded.get(bare);
            int other = Math.min(i, j);
            if (i == j) {
                return wire.conductor().gmrFeet();
            }
            return other >= 2 * n
                    ? wire.distance(grounded.get(other - 2 * n).xFeet(), grounded.get(other - 2 * n).yFeet())
                    : wire.distance(cables.get(other % n).xFeet(), cables.get(other % n).yFeet());
        }
        Laid a = cables.get(i % n);
        Laid b = cables.get(j % n);
        if (i % n != j % n) {
            return Math.hypot(a.xFeet() - b.xFeet(), a.yFeet() - b.yFeet());
        }
        if (i != j) {
            return a.cable().shieldRadiusFeet();
        }
        return i < n ? a.cable().core().gmrFeet() : a.cable().shieldGmrFeet();
    }
}
