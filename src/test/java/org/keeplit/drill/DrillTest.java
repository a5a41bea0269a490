package org.keeplit.drill;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringReader;
import java.io.StringWriter;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.keeplit.Keeplit;
import org.keeplit.language.Library;
import org.keeplit.language.Reader;
import org.keeplit.outcome.Limits;
import org.keeplit.outcome.SlipResult;
import org.keeplit.outcome.Watcher;
import org.keeplit.page.Browser;
import org.keeplit.page.Pages;
import org.keeplit.page.Proof;
import org.keeplit.page.SmallJob;
import org.keeplit.paper.Papers;
import org.keeplit.text.Problems;

/** Drills against what the verifier says of the same choices by other ways. */
class DrillTest {
    private static final LocalDate DATE = LocalDate.of(2026, 3, 2);

    private static final String STEPS = """
              bypass: op closes bridge
              look: op checks bridge is closed
                because "A bridge that is not seen closed is not closed."
              in any order
                opening: op opens main on A
                other: op opens main on B
              end
              gasket: hand inspects "gasket", finds "good" or "wet"
              last: op opens main on C
            """;

    private static final Drill DRILL = drill(SmallJob.of(STEPS)).get(0);

    private static List<Drill> drill(Library library) {
        Problems problems = new Problems();
        List<Drill> all = Papers.drill(library, Limits.USUAL, Watcher.NOBODY, problems);
        assertEquals(List.of(), problems.sorted());
        return all;
    }

    private static Drill.Option option(Drill.Place place, String words) {
        return place.options().stream().filter(o -> o.words().equals(words)).findFirst()
                .orElseThrow(() -> new AssertionError(words + " is not among " + place.options().stream().map(Drill.Option::words).toList()));
    }

    @Test
    void openingTooEarlyCostsTheCustomersTheirSupply() {
        Drill.Place start = DRILL.places().get(DRILL.start().place());
        assertEquals(Drill.Ending.RIGHT, option(start, "op closes bridge").ending());
        Drill.Option early = option(start, "op opens main on phase A");
        assertEquals(Drill.Ending.COSTS, early.ending());
        assertEquals(0, early.later());
        assertEquals(12, early.customers());
        assertEquals("main opens with no bridge on phase A", early.told());
        assertTrue(early.now().contains("main on phase A open"), early.now().toString());
    }

    @Test
    void whatIsLeftOutIsCaughtByTheCheck() {
        Drill.Option out = option(DRILL.places().get(DRILL.start().place()), "nobody does this, and the crew goes on: op closes bridge");
        assertEquals(Drill.Ending.CAUGHT, out.ending());
        assertEquals("step look", out.by());
        assertEquals(1, out.later());
        assertEquals(0, out.customers());
    }

    @Test
    void whereTheTextLeavesTheOrderFreeBothAreRight() {
        Drill.Place both = DRILL.places().stream().filter(p -> p.done() == 2).findFirst().orElseThrow();
        assertEquals(Drill.Ending.RIGHT, option(both, "op opens main on phase A").ending());
        assertEquals(Drill.Ending.RIGHT, option(both, "op opens main on phase B").ending());
        // They lead to different places, and from both the other comes next.
        assertNotEquals(option(both, "op opens main on phase A").next(), option(both, "op opens main on phase B").next());
    }

    @Test
    void everyRightChoiceLeadsOnToTheEnd() {
        for (Drill.Place place : DRILL.places()) {
            for (Drill.Option option : place.options()) {
                assertEquals(option.isRight(), !option.next().isEmpty());
                option.next().forEach(n -> assertTrue(DRILL.places().get(n.place()).done() > place.done()));
            }
            assertTrue(place.options().isEmpty() || place.options().stream().anyMatch(Drill.Option::isRight));
        }
    }

    @Test
    void whatComesOfASlipIsWhatTheTableOfSlipsSays() {
        compareWithSlips(SmallJob.of(STEPS), 3);
    }

    @Test
    @Tag("long")
    void whatComesOfASlipIsWhatTheTableOfSlipsSaysInShippedProcedures() {
        compareWithSlips(new Reader().read(List.of(Path.of("procedures/fuse.procedure"))), 10);
    }

