package org.keeplit.plain;

/** A complex number. @param re its real part @param im its imaginary part */
record Cx(double re, double im) {
    static final Cx ZERO = new Cx(0, 0);
    static final Cx ONE = new Cx(1, 0);

    static Cx real(double value) {
        return new Cx(value, 0);
    }

    static Cx polar(double size, double degrees) {
        return new Cx(size * Math.cos(Math.toRadians(degrees)), size * Math.sin(Math.toRadians(degrees)));
    }

    Cx plus(Cx other) {
        return new Cx(re + other.re, im + other.im);
    }

    Cx minus(Cx other) {
        return new Cx(re - other.re, im - other.im);
    }

    Cx times(Cx other) {
        return new Cx(re * other.re - im * other.im, re * other.im + im * other.re);
    }

    Cx times(double factor) {
        return new Cx(re * factor, im * factor);
    }

    Cx over(Cx other) {
        double square = other.re * other.re + other.im * other.im;
        return new Cx((re * other.re + im * other.im) / square, (im * other.re - re * other.im) / square);
    }

    Cx conjugate() {
        return new Cx(re, -im);
    }

    double size() {
        return Math.hypot(re, im);
    }
}
