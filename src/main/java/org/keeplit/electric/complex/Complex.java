package org.keeplit.electric.complex;

import static com.google.common.base.Preconditions.checkArgument;

/**
 * A complex number: a phasor (rms), an impedance or a power.
 *
 * @param re the real part
 * @param im the imaginary part
 */
public record Complex(double re, double im) {
    /** Zero. */
    public static final Complex ZERO = new Complex(0, 0);

    /** One. */
    public static final Complex ONE = new Complex(1, 0);

    /**
     * A real number.
     *
     * @param re the value
     * @return the number with imaginary part zero
     */
    public static Complex real(double re) {
        return new Complex(re, 0);
    }

    /**
     * A number in polar form.
     *
     * @param magnitude the absolute value
     * @param degrees the angle in degrees
     * @return the number
     */
    public static Complex polar(double magnitude, double degrees) {
        // Strict: the same digits on every machine.
        double angle = Math.toRadians(degrees);
        return new Complex(magnitude * StrictMath.cos(angle), magnitude * StrictMath.sin(angle));
    }

    /**
     * Adds.
     *
     * @param other the summand
     * @return this + other
     */
    public Complex plus(Complex other) {
        return new Complex(re + other.re, im + other.im);
    }

    /**
     * Subtracts.
     *
     * @param other the subtrahend
     * @return this - other
     */
    public Complex minus(Complex other) {
        return new Complex(re - other.re, im - other.im);
    }

    /**
     * Multiplies.
     *
     * @param other the factor
     * @return this times other
     */
    public Complex times(Complex other) {
        return new Complex(re * other.re - im * other.im, re * other.im + im * other.re);
    }

    /**
     * Multiplies by a real factor.
     *
     * @param factor the factor
     * @return this times factor
     */
    public Complex times(double factor) {
        return new Complex(re * factor, im * factor);
    }

    /**
     * Divides.
     *
     * @param divisor the divisor, not zero
     * @return this / divisor
     */
    public Complex over(Complex divisor) {
        return times(divisor.reciprocal());
    }

    /**
     * The reciprocal.
     *
     * @return 1 / this
     * @throws IllegalArgumentException if this is zero
     */
    public Complex reciprocal() {
        double scale = Math.max(Math.abs(re), Math.abs(im));
        checkArgument(scale > 0, "Zero has no reciprocal.");
        double a = re / scale;
        double b = im / scale;
        double norm = (a * a + b * b) * scale;
        return new Complex(a / norm, -b / norm);
    }

    /**
     * The negative.
     *
     * @return -this
     */
    public Complex negate() {
        return new Complex(-re, -im);
    }

    /**
     * The conjugate.
     *
     * @return the number with the sign of the imaginary part turned
     */
    public Complex conjugate() {
        return new Complex(re, -im);
    }

    /**
     * The absolute value.
     *
     * @return the magnitude, not negative
     */
    public double abs() {
        // No current or voltage is so large or so small that its square would not fit.
        return Math.sqrt(re * re + im * im);
    }

    /**
     * The angle.
     *
     * @return degrees in (-180, 180]; 0 for zero
     */
    public double degrees() {
        return Math.toDegrees(StrictMath.atan2(im, re));
    }

    /**
     * Says whether both parts are finite.
     *
     * @return false for NaN and infinities
     */
    public boolean isFinite() {
        return Double.isFinite(re) && Double.isFinite(im);
    }

    /**
     * Says whether the number is exactly zero, of either sign.
     *
     * @return true if both parts are zero
     */
    public boolean isZero() {
        return re == 0 && im == 0;
    }
}
