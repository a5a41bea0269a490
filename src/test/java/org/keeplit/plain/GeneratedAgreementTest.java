package org.keeplit.plain;

import static org.junit.jupiter.api.Assertions.assertTrue;

import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.ShrinkingMode;
import net.jqwik.api.Tag;
import net.jqwik.api.lifecycle.AfterProperty;
import net.jqwik.api.statistics.Statistics;

/** Both evaluators on made networks, procedures and rules, each from a seed. */
class GeneratedAgreementTest {
    private final GeneratedRun run = new GeneratedRun();

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
        run.compare(CaseMaker.make(new Draw(seed)), seed).filter(Comparison::ran).ifPresent(one -> {
            Statistics.label("verdict").collect(one.holds() ? "holds" : "breaks").coverage(c -> {
                c.check("holds").percentage(p -> p >= 30);
                c.check("breaks").percentage(p -> p >= 30);
            });
            Statistics.label("depth").collect(one.fast().depth() / 5 * 5).coverage(c -> {
                for (int depth : new int[] {0, 5, 10, 15}) {
                    c.check(depth).percentage(p -> p >= 3);
                }
            });
        });
    }

    @AfterProperty
    void theSpreadIsWide() {
        if (run.failed()) {
            return;
        }
        System.out.println(run);
        assertTrue(run.everyOrder() * 3 >= run.spread().ran(), "too few are short enough to go every way");
        for (String kind : new String[] {"cannot", "stop", "requirement", "expectation", "flash", "stuck", "ending"}) {
            assertTrue(run.spread().of("root " + kind) > 0, kind + " never came up");
        }
    }
}
