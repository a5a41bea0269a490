package org.keeplit.outcome;

import java.util.function.Supplier;

/**
 * What may be spent on getting ready for a search: writing the program out and compiling its rules. Both may grow with powers of what a
 * file says, long before there is a state to count, so the limits of the run hold for them too. It belongs to the thread that is at work.
 */
public final class Effort {
    /** How often the clock is looked at. */
    private static final int CHECK_EVERY = 1 << 10;

    private static final long LEAST = 16L << 20;

    private static final ThreadLocal<Effort> NOW = new ThreadLocal<>();

    private final Limits limits;
    private final long began;
    private final Watcher watcher;
    private long steps;
    private long bytes;

    /** A limit was reached before the search began. */
    public static final class Spent extends RuntimeException {
        private static final long serialVersionUID = 1;

        /**
         * Says that a limit was reached.
         *
         * @param reason which, as an outcome says why it was cut
         */
        public Spent(String reason) {
            super(reason);
        }
    }

    private Effort(Limits limits, long began, Watcher watcher) {
        this.limits = limits;
        this.began = began;
        this.watcher = watcher;
    }

    /**
     * Does something within limits.
     *
     * @param <T> what comes of it
     * @param limits the limits
     * @param began when the run began, by {@link System#nanoTime}
     * @param watcher may stop it
     * @param work what is done
     * @return what comes of it
     * @throws Spent if a limit was reached, or it was stopped
     */
    public static <T> T within(Limits limits, long began, Watcher watcher, Supplier<T> work) {
        Effort before = NOW.get();
        NOW.set(new Effort(limits, began, watcher));
        try {
            return work.get();
        } finally {
            NOW.set(before);
        }
    }

    /**
     * One small piece of work was done.
     *
     * @throws Spent if the time is over, or it was stopped
     */
    public static void step() {
        Effort now = NOW.get();
        if (now != null && ++now.steps % CHECK_EVERY == 0) {
            now.check();
        }
    }

    /**
     * Something was made that is kept.
     *
     * @param size about how many bytes it takes
     * @throws Spent if all together takes more than the limit
     */
    public static void keep(long size) {
        Effort now = NOW.get();
        if (now != null) {
            now.bytes += size;
            if (now.bytes > memory(now.limits)) {
                throw new Spent("more than " + (memory(now.limits) >> 20) + " MiB before the search began");
            }
        }
    }

    /**
     * {@return how many bytes what is made before the search may take: as many as its states, and never so few that nothing could begin}
     *
     * @param limits the limits
     */
    public static long memory(Limits limits) {
        return Math.max(LEAST, limits.bytes());
    }

    private void check() {
        if (System.nanoTime() - began > limits.time().toNanos()) {
            throw new Spent("longer than " + limits.time().toSeconds() + " s");
        } else if (watcher.isStopped()) {
            throw new Spent("stopped from outside");
        }
    }
}
