package org.keeplit.outcome;

import java.time.Duration;

/**
 * How far a run may go before it ends as undecided.
 *
 * @param states the greatest number of states
 * @param time the longest time
 * @param bytes the most memory for states
 * @param events how many events happen at most on a way, of those that rules are judged in spite of; 0 for none
 */
public record Limits(int states, Duration time, long bytes, int events) {
    /** Limits for everyday work. */
    public static final Limits USUAL = new Limits(20_000_000, Duration.ofMinutes(10), 1L << 30);

    /**
     * Limits with one event at most.
     *
     * @param states how many states are looked at, at most
     * @param time how long a search may take
     * @param bytes how much memory its states may take
     */
    public Limits(int states, Duration time, long bytes) {
        this(states, time, bytes, 1);
    }

    /**
     * {@return the same limits with so many events at most}
     *
     * @param most 0 or more
     */
    public Limits with(int most) {
        return new Limits(states, time, bytes, most);
    }
}
