package org.keeplit.language;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.keeplit.Keeplit;
import org.keeplit.network.Conductor;
import org.keeplit.outcome.Limits;
import org.keeplit.outcome.Watcher;
import org.keeplit.procedure.Example;
import org.keeplit.procedure.Examples;
import org.keeplit.rule.Rule;
import org.keeplit.text.ProblemPrinter;
import org.keeplit.text.Problems;
import org.keeplit.text.Source;
import org.keeplit.verdict.ExampleJudgement;

/** Examples read from text: what is common, what each says for itself, and what must come of it. */
class ExamplesTest {
    private static final Library LIBRARY = Samples.library();
    private static final Examples SMALL = LIBRARY.examples().get("small");

    @Test
    void theBlockSaysWhatItIsFor() {
        assertEquals("Every line that examples have", SMALL.title());
        assertEquals(List.of("no-interruption", "live-line"), SMALL.rulebooks());
        assertEquals(2, SMALL.examples().size());
    }

    @Test
    void anExampleKeepsTheRulesThatItIsAbout() {
        Example first = SMALL.examples().get(0);
        assertEquals(
                List.of("load-stays-supplied", "open-only-what-is-bypassed"),
                first.procedure().keeps().stream()
                        .flatMap(book -> book.rules().stream())
                        .map(Rule::name)
                        .toList());
        assertTrue(first.mustHold());
        assertEquals(2, first.procedure().everyStart().size());
    }

    @Test
    void aBreakIsStatedWithItsReasons() {
        Example.Breaks breaks = SMALL.examples().get(1).breaks().get(0);
        assertEquals("load-stays-supplied", breaks.what().rule());
        assertEquals(Optional.of("opening"), breaks.what().step());
        assertEquals(Optional.of(Conductor.B), breaks.what().phase());
        assertEquals("mill", breaks.bindings().get("L"));
        assertEquals(1, breaks.because().size());
        assertEquals(Optional.of("mill, 12 customers, loses supply"), breaks.says());
    }

    @Test
    void bothPassFromEveryStart() {
        Problems problems = new Problems();
        List<ExampleJudgement> all = Keeplit.test(LIBRARY, Limits.USUAL, Watcher.NOBODY, problems);
        assertEquals("", ProblemPrinter.print(problems.sorted()));
        assertEquals(3, all.size());
        all.forEach(one -> assertTrue(one.isPassed(), () -> one.differences().toString()));
    }

    @Test
    void whereNobodyIsNamedThereIsAUsualCrew() {
        String text =
                """
                language 1
                examples bare for no-interruption
                on network short-line
                example "All four"
                  do
                    desk does "listens"
                    foreman does "looks"
                    east and west go aloft at unit
                  must hold
                """;
        List<Source> sources = new ArrayList<>(Samples.all());
        sources.add(new Source("bare.examples", text));
        Library library = new Reader().readSources(sources);
        assertEquals("", ProblemPrinter.print(library.problems()));
        assertEquals(
                4, library.examples().get("bare").examples().get(0).procedure().crew().size());
    }
}
