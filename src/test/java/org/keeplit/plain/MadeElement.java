package org.keeplit.plain;

import java.util.List;
import java.util.Set;

/**
 * One line of a made network.
 *
 * @param kind its kind
 * @param name its name
 * @param from its node, or the one on its source side
 * @param to the node on its load side; null for what hangs on one node
 * @param phases its phases
 * @param more the other attributes
 */
record MadeElement(String kind, String name, String from, String to, String phases, List<String> more) {
    private static final Set<String> NO_DEVICES =
            Set.of("line", "cable", "regulator", "transformer", "load", "capacitor", "generator", "source");
    private static final Set<String> LEADS = Set.of("recloser", "electronic-recloser");

    String text() {
        String place = to == null ? " at " + from : " from " + from + " to " + to;
        return kind + " " + name + place + ", phases " + phases + (more.isEmpty() ? "" : ", " + String.join(", ", more))
                + figures();
    }

    /** What a network file must say for the load flow; connectivity does not ask for it. */
    private String figures() {
        return switch (kind) {
            case "transformer" -> ", rating 500 kVA, low voltage 4.16 kV, impedance 5 %";
            case "line" -> ", conductor acsr-336";
            case "source" -> ", fault level 100 MVA";
            case "breaker", "recloser", "electronic-recloser" -> ", clearing time 300 ms";
            case "cable" -> ", conductor cable-1-0";
            default -> "";
        };
    }

    /** {@return its phases or legs, one by one} */
    List<String> labels() {
        return List.of(phases.split("(?=[ABCX])"));
    }

    boolean isBranch() {
        return to != null;
    }

    boolean isDevice() {
        return !NO_DEVICES.contains(kind);
    }

    boolean hasLeads() {
        return LEADS.contains(kind);
    }

    boolean recloses() {
        return hasLeads() || kind.equals("breaker");
    }

    boolean startsOpen() {
        return more.contains("open");
    }

    MadeElement with(String otherFrom, String otherTo) {
        return new MadeElement(kind, name, otherFrom, otherTo, phases, more);
    }
}
