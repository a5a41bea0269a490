package org.keeplit.outcome;

import java.time.Duration;

/**
 * How far a run may go before it ends as undecided. The number of states is looked at with each state, time and memory once in some
 * hundreds: what is done by then is told as it is.
 *
 * @param states the greatest number of states, 1 or more
 * @param time the longest time, not below zero
 * @param bytes the most memory for states, 0 or more
 * @param events how many events happen at most on a way, of those that rules are judged in spite of; 0 for none
 */
public record Limits(int states, Duration time, long bytes, int events) {
    /** Limits for everyday work. */
    public static final Limits USUAL = new Limits(20_000_000, Duration.ofMinutes(10), 1L << 30);

    /**
     * Limits.
     *
     * @param states the greatest number of states, 1 or more
     * @param time the longest time, not below zero
     * @param bytes the most memory for states, 0 or more
     * @param events how many events happen at most, 0 or more
     * @throws IllegalArgumentException if one of them is below the least that it may be
     */
    public Limits {
        if (states < 1 || time.isNegative() || bytes < 0 || events < 0) {
            throw new IllegalArgumentException(
                    "no limits: " + states + " states, " + time + ", " + bytes + " bytes, " + events + " events");
        }
    }

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
