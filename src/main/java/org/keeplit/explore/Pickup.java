package org.keeplit.explore;

/**
 * The current at which something trips, known only to a tolerance.
 *
 * @param least the least at which it may, in ampere
 * @param most the greatest at which it may not
 */
record Pickup(double least, double most) {
    /** Load flows end within about this, relative. */
    private static final double CLOSE = 1e-6;

    static Pickup of(double current, double tolerance) {
        return new Pickup(current * (1 - tolerance) * (1 - CLOSE), current * (1 + tolerance) * (1 + CLOSE));
    }

    /** {@return whether a current up to this may make it trip} */
    boolean may(double greatest) {
        return greatest >= least;
    }

    /** {@return whether even a current down to this makes it trip} */
    boolean must(double least) {
        return least > most;
    }
}
