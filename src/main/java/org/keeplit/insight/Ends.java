package org.keeplit.insight;

import org.keeplit.explore.Stepper;
import org.keeplit.program.Act;
import org.keeplit.program.Field;

/** The end that a procedure states: every part of it is so, and no rule about the end is broken. */
final class Ends implements Goal {
    private final Stepper stepper;
    /** How many of the fields of which the end says how they stand one act changes at most. */
    private final int most;

    Ends(Stepper stepper) {
        this.stepper = stepper;
        int best = 1;
        for (Act act : stepper.program().acts()) {
            long[] writes = stepper.writes(act.id());
            int count = 0;
            for (Field field : stepper.endFields()) {
                count += Normal.touches(writes, field) ? 1 : 0;
            }
            best = Math.max(best, count);
        }
        this.most = best;
    }

    @Override
    public int far(long[] state) {
        return stepper.unmet(state).all();
    }

    @Override
    public int rest(long[] state) {
        return 0;
    }

    /** Parts that say of different fields how they stand take an act for each few of them; the others take one together at least. */
    @Override
    public int atLeast(long[] state) {
        Stepper.Unmet unmet = stepper.unmet(state);
        return Math.max((unmet.fields() + most - 1) / most, unmet.all() > 0 ? 1 : 0);
    }

    @Override
    public boolean isReached(long[] state) {
        return far(state) == 0 && stepper.brokenAtEnd(state) == 0;
    }
}
