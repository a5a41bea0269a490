package org.keeplit.explore;

import java.util.List;
import org.keeplit.electric.complex.Complex;

/**
 * Between which bounds the sum of currents lies when some of them may be had in any part, from nothing to all. The sums
 * fill a convex polygon with a centre of symmetry: the greatest is at a corner, the least at a side or, where
 * the origin lies inside, nothing.
 */
final class SharedCurrent {
    private SharedCurrent() {}

    /**
     * The bounds.
     *
     * @param whole the sum of the currents that are known, in ampere
     * @param parts the currents that may be had in any part; at most three
     * @return the least and the greatest magnitude
     */
    static double[] bounds(Complex whole, List<Complex> parts) {
        double least = whole.abs();
        double greatest = 0;
        for (int taken = 0; taken < 1 << parts.size(); taken++) {
            Complex corner = whole;
            for (int i = 0; i < parts.size(); i++) {
                corner = (taken >> i & 1) == 1 ? corner.plus(parts.get(i)) : corner;
            }
            greatest = Math.max(greatest, corner.abs());
            for (int i = 0; i < parts.size(); i++) {
                if ((taken >> i & 1) == 0) {
                    least = Math.min(least, toSegment(corner, parts.get(i)));
                }
            }
        }
        return new double[] {holdsOrigin(whole, parts) ? 0 : least, greatest};
    }

    /** {@return the distance of the origin from a side that begins at a corner} */
    private static double toSegment(Complex corner, Complex side) {
        double length = side.re() * side.re() + side.im() * side.im();
        double at = length == 0 ? 0 : -(corner.re() * side.re() + corner.im() * side.im()) / length;
        return corner.plus(side.times(Math.max(0, Math.min(1, at)))).abs();
    }

    /** The polygon is what lies between two lines along each of its sides, if it has two sides that differ. */
    private static boolean holdsOrigin(Complex whole, List<Complex> parts) {
        boolean wide = false;
        for (Complex side : parts) {
            double middle = across(side, whole);
            double reach = 0;
            for (Complex part : parts) {
                middle += across(side, part) / 2;
                reach += Math.abs(across(side, part)) / 2;
            }
            if (Math.abs(middle) > reach) {
                return false;
            }
            wide |= reach > 0;
        }
        return wide;
    }

    private static double across(Complex side, Complex current) {
        return side.re() * current.im() - side.im() * current.re();
    }
}
