package org.keeplit.electric.flow;

import org.keeplit.electric.complex.Complex;

/**
 * What a load draws at rated voltage, by the part that keeps its power, the part that keeps its
 * current and the part that keeps its impedance as the voltage moves; voltamperes.
 *
 * @param constantPower P + jQ that stays
 * @param constantCurrent P + jQ in proportion to the voltage
 * @param constantImpedance P + jQ in proportion to the square of the voltage
 */
public record LoadPower(Complex constantPower, Complex constantCurrent, Complex constantImpedance) {
    /** No load. */
    public static final LoadPower NONE = new LoadPower(Complex.ZERO, Complex.ZERO, Complex.ZERO);

    /**
     * A load of constant power.
     *
     * @param power P + jQ
     * @return the load
     */
    public static LoadPower constantPower(Complex power) {
        return new LoadPower(power, Complex.ZERO, Complex.ZERO);
    }

    /**
     * A load of constant current magnitude and power factor.
     *
     * @param power P + jQ at rated voltage
     * @return the load
     */
    public static LoadPower constantCurrent(Complex power) {
        return new LoadPower(Complex.ZERO, power, Complex.ZERO);
    }

    /**
     * A load of constant impedance.
     *
     * @param power P + jQ at rated voltage
     * @return the load
     */
    public static LoadPower constantImpedance(Complex power) {
        return new LoadPower(Complex.ZERO, Complex.ZERO, power);
    }

    /**
     * A mixture.
     *
     * @param power P + jQ at rated voltage
     * @param current the part of constant current, 0 to 1
     * @param impedance the part of constant impedance, 0 to 1; the rest keeps its power
     * @return the load
     */
    public static LoadPower mixed(Complex power, double current, double impedance) {
        return new LoadPower(
                power.times(1 - current - impedance), power.times(current), power.times(impedance));
    }

    /**
     * Scales all three parts.
     *
     * @param factor the factor
     * @return the scaled load
     */
    public LoadPower times(double factor) {
        return new LoadPower(
                constantPower.times(factor), constantCurrent.times(factor), constantImpedance.times(factor));
    }

    /**
     * The power at rated voltage.
     *
     * @return the sum of the three parts
     */
    public Complex total() {
        return constantPower.plus(constantCurrent).plus(constantImpedance);
    }

    boolean isFinite() {
        return constantPower.isFinite() && constantCurrent.isFinite() && constantImpedance.isFinite();
    }
}
