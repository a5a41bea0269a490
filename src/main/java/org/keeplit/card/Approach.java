package org.keeplit.card;

import com.google.common.collect.ImmutableList;
import java.math.BigDecimal;
import java.util.Locale;
import org.keeplit.network.Network;
import org.keeplit.reference.ApproachDistances;
import org.keeplit.reference.ApproachDistances.Exposure;
import org.keeplit.reference.ApproachDistances.Method;

/** The approach distances of a network's voltage by 29 CFR 1910.269 table R-6. */
final class Approach {
    private static final double FOOT = 0.3048;
    /** The height up to which the table holds as it stands. */
    private static final double LOW = 900;
    /** The height up to which there are factors. */
    private static final double HIGHEST = 6000;

    private Approach() {}

    /** {@return the distances in words, those to ground first; none if the network states no voltage that the table has} */
    static ImmutableList<String> of(Network network) {
        if (!network.system().containsKey("voltage")) {
            return ImmutableList.of();
        }
        double kilovolts = network.system().get("voltage").si() / 1000;
        if (kilovolts <= 0.3 || kilovolts > 72.5) {
            return ImmutableList.of();
        }
        boolean stated = network.system().containsKey("altitude");
        double height = stated ? network.system().get("altitude").si() : LOW;
        if (height > HIGHEST) {
            return ImmutableList.of();
        }
        String where = !stated
                ? "up to 900 m (3,000 ft) above sea; the network states no height. Higher up keep more."
                : height <= LOW
                        ? "at " + number(height) + " m above sea, as the network states."
                        : "at " + number(height) + " m above sea, as the network states: times " + number(ApproachDistances.altitudeFactor(height))
                                + ", as its footnote says (table R-5).";
        return ImmutableList.of(
                words(kilovolts, Exposure.PHASE_TO_GROUND, height, "to a part at line voltage, from ground"),
                words(kilovolts, Exposure.PHASE_TO_PHASE, height, "to a part of another phase"),
                "29 CFR 1910.269 table R-6 at " + number(kilovolts) + " kV, " + where + " Local rules come first where they ask for more.");
    }

    private static String words(double kilovolts, Exposure exposure, double height, String to) {
        // Never less than the table, whichever way it is rounded.
        double metres = Math.ceil(ApproachDistances.metres(kilovolts, exposure, height, Method.TABLE) * 100 - 1e-6) / 100;
        double feet = Math.ceil(metres / FOOT * 100 - 1e-6) / 100;
        return String.format(Locale.ROOT, "%.2f m (%.2f ft) %s", metres, feet, to);
    }

    private static String number(double kilovolts) {
        return new BigDecimal(String.valueOf(Math.round(kilovolts * 1000) / 1000.0)).stripTrailingZeros().toPlainString();
    }
}
