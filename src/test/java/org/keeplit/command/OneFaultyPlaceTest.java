package org.keeplit.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.keeplit.Keeplit;
import org.keeplit.exchange.Answer;
import org.keeplit.exchange.JsonReporter;
import org.keeplit.exchange.JunitReporter;
import org.keeplit.exchange.Reporter;
import org.keeplit.exchange.SarifReporter;
import org.keeplit.exchange.TextReporter;
import org.keeplit.explore.Everywhere;
import org.keeplit.language.Library;
import org.keeplit.outcome.Limits;
import org.keeplit.outcome.Watcher;
import org.keeplit.text.ProblemPrinter;
import org.keeplit.text.Problems;
import org.keeplit.verdict.Judgement;
import org.keeplit.verdict.Style;

/** A fault of this program at one place is told there, and takes nothing from the other verdicts. */
class OneFaultyPlaceTest {
    @TempDir
    Path folder;

    /** As if the search of one procedure had a fault. */
    private static final class Faulty implements Watcher {
        @Override
        public void begins(String procedure, double orders, int stateBits) {
            if (procedure.equals("P-2")) {
                throw new IllegalStateException("no vertex of that number");
            }
        }

        @Override
        public boolean goOn(int states, int open) {
            return true;
        }
    }

    private Library library() throws IOException {
        Spur spur = new Spur(folder, 3);
        return Keeplit.read(List.of(
                spur.procedure("P-1", "supply", "  west opens gang-1\n"),
                spur.procedure("P-2", "supply", "  west opens gang-2\n"),
                spur.procedure("P-3", "supply", "  west opens feeder\n")));
    }

    private static Reporter reporter(String format) {
        return switch (format) {
            case "json" -> new JsonReporter();
            case "sarif" -> new SarifReporter(Form.pages());
            case "junit" -> new JunitReporter();
            default -> new TextReporter(Style.PLAIN, false);
        };
    }

    @ParameterizedTest
    @ValueSource(strings = {"text", "json", "sarif", "junit"})
    void oneFaultWipedEveryOtherVerdict(String format) throws IOException {
        Problems problems = new Problems();
        List<Judgement> judgements = Keeplit.check(library(), Limits.USUAL, 2, new Faulty(), problems);
        assertEquals(
                List.of(Judgement.Status.HOLDS, Judgement.Status.BROKEN),
                judgements.stream().map(Judgement::status).toList());
        String told = reporter(format).tell(new Answer.Checks(judgements, false), List.of(), problems.sorted())
                + (format.equals("text") ? ProblemPrinter.print(problems.sorted()) : "");
        assertTrue(told.contains("P-1"), told);
        assertTrue(told.contains("P-3"), told);
        assertTrue(told.contains("P-2 on spur was not worked out, by a fault of keeplit and not of your files"), told);
        assertTrue(told.contains("own-fault"), told);
        assertTrue(told.contains("no vertex of that number, at org.keeplit.command.OneFaultyPlaceTest"), told);
        assertEquals(70, ExitCode.of(judgements, List.of(), problems, false));
    }

    @Test
    void theSameWhereSomethingElseIsWorkedOut() throws IOException {
        Problems problems = new Problems();
        Library library = library();
        List<String> done = Everywhere.whatMustHold(library.givenProcedures(), library.networks(), problems, (one, prepared) -> {
            if (one.procedure().name().equals("P-2")) {
                throw new IllegalStateException("no vertex of that number");
            }
            return one.procedure().name();
        });
        assertEquals(List.of("P-1", "P-3"), done);
        assertEquals(70, ExitCode.of(problems).getAsInt());
    }
}
