package org.keeplit.outside;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.keeplit.Keeplit;
import org.keeplit.language.Library;
import org.keeplit.outcome.Limits;
import org.keeplit.outcome.Watcher;
import org.keeplit.text.ProblemPrinter;
import org.keeplit.text.Problems;
import org.keeplit.verdict.Judgement;

/**
 * Sequences that others published, judged by the verifier: each as published holds, each equivalent holds, and each
 * wrong variant fails for the reason that the source gives, on exactly the rule, step and phase stated in its file.
 *
 * <p>Sources: NAVFAC MO-201 (1990) paragraph 3.3.8 for the regulator, both ways; 29 CFR 1910.269 (m)(2)(iii), (m)(3),
 * (n)(5), (n)(6) for dead work, in the numbering after the 2014 final rule; the others stand beside each procedure: UFC 3-560-01 (2006), UFC 3-560-10N, TM
 * 5-684 (1996), a public utility's manual, makers' manuals, and for the incidents the reports of NIOSH, FACE and OSHA.
 */
class PublishedSequencesTest {
    private static final List<String> FOLDERS =
            List.of("regulator", "dead-work", "station", "live", "fuses", "banks-and-cables", "incidents");

    private static final Path HERE = Path.of("src/test/resources/outside");

    private static List<Judgement> judged(String folder) {
        Library library = Keeplit.read(List.of(HERE.resolve(folder)));
        Problems problems = new Problems();
        library.problems().forEach(problems::add);
        List<Judgement> all = Keeplit.check(library, Limits.USUAL, Watcher.NOBODY, problems);
        assertTrue(problems.sorted().isEmpty(), () -> ProblemPrinter.print(problems.sorted()));
        return all;
    }

    @TestFactory
    Stream<DynamicTest> everySequenceComesOutAsItsSourceSays() {
        return FOLDERS.stream()
                .flatMap(folder -> judged(folder).stream())
                .map(j -> DynamicTest.dynamicTest(j.procedure().name() + ": " + j.procedure().title(), () -> {
                    Judgement.Status wanted = j.procedure().mustFail().isEmpty()
                            ? Judgement.Status.HOLDS
                            : Judgement.Status.FAILS_AS_STATED;
                    assertEquals(wanted, j.status(), () -> String.join("\n", j.differences()));
                }));
    }

    /** The published sequences, the accepted equivalents and the refused mutants are all there. */
    @Test
    void nothingIsMissing() {
        Map<Judgement.Status, Long> counts = FOLDERS.stream()
                .flatMap(folder -> judged(folder).stream())
                .collect(Collectors.groupingBy(Judgement::status, Collectors.counting()));
        assertEquals(Map.of(Judgement.Status.HOLDS, 36L, Judgement.Status.FAILS_AS_STATED, 95L), counts);
    }
}
