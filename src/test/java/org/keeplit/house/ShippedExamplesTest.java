package org.keeplit.house;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.common.collect.ImmutableList;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.keeplit.Keeplit;
import org.keeplit.explore.RuleWords;
import org.keeplit.language.Library;
import org.keeplit.outcome.Limits;
import org.keeplit.outcome.Watcher;
import org.keeplit.rule.Rule;
import org.keeplit.text.ProblemPrinter;
import org.keeplit.text.Problems;
import org.keeplit.verdict.Coverage;
import org.keeplit.verdict.ExampleJudgement;
import org.keeplit.verdict.RulePage;
import org.keeplit.verdict.RulePageReport;
import org.keeplit.verdict.Style;

/** Every shipped rule has an example that keeps it and one that breaks it, and each comes as it states. */
class ShippedExamplesTest {
    private static List<ExampleJudgement> examples;
    private static Coverage coverage;

    @BeforeAll
    static void tryAll() {
        Library library = Keeplit.read(List.of(Path.of("shared")));
        Problems problems = new Problems();
        library.problems().forEach(problems::add);
        examples = Keeplit.test(library, Limits.USUAL, Watcher.NOBODY, problems);
        coverage = Keeplit.coverage(library, examples);
        assertEquals("", ProblemPrinter.print(problems.sorted()));
    }

    @Test
    void eachComesAsItStates() {
        List<String> wrong = new ArrayList<>();
        examples.stream()
                .filter(e -> !e.isPassed())
                .forEach(e -> wrong.add(e.group() + ", " + e.example().title() + ": " + e.differences()));
        assertEquals(List.of(), wrong);
    }

    /** A rule that is named here needs examples in {@code shared/examples}. */
    @Test
    void everyRuleIsShownKeptAndBroken() {
        List<String> missing = new ArrayList<>();
        for (Coverage.Book book : coverage.books()) {
            for (Coverage.OfRule of : book.rules()) {
                if (!of.kept() || !of.broken()) {
                    missing.add(book.name() + "/" + of.rule().name() + (of.kept() ? "" : ": no example keeps it")
                            + (of.broken() ? "" : ": no example breaks it"));
                }
            }
        }
        assertEquals(List.of(), missing);
        assertTrue(coverage.rules().count() >= 114, "rules were lost");
    }

    /** A question that is named here is answered alike in every example: it needs one where it is answered otherwise, or it is no question. */
    @Test
    void everyQuestionIsSeenBothTrueAndFalse() {
        List<String> missing = new ArrayList<>();
        for (Coverage.Book book : coverage.books()) {
            for (Coverage.OfRule of : book.rules()) {
                of.missing().forEach(part -> missing.add(book.name() + "/" + of.rule().name() + ": " + part));
            }
        }
        assertEquals(List.of(), missing);
        assertTrue(coverage.isComplete());
    }

    /** The page that {@code explain} prints says of every rule what it asks, why, whence, and shows both examples. */
    @Test
    void everyRuleHasItsPage() {
        for (Coverage.Book book : coverage.books()) {
            for (Coverage.OfRule of : book.rules()) {
                RulePage page = new RulePage(
                        book.name(),
                        of.rule(),
                        RuleWords.of(of.rule()),
                        ImmutableList.of(),
                        first(e -> e.keeps(of.rule().name()), of),
                        first(e -> e.breaks(of.rule().name()), of),
                        ImmutableList.of(),
                        ImmutableList.of());
                String told = new RulePageReport(Style.PLAIN).tell(page);
                assertFalse(told.contains("there is none"), told);
                assertTrue(told.contains("What was asked, and what was so") || of.rule().form() == Rule.Form.EVENTUALLY, told);
                assertTrue(told.contains("\nSource\n  ") && told.contains("\nWhy it matters\n  "), told);
            }
        }
    }

    private static Optional<ExampleJudgement> first(
            Predicate<ExampleJudgement> which, Coverage.OfRule of) {
        return examples.stream()
                .filter(e -> e.seen().stream().anyMatch(s -> s.rule().span().equals(of.rule().span())))
                .filter(which)
                .findFirst();
    }
}
