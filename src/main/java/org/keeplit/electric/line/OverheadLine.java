package org.keeplit.electric.line;

import java.util.List;
import java.util.stream.Stream;
import org.keeplit.electric.complex.Complex;
import org.keeplit.electric.complex.ComplexMatrix;

/** Overhead lines of bare wires. */
public final class OverheadLine {
    /** One over 2 pi times the permittivity of air, in miles per microfarad. */
    private static final double POTENTIAL = 11.17689;

    private OverheadLine() {}

    /**
     * Computes a line.
     *
     * @param phases the conductors to keep, in order; an explicit neutral may be among them
     * @param grounded multi-grounded neutrals, to be reduced into the rest; may be empty
     * @param earth the return path
     * @return impedance and admittance per mile
     * @throws IllegalArgumentException if there is no phase, a wire is not above ground, or two wires
     *     are in one place
     */
    public static LineConstants of(List<Wire> phases, List<Wire> grounded, Earth earth) {
        if (phases.isEmpty()) {
            throw new IllegalArgumentException("A line needs a phase conductor.");
        }
        List<Wire> wires = Stream.concat(phases.stream(), grounded.stream()).toList();
        double[][] feet = distances(wires);
        double[] resistance =
                wires.stream().mapToDouble(w -> w.conductor().ohmsPerMile()).toArray();
        ComplexMatrix impedance =
                LineConstants.reduce(LineConstants.primitive(resistance, feet, earth), phases.size());
        return new LineConstants(impedance, shunt(wires, feet, phases.size(), earth));
    }

    private static double[][] distances(List<Wire> wires) {
        double[][] feet = new double[wires.size()][wires.size()];
        for (int i = 0; i < feet.length; i++) {
            Wire wire = wires.get(i);
            if (!(wire.yFeet() > 0)) {
                throw new IllegalArgumentException("An overhead wire is at height " + wire.yFeet() + " ft.");
            }
            for (int j = 0; j < feet.length; j++) {
                feet[i][j] = i == j
                        ? wire.conductor().gmrFeet()
                        : wire.distance(wires.get(j).xFeet(), wires.get(j).yFeet());
                if (!(feet[i][j] > 0)) {
                    throw new IllegalArgumentException("Wires " + (i + 1) + " and " + (j + 1) + " are in one place.");
                }
            }
        }
        return feet;
    }

    /** Potential coefficients with images in the ground, reduced, inverted. */
    private static ComplexMatrix shunt(List<Wire> wires, double[][] feet, int kept, Earth earth) {
        int n = wires.size();
        ComplexMatrix potential = ComplexMatrix.of(n, n, (i, j) -> {
            Wire a = wires.get(i);
            double image = a.distance(wires.get(j).xFeet(), -wires.get(j).yFeet());
            double own = i == j ? a.conductor().diameterInches() / 24 : feet[i][j];
            return Complex.real(POTENTIAL * StrictMath.log(image / own));
        });
        double omega = 2 * Math.PI * earth.hertz();
        return LineConstants.reduce(potential, kept).inverse().times(new Complex(0, omega * 1e-6));
    }
}
