package org.keeplit.electric.power;

import org.keeplit.network.Conductor;
import org.keeplit.network.Connection;
import org.keeplit.network.Element;

/**
 * Between which phases the windings of a bank lie so that it has its clock. A bank comes in two ways, by how its delta goes
 * round or by the polarity of one side; the rest of the clock is by which phase the secondary calls A, a third of a turn
 * or four hours each.
 *
 * @param primaryDelta whether the primary is a delta
 * @param secondaryDelta whether the secondary is
 * @param backward whether the one delta lies AC, BA, CB instead of AB, BC, CA
 * @param opposite whether the secondary's windings are turned about
 * @param turn by how many phases the secondary's are renamed
 */
record Clock(boolean primaryDelta, boolean secondaryDelta, boolean backward, boolean opposite, int turn) {
    static Clock of(Element.Transformer transformer) {
        boolean one = transformer.primary() == Connection.DELTA;
        boolean other = transformer.secondary() == Connection.DELTA;
        boolean openDelta = !one && other;
        if (transformer.windings().size() != 3 && !openDelta) {
            // Of the other open banks and single units only one way is built.
            return new Clock(one, other, false, false, 0);
        }
        int hours = Math.floorMod(transformer.clock(), 12);
        if (one == other) {
            boolean opposite = hours % 4 == 2;
            return new Clock(one, other, false, opposite, turns(hours, opposite ? 6 : 0));
        }
        // V_AC lags V_A by an hour, V_AB leads it; and the other way round where the secondary is the delta.
        boolean lags = hours % 4 == 1;
        return new Clock(one, other, lags == one, false, turns(hours, lags ? 1 : 11));
    }

    private static int turns(int hours, int base) {
        return Math.floorMod(hours - base, 12) / 4;
    }

    /** {@return the ends of the primary winding of a unit; null for the neutral} @param unit the phase that it is named after */
    Conductor[] primary(Conductor unit) {
        return new Conductor[] {unit, primaryDelta ? next(unit, backward ? 2 : 1) : null};
    }

    /** {@return the ends of the secondary winding of a unit} @param unit the phase that it is named after */
    Conductor[] secondary(Conductor unit) {
        Conductor start = next(unit, 3 - turn);
        Conductor end = secondaryDelta ? next(start, backward ? 2 : 1) : null;
        return opposite ? new Conductor[] {end, start} : new Conductor[] {start, end};
    }

    private static Conductor next(Conductor phase, int by) {
        return Conductor.values()[(phase.ordinal() + by) % 3];
    }
}
