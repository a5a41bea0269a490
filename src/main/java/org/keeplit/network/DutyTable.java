package org.keeplit.network;

import com.google.common.collect.ImmutableMap;

/**
 * What a contact is made to break and to make, and how far.
 *
 * @param breaks the opening duties that it is made for, with their limits
 * @param makes the closing duties that it is made for, with their limits
 */
public record DutyTable(
        ImmutableMap<OpeningDuty, DutyLimit> breaks, ImmutableMap<ClosingDuty, DutyLimit> makes) {
    /**
     * What a lead may break and make by hand where its kind does not say: nothing, a parallel, and the charging of its own
     * bushing. Common practice, no source.
     */
    public static final DutyTable LEAD = new DutyTable(
            ImmutableMap.of(
                    OpeningDuty.NOTHING, DutyLimit.NONE,
                    OpeningDuty.PARALLEL, DutyLimit.NONE,
                    OpeningDuty.BUSHING, DutyLimit.NONE),
            ImmutableMap.of(
                    ClosingDuty.NOTHING, DutyLimit.NONE,
                    ClosingDuty.PARALLEL, DutyLimit.NONE,
                    ClosingDuty.ENERGIZE, DutyLimit.NONE));
}
