package org.keeplit.plain;

import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import org.keeplit.explore.Explored;
import org.keeplit.explore.Proving;
import org.keeplit.explore.Search;
import org.keeplit.outcome.Limits;
import org.keeplit.outcome.Outcome;
import org.keeplit.outcome.Watcher;
import org.keeplit.procedure.Bound;
import org.keeplit.procedure.Procedure;
import org.keeplit.text.Problems;

/**
 * What comes of one made case.
 *
 * @param kind what came of it
 * @param difference how the evaluators differ, or why the case was refused; empty if neither
 * @param fast what the fast one found; null if it was not run
 * @param trips whether a device may trip by itself in what the fast one explored
 * @param plain what the plain one found; null if it was not run
 */
record Comparison(Kind kind, String difference, Outcome fast, boolean trips, PlainResult plain) {
    enum Kind {
        /** The procedure does not fit the network. */
        REFUSED,
        /** More states than are looked at. */
        TOO_LARGE,
        /** Both found the same. */
        SAME,
        /** They differ, or one of them failed. */
        DIFFERENT
    }

    private static final AtomicInteger CASES = new AtomicInteger();

    boolean ran() {
        return kind == Kind.SAME || kind == Kind.DIFFERENT;
    }

    boolean holds() {
        return kind == Kind.SAME && plain.roots().isEmpty();
    }

    /** Runs both. @param read the case @param most how many states are looked at */
    static Comparison of(MadeCase.Read read, int most) {
        return of(read, most, 0);
    }

    /** Runs both. @param events how many events may happen at most */
    static Comparison of(MadeCase.Read read, int most, int events) {
        Procedure.Proof proof = read.procedure().proofs().get(0);
        Problems problems = new Problems();
        Outcome fast = null;
        boolean trips = false;
        try {
            Limits limits = new Limits(most, Limits.USUAL.time(), Limits.USUAL.bytes());
            Search usual = Search.USUAL.with(events);
            // Now and then by several threads, and with positions remembered, even where there is little to do.
            boolean spread = CASES.incrementAndGet() % 4 == 0;
            Search search = new Search(usual.contracts(), usual.numbered(), usual.packs(), spread ? 2 : 1, 2, 1, events);
            Optional<Explored> found =
                    Proving.explored(read.procedure(), read.network(), proof, search, limits, Watcher.NOBODY, problems);
            if (found.isEmpty()) {
                return new Comparison(Kind.REFUSED, problems.sorted().get(0).message(), null, false, null);
            }
            fast = found.get().outcome();
            trips = !found.get().program().reactions().isEmpty();
            if (fast.cut().isPresent()) {
                return new Comparison(Kind.TOO_LARGE, "", fast, trips, null);
            }
            Bound bound = Agreement.bound(read.procedure(), read.network(), proof);
            PlainResult plain = PlainEvaluator.evaluate(bound, events, most * 2);
            String difference = Agreement.difference(fast, plain);
            return new Comparison(difference.isEmpty() ? Kind.SAME : Kind.DIFFERENT, difference, fast, trips, plain);
        } catch (RuntimeException e) {
            java.io.StringWriter trace = new java.io.StringWriter();
            e.printStackTrace(new java.io.PrintWriter(trace));
            return new Comparison(Kind.DIFFERENT, "failed: " + trace.toString().lines().limit(8).toList(), fast, trips, null);
        }
    }
}
