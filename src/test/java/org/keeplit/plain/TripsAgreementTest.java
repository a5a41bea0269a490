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

/** Both evaluators where devices trip by themselves, each by its own load flow. */
class TripsAgreementTest {
    private final GeneratedRun run = new GeneratedRun();

    @Provide
    Arbitrary<Long> seeds() {
        return Arbitraries.longs();
    }

    @Property(tries = 200, seed = "20260102", shrinking = ShrinkingMode.OFF)
    void both(@ForAll("seeds") long seed) {
        run.compare(CaseMaker.make(new Draw(seed), true), seed);
    }

    @Tag("long")
    @Property(tries = 12_000, seed = "8", shrinking = ShrinkingMode.OFF)
    void bothInTheLongRun(@ForAll("seeds") long seed) {
        run.compare(CaseMaker.make(new Draw(seed), true), seed);
    }

    @AfterProperty
    void thingsTrip() {
        if (run.failed()) {
            return;
        }
        System.out.println(run);
        int trips = run.spread().of("something may trip");
        assertTrue(trips * 40 >= run.spread().ran(), "something may trip in only " + trips + " cases");
        assertTrue(run.spread().of("something trips on the way to a finding") > 0, "no trip led to a finding");
    }
}
