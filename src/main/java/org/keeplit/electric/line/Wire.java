package org.keeplit.electric.line;

/**
 * A bare conductor in its place.
 *
 * @param conductor what it is
 * @param xFeet across the line
 * @param yFeet above ground
 */
public record Wire(Conductor conductor, double xFeet, double yFeet) {
    double distance(double otherX, double otherY) {
        return Math.hypot(xFeet - otherX, yFeet - otherY);
    }
}
