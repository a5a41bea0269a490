package org.keeplit.explore;

import org.keeplit.network.ClosingDuty;
import org.keeplit.network.OpeningDuty;

/**
 * What a lead may break and make by hand, whatever device it belongs to: nothing, a parallel, and the charging of
 * its own bushing. Common practice, no source.
 */
final class LeadDuties {
    static final int OPENING = 1 << OpeningDuty.NOTHING.ordinal()
            | 1 << OpeningDuty.PARALLEL.ordinal()
            | 1 << OpeningDuty.BUSHING.ordinal();
    static final int CLOSING = 1 << ClosingDuty.NOTHING.ordinal()
            | 1 << ClosingDuty.PARALLEL.ordinal()
            | 1 << ClosingDuty.ENERGIZE.ordinal();

    private LeadDuties() {}
}
