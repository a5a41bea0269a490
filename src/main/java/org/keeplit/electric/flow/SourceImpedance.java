package org.keeplit.electric.flow;

import org.keeplit.electric.complex.Complex;
import org.keeplit.electric.complex.ComplexMatrix;

/** Voltages and impedances of balanced three-phase sources. */
public final class SourceImpedance {
    private SourceImpedance() {}

    /**
     * Balanced voltages A, B, C, with B a third of a turn behind A.
     *
     * @param lineToGround volts
     * @param degrees the angle of A
     * @return three phasors
     */
    public static Complex[] balanced(double lineToGround, double degrees) {
        return new Complex[] {
            Complex.polar(lineToGround, degrees),
            Complex.polar(lineToGround, degrees - 120),
            Complex.polar(lineToGround, degrees + 120)
        };
    }

    /**
     * The phase impedances of given sequence impedances.
     *
     * @param positive positive and negative sequence, ohm
     * @param zero zero sequence, ohm
     * @return 3 by 3
     */
    public static ComplexMatrix ofSequences(Complex positive, Complex zero) {
        Complex self = zero.plus(positive.times(2)).times(1.0 / 3);
        Complex mutual = zero.minus(positive).times(1.0 / 3);
        return ComplexMatrix.balanced(3, self, mutual);
    }

    /**
     * The phase impedances of given fault levels.
     *
     * @param lineToLine nominal volts
     * @param threePhase three-phase fault level, VA
     * @param reactanceRatio X/R of positive sequence
     * @param singlePhase line-to-ground fault level, the square root of 3 times voltage times current, VA
     * @param zeroReactanceRatio X/R of zero sequence
     * @return 3 by 3
     * @throws IllegalArgumentException if no zero-sequence impedance gives that line-to-ground level
     */
    public static ComplexMatrix ofFaultLevels(
            double lineToLine,
            double threePhase,
            double reactanceRatio,
            double singlePhase,
            double zeroReactanceRatio) {
        double squared = lineToLine * lineToLine;
        Complex positive = ofMagnitude(squared / threePhase, reactanceRatio);
        double loop = 3 * squared / singlePhase;
        Complex direction = ofMagnitude(1, zeroReactanceRatio);
        // |2 Z1 + t d| = loop, for the magnitude t of Z0 in direction d.
        Complex twice = positive.times(2);
        double along = twice.re() * direction.re() + twice.im() * direction.im();
        double rest = along * along - twice.abs() * twice.abs() + loop * loop;
        double magnitude = Math.sqrt(rest) - along;
        if (!(magnitude > 0)) {
            throw new IllegalArgumentException("No zero-sequence impedance gives a line-to-ground fault level of "
                    + singlePhase + " VA beside a three-phase level of " + threePhase + " VA.");
        }
        return ofSequences(positive, direction.times(magnitude));
    }

    private static Complex ofMagnitude(double ohms, double reactanceRatio) {
        double resistance = ohms / Math.hypot(1, reactanceRatio);
        return new Complex(resistance, resistance * reactanceRatio);
    }
}
