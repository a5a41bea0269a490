package org.keeplit.electric.line;

/**
 * The return path of Carson's equations.
 *
 * @param hertz the frequency
 * @param ohmMetres the resistivity of the ground
 */
public record Earth(double hertz, double ohmMetres) {
    /** 60 Hz and 100 ohm metres, the usual assumption. */
    public static final Earth USUAL = new Earth(60, 100);

    /** Resistance that the earth adds to every entry, ohm per mile. */
    double resistance() {
        return 0.00158836 * hertz;
    }

    /** Reactance between two conductors, or of one with its GMR for a distance, ohm per mile. */
    double reactance(double feet) {
        return 0.00202237 * hertz * (StrictMath.log(1 / feet) + 7.6786 + 0.5 * StrictMath.log(ohmMetres / hertz));
    }
}
