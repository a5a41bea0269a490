package org.keeplit.verdict;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import org.keeplit.outcome.SweepResult;

/** Tells as a table what came of procedures wherever they fit. The same results give the same bytes. */
public final class SweepReport {
    private final Style style;
    private final boolean all;

    /**
     * Begins a report.
     *
     * @param style how to mark words
     * @param all whether every place is told, not only where something breaks or is not decided
     */
    public SweepReport(Style style, boolean all) {
        this.style = style;
        this.all = all;
    }

    /**
     * {@return the text, with a line end at its end}
     *
     * @param results the results, in the order in which they are told
     */
    public String tell(List<SweepResult> results) {
        Map<String, List<SweepResult>> byProcedure = new LinkedHashMap<>();
        results.forEach(r -> byProcedure.computeIfAbsent(r.procedure(), p -> new ArrayList<>()).add(r));
        StringBuilder out = new StringBuilder();
        byProcedure.forEach((name, list) -> tell(name, list, out));
        out.append(TextReport.CAUTION).append('\n');
        return out.toString();
    }

    private void tell(String name, List<SweepResult> results, StringBuilder out) {
        out.append(style.strong(name)).append(": ").append(Counted.of(results.size(), "place")).append('\n');
        for (SweepResult.Answer answer : SweepResult.Answer.values()) {
            long count = count(results, answer);
            if (count > 0) {
                out.append(String.format(Locale.ROOT, "  %-15s %7d%n", answer.words(), count));
            }
        }
        for (SweepResult result : results) {
            boolean wrong = result.answer() == SweepResult.Answer.BREAKS
                    || result.answer() == SweepResult.Answer.UNDECIDED
                    || result.answer() == SweepResult.Answer.NOT_PROVED;
            if (all || wrong) {
                out.append("  ").append(marked(result.answer())).append("  ").append(result.place()).append('\n');
                out.append("                   ").append(result.detail()).append('\n');
            }
        }
        if (!all) {
            reasons(results, out);
        }
        out.append('\n');
    }

    /** Where it does not apply, and why, counted: one reason stands for many places. */
    private static void reasons(List<SweepResult> results, StringBuilder out) {
        Map<String, Long> reasons = results.stream()
                .filter(r -> r.answer() == SweepResult.Answer.DOES_NOT_APPLY)
                .collect(Collectors.groupingBy(SweepResult::detail, LinkedHashMap::new, Collectors.counting()));
        reasons.forEach((reason, count) ->
                out.append(String.format(Locale.ROOT, "  does not apply to %d, because %s%n", count, reason)));
    }

    private static long count(List<SweepResult> results, SweepResult.Answer answer) {
        return results.stream().filter(r -> r.answer() == answer).count();
    }

    private String marked(SweepResult.Answer answer) {
        String words = String.format(Locale.ROOT, "%-15s", answer.words());
        return switch (answer) {
            case HOLDS -> style.good(words);
            case BREAKS, NOT_PROVED -> style.bad(words);
            case UNDECIDED -> style.warning(words);
            case DOES_NOT_APPLY -> words;
        };
    }
}
