package org.keeplit.text;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** The marks stand under the words that are meant, whatever stands before them. */
class ProblemPrinterTest {
    private static Span span(String line, String meant) {
        return new Span(new Source("a.rules", "first\n" + line + "\r\n"), 2, line.indexOf(meant) + 1, meant.length());
    }

    @Test
    void marksHelpAndTheOtherPlace() {
        Problem problem = Problem.error("some-code", span("one two three", "two"), "two is wrong")
                .help("write 2")
                .related(span("one two three", "one"), "here");
        assertEquals(
                """
                a.rules:2:5: two is wrong [some-code]
                    2 | one two three
                      |     ^^^
                    help: write 2
                    see a.rules:2:1: here
                    2 | one two three
                      | ^^^
                """,
                ProblemPrinter.print(problem));
    }

    @Test
    void tabsStayUnderTabsAndAPairIsOneLetter() {
        String text = ProblemPrinter.print(Problem.error("c", span("\tx\ud83d\udc04\ty", "y"), "m"));
        assertTrue(text.contains("    2 | \tx\ud83d\udc04\ty\n      | \t  \t^\n"), text);
    }

    @Test
    void aLongLineIsShownAroundThePlace() {
        String line = "x".repeat(500) + "HERE" + "x".repeat(500);
        String text = ProblemPrinter.print(Problem.error("c", span(line, "HERE"), "m"));
        assertTrue(text.lines().allMatch(l -> l.length() < 160), text);
        String[] lines = text.split("\n");
        assertEquals(lines[1].indexOf("HERE"), lines[2].indexOf("^^^^"));
    }

    @Test
    void nothingDisturbsATerminal() {
        String text = ProblemPrinter.print(Problem.error("c", span("a\u001b[31mb", "b"), "m"));
        assertTrue(text.indexOf('\u001b') < 0);
    }

    @Test
    void aWholeFileHasNoLine() {
        Problem problem = Problem.warning("c", Span.ofFile(new Source("a.rules", "")), "m");
        assertEquals("a.rules: warning: m [c]\n", ProblemPrinter.print(problem));
    }

    @Test
    void theEndOfALineIsMarkedToo() {
        Span end = new Span(new Source("a.rules", "one"), 1, 4, 0);
        assertTrue(ProblemPrinter.print(Problem.error("c", end, "m")).endsWith("  |    ^\n"));
    }
}
