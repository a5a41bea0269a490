package org.keeplit.plain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import java.util.stream.Collectors;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.ShrinkingMode;
import net.jqwik.api.Tag;
import net.jqwik.api.lifecycle.AfterProperty;
import org.keeplit.explore.Proving;
import org.keeplit.explore.Search;
import org.keeplit.outcome.Limits;
import org.keeplit.outcome.Outcome;
import org.keeplit.outcome.Watcher;
import org.keeplit.text.Problems;

/** What a search saves changes nothing: verdicts, traces and counts are those of a search that saves nothing. */
class SearchTest {
    private static final int MOST_STATES = 3000;
    private int ran;
    /** A difference tells more than that it cut the run short. */
    private boolean failed;

    @Provide
    Arbitrary<Long> seeds() {
        return Arbitraries.longs();
    }

    @Property(tries = 250, seed = "31", shrinking = ShrinkingMode.OFF)
    void savingChangesNothing(@ForAll("seeds") long seed) {
        compare(seed, seed % 4 == 0);
    }

    @Tag("long")
    @Property(tries = 8000, seed = "32", shrinking = ShrinkingMode.OFF)
    void savingChangesNothingInTheLongRun(@ForAll("seeds") long seed) {
        compare(seed, seed % 4 == 0);
    }

    private void compare(long seed, boolean trips) {
        MadeCase.Read read;
        try {
            read = CaseMaker.make(new Draw(seed), trips).read();
        } catch (IllegalArgumentException refused) {
            return;
        }
        failed = true;
        Optional<String> plain = outcome(read, Search.PLAIN);
        assertEquals(plain, outcome(read, Search.USUAL), () -> "seed " + seed + ", all of it");
        assertEquals(plain, outcome(read, search(true, 0, false, 1)), () -> "seed " + seed + ", only drawn together");
        assertEquals(plain, outcome(read, search(false, 12, false, 1)), () -> "seed " + seed + ", partly numbered");
        assertEquals(plain, outcome(read, search(false, 0, true, 1)), () -> "seed " + seed + ", only packed");
        Search positions = new Search(false, 0, false, 1, Search.WORTH, 1, 0);
        assertEquals(plain, outcome(read, positions), () -> "seed " + seed + ", only where rules were kept remembered");
        Optional<Outcome> alone = found(read, search(false, 0, false, 1));
        Optional<Outcome> threads = found(read, search(false, 0, false, 3));
        assertEquals(alone.map(SearchTest::words), threads.map(SearchTest::words), () -> "seed " + seed + ", only by three threads");
        assertEquals(alone.map(Outcome::rules), threads.map(Outcome::rules), () -> "seed " + seed + ", rules by three threads");
        assertEquals(alone.map(Outcome::electricStates), threads.map(Outcome::electricStates), () -> "seed " + seed);
        failed = false;
        ran += plain.isPresent() ? 1 : 0;
    }

    /** {@return a search whose threads are used for the least} */
    private static Search search(boolean contracts, int numbered, boolean packs, int threads) {
        return new Search(contracts, numbered, packs, threads, 2, Integer.MAX_VALUE, 0);
    }

    private static Optional<String> outcome(MadeCase.Read read, Search search) {
        return found(read, search).map(SearchTest::words);
    }

    private static Optional<Outcome> found(MadeCase.Read read, Search search) {
        Limits limits = new Limits(MOST_STATES, Limits.USUAL.time(), Limits.USUAL.bytes());
        return Proving.prove(
                        read.procedure(),
                        read.network(),
                        read.procedure().proofs().get(0),
                        search,
                        limits,
                        Watcher.NOBODY,
                        new Problems());
    }

    private static String words(Outcome outcome) {
        return outcome.states() + " states, " + outcome.transitions() + " transitions, depth " + outcome.depth() + ", "
                + outcome.endings() + " endings, cut " + outcome.cut() + "\n"
                + outcome.findings().stream()
                        .map(f -> f.name() + " " + f.sentence() + " " + f.trace())
                        .collect(Collectors.joining("\n"))
                + outcome.rules().stream()
                        .map(r -> r.rule().name() + " " + r.verdict())
                        .collect(Collectors.joining("\n"));
    }

    @AfterProperty
    void manyRan() {
        assertTrue(failed || ran > 100, "only " + ran + " cases ran");
    }
}
