package org.keeplit.plain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.common.collect.ImmutableMap;
import java.time.Duration;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.TestFactory;
import org.keeplit.Keeplit;
import org.keeplit.language.Library;
import org.keeplit.outcome.Limits;
import org.keeplit.outcome.Watcher;
import org.keeplit.recheck.ProofFile;
import org.keeplit.recheck.ProofReader;
import org.keeplit.recheck.Rechecked;
import org.keeplit.text.Problems;
import org.keeplit.text.Source;

/** Procedures that ship are confirmed, without the rulebooks of figures, as in {@link ShippedProceduresTest}. */
class RecheckShippedTest {
    private static final Set<String> EVERY_DAY = Set.of("LP-12", "CB-1", "LW-1", "FU-1");
    /** More states than the plain evaluator has room for. */
    private static final Set<String> TOO_LONG = Set.of("TJ-1");

    @TestFactory
    Stream<DynamicTest> someAreConfirmed() {
        return each(EVERY_DAY::contains);
    }

    @Tag("long")
    @TestFactory
    Stream<DynamicTest> allAreConfirmed() {
        return each(name -> !TOO_LONG.contains(name) && !EVERY_DAY.contains(name));
    }

    private static Stream<DynamicTest> each(Predicate<String> which) {
        Library library = ShippedProceduresTest.library();
        return library.givenProcedures().stream()
                .filter(p -> p.mustFail().isEmpty() && !p.proofs().isEmpty() && which.test(p.name()))
                .map(p -> DynamicTest.dynamicTest(p.name(), () -> {
                    Library one = new Library(
                            library.equipment(), library.networks(), library.rulebooks(), ImmutableMap.of(p.name(), p), library.examples(),
                            library.mistaken(), library.given(), library.sources(), library.problems());
                    for (Keeplit.Proved proved : Keeplit.prove(one, Limits.USUAL, 1, Watcher.NOBODY, new Problems())) {
                        confirmed(proved.proof().orElseThrow(), one);
                    }
                }));
    }

    private static void confirmed(ProofFile proof, Library library) {
        Problems problems = new Problems();
        ProofFile read = ProofReader.read(new Source("a.proof", proof.text()), problems).orElseThrow(() -> new AssertionError(problems.sorted()));
        long began = System.nanoTime();
        Rechecked done = Keeplit.recheck(read, library, read.head().events(), Duration.ofHours(1), (met, of) -> true);
        assertEquals(List.of(), done.reasons());
        assertEquals(Rechecked.Status.CONFIRMED, done.status());
        assertTrue(done.states() > 1);
        System.out.printf("%s: %d states, %d kB, %.1f s%n", proof.head().place(), done.states(), proof.text().length() / 1000, (System.nanoTime() - began) / 1e9);
    }
}
