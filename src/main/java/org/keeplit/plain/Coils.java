package org.keeplit.plain;

import java.util.Arrays;
import org.keeplit.network.Conductor;
import org.keeplit.network.Connection;
import org.keeplit.network.Element;

/**
 * The two windings of one unit of a bank, each from one end to the other, in phase with one another. Which phases they lie
 * between makes the clock.
 *
 * @param primary its ends on the source side; null for the earth
 * @param secondary its ends on the load side
 */
record Coils(String[] primary, String[] secondary) {
    /** The pair of phases whose voltage lags phase A by the odd hour 1, 3, 5, 7, 9 or 11. */
    private static final int[][] PAIRS = {{0, 2}, {1, 2}, {1, 0}, {2, 0}, {2, 1}, {0, 1}};

    static Coils of(Element.Transformer t, Conductor start) {
        int k = start.ordinal();
        int hours = Math.floorMod(t.clock(), 12);
        boolean delta1 = t.primary() == Connection.DELTA;
        boolean delta2 = t.secondary() == Connection.DELTA;
        int[] one = {k, delta1 ? (k + 1) % 3 : -1};
        int[] two = {k, delta2 ? (k + 1) % 3 : -1};
        if (t.windings().size() == 3 && hours % 2 == 1 && delta1 && !delta2) {
            one = shifted(PAIRS[hours / 2], k);
        } else if (hours % 2 == 1 && delta2 && !delta1) {
            // Seen from the secondary, the primary lags by the rest of the turn.
            two = shifted(PAIRS[(12 - hours) / 2], k);
        } else if (t.windings().size() == 3 && hours % 2 == 0) {
            // Every two hours are a third of a turn, or that of the opposite voltage.
            boolean opposite = hours % 4 != 0;
            int turn = (opposite ? hours + 6 : hours) % 12 / 4;
            one = shifted(one, turn);
            if (opposite) {
                two = new int[] {two[1], two[0]};
            }
        }
        return new Coils(ends(t, "/1", t.from(), t.primary(), one), ends(t, "/2", t.to(), t.secondary(), two));
    }

    private static int[] shifted(int[] pair, int by) {
        return Arrays.stream(pair).map(p -> p < 0 ? p : (p + by) % 3).toArray();
    }

    private static String[] ends(
            Element.Transformer t, String side, String node, Connection connection, int[] phases) {
        String star = connection == Connection.WYE ? t.name() + side : null;
        return Arrays.stream(phases)
                .mapToObj(p -> p < 0 ? star : Names.node(node, Conductor.values()[p]))
                .toArray(String[]::new);
    }
}
