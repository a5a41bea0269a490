package org.keeplit.gridfile;

import java.util.List;
import org.keeplit.network.Conductor;

/**
 * One winding.
 *
 * @param end the end of the transformer or tank
 * @param info what says its figures: the end itself, or its TransformerEndInfo
 * @param node its node
 * @param phases its conductors in their order, the neutral among them
 * @param connection {@code D}, {@code Y} or {@code I}
 * @param clock its phase angle clock, 0 if it is not said
 * @param grounded whether its neutral is grounded
 * @param volts its rated voltage: phase to phase, of a single winding its own
 * @param rating its rated power, in volt-amperes
 */
record Winding(
        CimObject end, CimObject info, CimObject node, List<Conductor> phases, char connection, int clock, boolean grounded, double volts, double rating) {
    /** {@return its conductors without the neutral} */
    List<Conductor> live() {
        return phases.stream().filter(p -> p != Conductor.N).toList();
    }

    boolean isDelta() {
        return connection == 'D' || connection == 'I' && live().size() == 2 && live().stream().noneMatch(Conductor::isLeg);
    }

    boolean isThreePhase() {
        return live().size() == 3;
    }

    /** {@return its rated voltage from phase to phase, in volts} */
    double lineToLine() {
        return isThreePhase() || isDelta() || live().stream().anyMatch(Conductor::isLeg) ? volts : volts * Math.sqrt(3);
    }

    /** {@return how it is joined, as a network text says it} */
    String joined() {
        return isDelta() ? "delta" : grounded ? "grounded wye" : "ungrounded wye";
    }
}
