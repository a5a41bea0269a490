package org.keeplit.verdict;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.keeplit.outcome.RuleSeen;

/** Tells as text what came of examples, and what of their rules they do not show. The same gives the same bytes. */
public final class ExamplesReport {
    private final Style style;

    /**
     * Begins a report.
     *
     * @param style how to mark words
     */
    public ExamplesReport(Style style) {
        this.style = style;
    }

    /**
     * A line for each example, the story of each that failed, and what is not covered.
     *
     * @param examples what came of them
     * @param coverage what they show
     * @return the text, with a line end at its end
     */
    public String tell(List<ExampleJudgement> examples, Coverage coverage) {
        StringBuilder out = new StringBuilder();
        examples.forEach(e -> summary(e, out));
        for (ExampleJudgement example : examples) {
            if (!example.differences().isEmpty()) {
                out.append('\n');
                new Story(style).tell(example.failed(), out);
            }
        }
        coverage.books().forEach(book -> missing(book, out));
        out.append('\n').append(counts(examples)).append('\n').append(counts(coverage)).append('\n');
        return out.toString();
    }

    private void summary(ExampleJudgement one, StringBuilder out) {
        String status = one.isPassed()
                ? style.good("passed   ")
                : one.isUndecided() ? style.warning("undecided") : style.bad("FAILED   ");
        String start = one.judgement().instance().start().isEmpty() ? "" : ", starting with " + one.judgement().instance().start();
        out.append(status).append("  ").append(one.group()).append(": ").append(one.example().title()).append(start)
                .append('\n');
        String details = one.isUndecided()
                ? one.judgement().outcome().cut().orElse("") + "; nothing is claimed"
                : one.isPassed() ? came(one) : String.join("; ", one.differences());
        out.append("           ").append(details).append('\n');
    }

    private static String came(ExampleJudgement one) {
        if (one.example().mustHold()) {
            String about = one.example().of().isEmpty() ? "" : " " + String.join(", ", one.example().of());
            return "keeps" + about + " in " + Counted.of(one.judgement().outcome().states(), "state");
        }
        return "breaks " + one.example().breaks().stream()
                .map(b -> Expected.words(b.what()))
                .collect(Collectors.joining("; "));
    }

    private void missing(Coverage.Book book, StringBuilder out) {
        List<Coverage.OfRule> incomplete = book.rules().stream().filter(r -> !r.isComplete()).toList();
        if (incomplete.isEmpty()) {
            return;
        }
        out.append('\n').append(style.strong("Not shown of " + book.name())).append('\n');
        for (Coverage.OfRule of : incomplete) {
            out.append("  ").append(of.rule().name()).append('\n');
            if (!of.exercised()) {
                out.append("    ").append(style.warning("its case never comes up")).append('\n');
            } else if (!of.kept()) {
                out.append("    ").append(style.warning("no example keeps it")).append('\n');
            }
            if (!of.broken()) {
                out.append("    ").append(style.warning("no example breaks it")).append('\n');
            }
            if (of.exercised()) {
                of.missing().forEach(part -> out.append("    ").append(never(part)).append('\n'));
            }
        }
    }

    private static String never(RuleSeen.PartSeen seen) {
        String answer = !seen.isTrue() && !seen.isFalse() ? "never asked" : seen.isTrue() ? "never false" : "never true";
        return answer + ", " + seen.part().place().word() + ": " + seen.part().text();
    }

    private static String counts(List<ExampleJudgement> examples) {
        long passed = examples.stream().filter(ExampleJudgement::isPassed).count();
        long undecided = examples.stream().filter(ExampleJudgement::isUndecided).count();
        return examples.size() + (examples.size() == 1 ? " example: " : " examples: ") + passed + " passed, "
                + (examples.size() - passed - undecided) + " failed, " + undecided + " undecided";
    }

    private static String counts(Coverage coverage) {
        long rules = coverage.rules().count();
        long both = coverage.rules().filter(r -> r.kept() && r.broken()).count();
        long parts = coverage.rules().mapToLong(r -> r.parts().size()).sum();
        long seen = coverage.rules().flatMap(r -> r.parts().stream()).filter(RuleSeen.PartSeen::isCovered).count();
        return both + " of " + rules + (rules == 1 ? " rule" : " rules") + " shown kept and broken; " + seen + " of "
                + parts + (parts == 1 ? " condition" : " conditions") + " seen both true and false";
    }
}
