package org.keeplit.plain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.common.collect.Iterables;
import java.util.Map;
import java.util.Optional;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.ShrinkingMode;
import net.jqwik.api.Tag;
import net.jqwik.api.lifecycle.AfterProperty;
import net.jqwik.api.statistics.Statistics;
import org.keeplit.explore.Finding;
import org.keeplit.procedure.Binding;
import org.keeplit.procedure.Bound;
import org.keeplit.procedure.Procedure;
import org.keeplit.text.Problems;

/** Both evaluators find the same in made procedures on made networks, and so does going every way. */
class GeneratedAgreementTest {
    private static final int MOST_STATES = 1500;
    private final Spread spread = new Spread();
    private int everyOrder;
    private int replayed;

    @Provide
    Arbitrary<Long> seeds() {
        return Arbitraries.longs();
    }

    @Property(tries = 600, seed = "20260101", shrinking = ShrinkingMode.OFF)
    void both(@ForAll("seeds") long seed) {
        compare(seed);
    }

    @Tag("long")
    @Property(tries = 21_000, seed = "7", shrinking = ShrinkingMode.OFF)
    void bothInTheLongRun(@ForAll("seeds") long seed) {
        compare(seed);
    }

    private void compare(long seed) {
        MadeCase made = CaseMaker.make(new Draw(seed));
        MadeCase.Read read;
        try {
            read = made.read();
        } catch (IllegalArgumentException refused) {
            return;
        }
        Comparison one = Comparison.of(read, MOST_STATES);
        spread.add(one);
        if (one.ran()) {
            Statistics.label("verdict").collect(one.holds() ? "holds" : "breaks").coverage(c -> {
                c.check("holds").percentage(p -> p >= 30);
                c.check("breaks").percentage(p -> p >= 30);
            });
            Statistics.label("depth").collect(one.fast().depth() / 5 * 5).coverage(c -> {
                for (int depth : new int[] {0, 5, 10, 15}) {
                    c.check(depth).percentage(p -> p >= 3);
                }
            });
        }
        if (one.kind() == Comparison.Kind.DIFFERENT) {
            MadeCase small = Minimiser.smallest(made, MOST_STATES);
            String now = Comparison.of(small.read(), MOST_STATES).difference();
            throw new AssertionError("seed " + seed + ": " + one.difference() + "\nsmallest: " + now + "\n" + small);
        }
        if (one.ran()) {
            replay(seed, read, one);
        }
    }

    private void replay(long seed, MadeCase.Read read, Comparison one) {
        Procedure.Proof proof = read.procedure().proofs().get(0);
        Bound bound = Binding.bind(read.procedure(), read.network(), proof, new Problems()).orElseThrow();
        Replay replay = new Replay(new Walk(bound));
        for (Finding finding : Iterables.concat(one.fast().findings(), one.fast().notes())) {
            assertEquals("", replay.wrong(finding), () -> "seed " + seed);
            replayed++;
        }
        if (one.fast().depth() <= 7) {
            Optional<Map<String, Integer>> all = EveryOrder.roots(bound, 3000);
            all.ifPresent(roots -> {
                everyOrder++;
                assertEquals(roots, Agreement.roots(one.fast()), () -> "seed " + seed + ": every order");
            });
        }
    }

    @AfterProperty
    void theSpreadIsWide() {
        System.out.println(spread.ran() + " cases, " + spread.held() + " hold, " + everyOrder + " gone every way, " + replayed
                + " traces replayed: " + spread.counts());
        assertTrue(everyOrder * 3 >= spread.ran(), "too few are short enough to go every way");
        for (String kind : new String[] {"cannot", "stop", "requirement", "expectation", "flash", "stuck", "ending"}) {
            assertTrue(spread.of("root " + kind) > 0, kind + " never came up");
        }
    }
}
