package org.keeplit.plain;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.google.common.collect.Iterables;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.keeplit.outcome.Finding;
import org.keeplit.procedure.Bound;
import org.keeplit.procedure.Procedure;

/** Compares both evaluators on made cases, replays every trace, and goes every way through what is short. */
final class GeneratedRun {
    private static final int MOST_STATES = 1500;
    private final Spread spread = new Spread();
    private int everyOrder;
    private int replayed;
    private boolean failed;

    /** Compares on one case; {@return what came out, or nothing if the reader refuses it} @param seed for the message */
    Optional<Comparison> compare(MadeCase made, long seed) {
        // A failure tells more than a spread that it cut short.
        failed = true;
        Optional<Comparison> one = compared(made, seed);
        failed = false;
        return one;
    }

    private Optional<Comparison> compared(MadeCase made, long seed) {
        MadeCase.Read read;
        try {
            read = made.read();
        } catch (IllegalArgumentException refused) {
            return Optional.empty();
        }
        Comparison one = Comparison.of(read, MOST_STATES);
        if (one.kind() == Comparison.Kind.DIFFERENT) {
            MadeCase small = Minimiser.smallest(made, MOST_STATES);
            String now = Comparison.of(small.read(), MOST_STATES).difference();
            throw new AssertionError("seed " + seed + ": " + one.difference() + "\nsmallest: " + now + "\n" + small);
        }
        spread.add(one);
        if (one.ran()) {
            replay(seed, read, one);
        }
        return Optional.of(one);
    }

    private void replay(long seed, MadeCase.Read read, Comparison one) {
        Procedure.Proof proof = read.procedure().proofs().get(0);
        Bound bound = Agreement.bound(read.procedure(), read.network(), proof);
        Replay replay = new Replay(new Walk(bound));
        for (Finding finding : Iterables.concat(one.fast().findings(), one.fast().notes())) {
            assertEquals("", replay.wrong(finding), () -> "seed " + seed);
            replayed++;
        }
        if (one.fast().depth() <= 7) {
            Optional<Map<String, Integer>> all = EveryOrder.roots(bound, 3000);
            all.ifPresent(roots -> {
                everyOrder++;
                assertEquals(byName(roots), byName(Agreement.roots(one.fast())), () -> "seed " + seed + ": every order");
            });
        }
    }

    /** Steps that stand on one line are one place: their numbers are left out. */
    private static Map<String, Integer> byName(Map<String, Integer> roots) {
        Map<String, Integer> all = new TreeMap<>();
        roots.forEach((root, length) -> all.merge(root.replaceAll(" \\d+$", ""), length, Math::min));
        return all;
    }

    Spread spread() {
        return spread;
    }

    int everyOrder() {
        return everyOrder;
    }

    boolean failed() {
        return failed;
    }

    @Override
    public String toString() {
        return spread.ran() + " cases, " + spread.held() + " hold, " + everyOrder + " gone every way, " + replayed
                + " traces replayed: " + spread.counts();
    }
}
