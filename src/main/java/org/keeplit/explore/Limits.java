package org.keeplit.explore;

import java.time.Duration;

/**
 * How far a run may go before it ends as undecided.
 *
 * @param states the greatest number of states
 * @param time the longest time
 * @param bytes the most memory for states
 */
public record Limits(int states, Duration time, long bytes) {
    /** Limits for everyday work. */
    public static final Limits USUAL = new Limits(20_000_000, Duration.ofMinutes(10), 1L << 30);
}
