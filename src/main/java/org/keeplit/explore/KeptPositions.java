package org.keeplit.explore;

import java.util.HashSet;
import java.util.Set;
import org.keeplit.program.StateKey;

/**
 * The positions of contacts and taps in which all rules in states were found kept that read nothing else: loads that must stay supplied,
 * currents and voltages within their limits. The same few positions come up again and again, and such rules cost the most.
 */
final class KeptPositions {
    /** How many are kept before all are forgotten. */
    private static final int MOST = 1 << 15;

    private final Set<StateKey> kept = new HashSet<>();

    /** {@return whether a position was found kept} @param position a state, other bits cleared */
    boolean contains(StateKey position) {
        return kept.contains(position);
    }

    void add(StateKey position) {
        if (kept.size() >= MOST) {
            kept.clear();
        }
        kept.add(position);
    }
}
