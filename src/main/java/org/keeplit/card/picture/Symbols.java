package org.keeplit.card.picture;

import org.keeplit.network.Kind;
import org.keeplit.network.Trait;

/**
 * Symbols of a single phase, drawn along a line from left to right, 40 units wide.
 *
 * <p>After the descriptions of IEC 60617 (from memory): switch 07-02-01, the blade hinged at one end; circuit-breaker function 07-01-02,
 * a cross at the fixed end; disconnector function 07-01-03, a bar across the fixed end; fuse 07-21-01, an oblong with the line
 * through it; earth 02-15-01, three bars of falling length. The standard draws contacts open; here the blade shows the position, and a
 * word beside it says it.
 */
final class Symbols {
    /** How wide a symbol is. */
    static final double WIDTH = 40;

    private Symbols() {}

    /** A pole of a switching device. */
    static void contact(Svg svg, double x, double y, Kind kind, boolean closed) {
        double hinge = x + 8;
        double fixed = x + WIDTH - 8;
        svg.path("M" + Svg.n(x) + " " + Svg.n(y) + "H" + Svg.n(hinge) + "M" + Svg.n(fixed) + " " + Svg.n(y) + "H"
                + Svg.n(x + WIDTH), 2);
        if (kind.has(Trait.TRIPS)) {
            svg.path("M" + Svg.n(fixed - 4) + " " + Svg.n(y - 4) + "l8 8m0 -8l-8 8", 1.6);
        } else if (kind.has(Trait.ISOLATES)) {
            svg.path("M" + Svg.n(fixed) + " " + Svg.n(y - 5) + "v10", 1.6);
        }
        String blade = closed ? "H" + Svg.n(fixed) : "L" + Svg.n(fixed - 3) + " " + Svg.n(y - 12);
        svg.path("M" + Svg.n(hinge) + " " + Svg.n(y) + blade, 2.4);
        if (kind.has(Trait.FUSIBLE)) {
            svg.box(closed ? hinge + 5 : hinge + 4, closed ? y - 3.5 : y - 11, 14, 7, 1.2);
        }
    }

    /** A tapped winding between two terminals, with the arrow of adjustment through it: IEC 60617 06-09-11 in its plain form. */
    static void regulator(Svg svg, double x, double y) {
        svg.path("M" + Svg.n(x) + " " + Svg.n(y) + "h4", 2);
        svg.path("M" + Svg.n(x + 4) + " " + Svg.n(y) + "a4 4 0 0 1 8 0a4 4 0 0 1 8 0a4 4 0 0 1 8 0a4 4 0 0 1 8 0h4", 1.8);
        svg.path("M" + Svg.n(x + 10) + " " + Svg.n(y + 8) + "l20 -18m-7 1l7 -1l-1 7", 1.2);
    }

    /** A transformer between two terminals: two windings as circles that overlap, IEC 60617 06-09-01 (from memory). */
    static void transformer(Svg svg, double x, double y) {
        svg.path("M" + Svg.n(x) + " " + Svg.n(y) + "h6M" + Svg.n(x + 34) + " " + Svg.n(y) + "h6", 2);
        svg.path("M" + Svg.n(x + 6) + " " + Svg.n(y) + "a8.5 8.5 0 1 0 17 0a8.5 8.5 0 1 0 -17 0M" + Svg.n(x + 17) + " " + Svg.n(y)
                + "a8.5 8.5 0 1 0 17 0a8.5 8.5 0 1 0 -17 0", 1.6);
    }

    /** What takes power: an arrow away from the line, as one-line pictures draw it by IEEE 315 practice (from memory). */
    static void load(Svg svg, double x, double y) {
        svg.path("M" + Svg.n(x) + " " + Svg.n(y) + "h10m-5 -4l6 4l-6 4", 1.6);
    }

    /** A capacitor bank that hangs on a line: two plates across its lead, IEC 60617 04-02-01 (from memory). */
    static void capacitor(Svg svg, double x, double y) {
        svg.path("M" + Svg.n(x) + " " + Svg.n(y) + "h6m0 -6v12m5 -12v12m0 -6h4", 1.6);
    }

    /** A generator: a circle with its letter, IEC 60617 06-04-01 (from memory). */
    static void generator(Svg svg, double x, double y) {
        svg.circle(x + 8, y, 8, false);
        svg.text(x + 8, y + 4, Svg.Anchor.MIDDLE, true, "G");
    }

    /** The earth. @param y where its lead ends */
    static void earth(Svg svg, double x, double y) {
        svg.path("M" + Svg.n(x - 7) + " " + Svg.n(y) + "h14M" + Svg.n(x - 4.5) + " " + Svg.n(y + 3) + "h9M" + Svg.n(x - 2) + " "
                + Svg.n(y + 6) + "h4", 1.6);
    }

    /** An alternating source: a circle with one wave in it. */
    static void source(Svg svg, double x, double y) {
        svg.circle(x, y, 11, false);
        svg.path("M" + Svg.n(x - 6) + " " + Svg.n(y) + "q3 -7 6 0q3 7 6 0", 1.4);
    }
}
