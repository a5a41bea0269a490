package org.keeplit.command;

import java.util.Locale;
import java.util.function.BooleanSupplier;
import org.keeplit.outcome.Watcher;

/** Shows on a terminal how a long run gets on. */
final class Progress implements Watcher {
    private static final long FIRST = 1_000_000_000L;
    private static final long EVERY = 500_000_000L;

    private final boolean terminal = System.console() != null;
    private long next = System.nanoTime() + FIRST;
    private boolean shown;
    private String bound = "";
    private final boolean reasons;
    private final BooleanSupplier stopped;

    /** Begins. @param reasons whether rules are to be explained in full */
    Progress(boolean reasons) {
        this(reasons, () -> false);
    }

    /** Begins. @param reasons whether rules are to be explained in full @param stopped whether somebody has stopped it */
    Progress(boolean reasons, BooleanSupplier stopped) {
        this.reasons = reasons;
        this.stopped = stopped;
    }

    @Override
    public boolean wantsReasons() {
        return reasons;
    }

    @Override
    public synchronized void begins(String procedure, double orders, int stateBits) {
        next = System.nanoTime() + FIRST;
        bound = String.format(
                Locale.ROOT, "%s: %,.0f combinations of acts, %d bits a state", procedure, orders, stateBits);
    }

    @Override
    public synchronized boolean goOn(int states, int open) {
        long now = System.nanoTime();
        if (terminal && now >= next) {
            next = now + EVERY;
            if (!bound.isEmpty()) {
                System.err.println(bound);
                bound = "";
            }
            shown = true;
            System.err.printf(Locale.ROOT, "\r%,d states, %,d to go on from ", states, open);
            System.err.flush();
        }
        return !isStopped() && !Thread.currentThread().isInterrupted();
    }

    @Override
    public boolean isStopped() {
        return stopped.getAsBoolean();
    }

    /** Says what is done now, where that takes long and nothing is counted. @param what it is */
    synchronized void step(String what) {
        if (terminal && System.nanoTime() >= next) {
            shown = true;
            System.err.printf(Locale.ROOT, "\r%-70.70s", what);
            System.err.flush();
        }
    }

    /** Takes the line away again. */
    void clear() {
        if (shown) {
            System.err.print("\r" + " ".repeat(70) + "\r");
        }
    }
}
