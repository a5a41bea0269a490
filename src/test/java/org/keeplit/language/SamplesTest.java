package org.keeplit.language;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.keeplit.text.ProblemPrinter;

/** The samples read without a mistake. */
class SamplesTest {
    private final Library library = Samples.library();

    @Test
    void nothingIsWrongWithThem() {
        assertEquals("", ProblemPrinter.print(library.problems()));
    }

    @Test
    void nothingIsWrongWithTheProjectsOwnFiles() {
        Library own = new Reader().read(List.of(Samples.ROOT.resolve("shared"), Samples.ROOT.resolve("procedures")));
        assertEquals("", ProblemPrinter.print(own.problems()));
    }

    @Test
    void everythingIsThereInTheOrderOfTheFiles() {
        assertEquals(List.of("overhead", "wires", "electric"), library.equipment().keySet().asList());
        assertEquals(List.of("heron-vale", "electric", "short-line"), library.networks().keySet().asList());
        assertEquals(
                List.of("no-interruption", "live-line", "good-housekeeping", "every-condition", "figures", "past", "stricter"),
                library.rulebooks().keySet().asList());
        assertEquals(
                List.of("bench", "every-step", "LP-12", "LP-12-a", "LP-12-b", "LP-12-c", "LP-12-d", "every-edit",
                        "measuring"),
                library.procedures().keySet().asList());
    }
}