    /** A slip that harms in the order of the text is exposed; one that is caught or noticed in it is at least not harmless in every order. */
    private static void compareWithSlips(Library library, int least) {
        List<Drill> drills = drill(library);
        var tables = Keeplit.slips(library, Limits.USUAL, Watcher.NOBODY, new Problems());
        int compared = 0;
        for (int i = 0; i < drills.size(); i++) {
            // What is right at another place may be offered too early: that is no slip of these.
            List<String> right = drills.get(i).places().stream()
                    .flatMap(p -> p.options().stream())
                    .filter(Drill.Option::isRight)
                    .map(Drill.Option::words)
                    .toList();
            for (Drill.Place place : drills.get(i).places()) {
                for (Drill.Option option : place.options()) {
                    List<SlipResult> same = tables.get(i).slips().stream()
                            .filter(s -> List.of("wrong phase", "neighbour", "wrong way").contains(s.kind().word()))
                            .filter(s -> option.words().substring(option.words().indexOf(' ') + 1).equals(s.words()))
                            .toList();
                    if (!right.contains(option.words()) && !same.isEmpty()) {
                        compared++;
                        List<SlipResult.Ending> endings = same.stream().map(SlipResult::ending).toList();
                        if (option.ending() == Drill.Ending.COSTS) {
                            assertTrue(endings.contains(SlipResult.Ending.EXPOSED), option + " " + endings);
                        } else if (option.ending() != Drill.Ending.HARMLESS) {
                            assertFalse(endings.stream().allMatch(SlipResult.Ending.HARMLESS::equals), option + " " + endings);
                        }
                    }
                }
            }
        }
        assertTrue(compared >= least, compared + " compared");
    }

    @Test
    void ofWhatDoesNotHoldThereIsNoDrill() {
        Drill broken = drill(SmallJob.of("  opening: op opens main on A\n")).get(0);
        assertEquals(Proof.BROKEN, broken.proof());
        assertEquals(List.of(), broken.places());
    }

    @Test
    void theSameTextGivesTheSameBytesAndTheAnswersTellAll() {
        Drill again = drill(SmallJob.of(STEPS)).get(0);
        assertEquals(DrillPage.of(DRILL, DATE), DrillPage.of(again, DATE));
        String answers = DrillPage.answers(DRILL, DATE);
        Pages.parsed(DrillPage.of(DRILL, DATE));
        Pages.parsed(answers);
        for (Drill.Place place : DRILL.places()) {
            if (place.asWritten() && place.isAsked()) {
                place.options().forEach(o -> assertTrue(answers.contains(o.words()), o.words()));
            }
        }
        assertFalse(answers.contains("<script>alert"));
    }

    @Test
    void atATerminalItAsksTellsAndCounts() throws IOException {
        Drill.Place start = DRILL.places().get(DRILL.start().place());
        int wrong = 1 + start.options().indexOf(option(start, "op opens main on phase A"));
        int right = 1 + start.options().indexOf(option(start, "op closes bridge"));
        StringWriter out = new StringWriter();
        String typed = "h\nnine\n" + wrong + "\n" + right + "\nq\n";
        new TerminalDrill(DRILL, new BufferedReader(new StringReader(typed)), new PrintWriter(out), false).run();
        String told = out.toString();
        assertTrue(told.contains("hint: One of these is right."), told);
        assertTrue(told.contains("Type a number from 1 to " + start.options().size() + ", h or q."), told);
        assertTrue(told.contains("Loses supply: 12 customers: mill on phase A."), told);
        assertTrue(told.contains("It is taken back."), told);
        assertTrue(told.contains("  1 times: right") && told.contains("  1 times: harm"), told);
    }

    @Test
    void inABrowserItIsPlayedToTheEndWithNoErrorAndNoRequest() {
        assumeTrue(Browser.chromium().isPresent(), "there is no Chromium on the path, so no page is opened in one");
        try (Browser browser = new Browser(DrillPage.of(DRILL, DATE))) {
            Drill.Place start = DRILL.places().get(DRILL.start().place());
            int wrong = 1 + start.options().indexOf(option(start, "op opens main on phase A"));
            browser.press("h");
            assertTrue(browser.run("document.getElementById('hint').textContent").contains("One of these is right."));
            browser.press(String.valueOf(wrong));
            assertTrue(browser.run("document.getElementById('came').textContent").contains("Loses supply: 12 customers"));
            browser.run("document.getElementById('go').click()");
            for (int at = DRILL.start().place(); !DRILL.places().get(at).options().isEmpty(); ) {
                List<Drill.Option> options = DRILL.places().get(at).options();
                int right = IntStream.range(0, options.size()).filter(i -> options.get(i).isRight()).findFirst().orElseThrow();
                browser.press(String.valueOf(right + 1));
                assertTrue(browser.run("document.getElementById('came').textContent").startsWith("Right: "));
                browser.run("document.getElementById('go').click()");
                at = options.get(right).next().get(0).place();
            }
            assertEquals("The drill is over.", browser.run("document.getElementById('ask').textContent"));
            assertTrue(browser.run("document.getElementById('end').textContent").contains("would have left 12 customers without supply"));
            assertEquals(List.of(), browser.complaints());
            assertEquals(List.of(), browser.requests());
        }
    }
}
