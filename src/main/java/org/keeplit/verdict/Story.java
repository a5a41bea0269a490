package org.keeplit.verdict;

import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.keeplit.condition.Truth;
import org.keeplit.outcome.Finding;
import org.keeplit.outcome.RuleResult;
import org.keeplit.outcome.TraceStep;
import org.keeplit.outcome.Why;
import org.keeplit.rule.Rule;

/** Tells the shortest way to each break of one procedure. */
final class Story {
    /** How many loads are named before the rest is only counted. */
    private static final int NAMED = 5;
    /** From how many acts on a common beginning is not told again. */
    private static final int WORTH_SKIPPING = 4;

    private final Style style;

    Story(Style style) {
        this.style = style;
    }

    void tell(Judgement judgement, StringBuilder out) {
        out.append(style.strong(judgement.instance().words()))
                .append('\n');
        judgement.differences().forEach(d -> out.append("  ").append(d).append('\n'));
        List<TraceStep> told = List.of();
        Set<List<Object>> begun = new HashSet<>();
        for (Finding finding : judgement.stories()) {
            if (begun.add(what(finding))) {
                tell(finding, told, out);
                told = finding.trace();
                elsewhere(finding, judgement.stories(), out);
            }
        }
        String later = judgement.outcome().rules().stream()
                .filter(r -> r.verdict() == RuleResult.Verdict.ONLY_AFTER)
                .map(r -> r.rule().name() + " (only after "
                        + r.finding().flatMap(Finding::after).orElse("another break") + ")")
                .collect(Collectors.joining(", "));
        if (!later.isEmpty()) {
            out.append("\n  Broken as a consequence: ").append(later).append('\n');
        }
    }

    /** {@return what is broken, wherever} */
    private static List<Object> what(Finding finding) {
        return List.of(finding.kind(), finding.rulebook(), finding.name());
    }

    /** Names the further places at which the same is broken. */
    private static void elsewhere(Finding told, List<Finding> all, StringBuilder out) {
        List<Finding> others =
                all.stream().filter(f -> f != told && what(f).equals(what(told))).toList();
        if (!others.isEmpty()) {
            out.append("\n  Broken first in other orders, too:\n");
            others.forEach(f -> out.append("    ").append(headline(f)).append('\n'));
        }
    }

    private void tell(Finding finding, List<TraceStep> told, StringBuilder out) {
        out.append("\n  ").append(style.bad(finding.sentence())).append('\n');
        out.append("  ").append(headline(finding)).append('\n');
        if (finding.unknown()) {
            out.append("  It cannot be shown to be kept: the model cannot know everything that it asks.\n");
        }
        finding.rule().ifPresent(rule -> reasons(rule, out));
        if (finding.trace().isEmpty()) {
            out.append("  It is so before the first step.\n");
        } else {
            out.append("\n  The shortest way there, and what each act changes:\n");
            trace(finding, told, out);
        }
        if (!finding.why().text().isEmpty()) {
            out.append("\n  What was asked, and what was so:\n");
            why(finding.why(), 2, out);
        }
    }

    private static String headline(Finding finding) {
        String what = finding.kind() == Finding.Kind.RULE ? "rule " + finding.name() : finding.kind().word();
        String bindings = finding.bindings().entrySet().stream()
                .map(e -> e.getKey() + " = " + e.getValue())
                .collect(Collectors.joining(", "));
        String others = finding.others() > 0 ? ", and " + finding.others() + " more like it" : "";
        int length = finding.trace().size();
        return what
                + (bindings.isEmpty() ? "" : " for " + bindings + others)
                + (finding.step().isEmpty() ? "" : ", at step " + finding.step())
                + finding.phase().map(p -> " on phase " + p).orElse("")
                + (length == 0 ? "" : length == 1 ? ", at the first act" : ", after " + length + " acts");
    }

    private static void reasons(Rule rule, StringBuilder out) {
        out.append("  Why it matters: ").append(rule.because()).append('\n');
        out.append("  Source: ")
                .append(rule.citation().orElse("common practice, no source"))
                .append('\n');
    }

    /** Tells the acts of a way. @param told a way that was told before */
    void trace(Finding finding, List<TraceStep> told, StringBuilder out) {
        int last = finding.trace().size();
        int width = String.valueOf(last).length();
        String indent = " ".repeat(8 + width);
        int same = common(finding.trace(), told);
        if (same >= WORTH_SKIPPING) {
            out.append("    1 to ").append(same).append("  as in the story before\n");
        }
        for (TraceStep step : finding.trace().subList(same >= WORTH_SKIPPING ? same : 0, last)) {
            String number = " ".repeat(width - String.valueOf(step.number()).length()) + step.number();
            String line = "    " + number + "  " + step.actor() + " " + step.text();
            out.append(step.number() == last ? style.bad(line) : line).append('\n');
            step.changes().forEach(change -> out.append(indent).append(change).append('\n'));
            lost(step.lost(), indent, out);
        }
    }

    /** {@return how many acts two ways have in common; the last act is always told} */
    private static int common(List<TraceStep> trace, List<TraceStep> told) {
        int same = 0;
        while (same < trace.size() - 1 && same < told.size() && trace.get(same).equals(told.get(same))) {
            same++;
        }
        return same;
    }

    /** Names the critical loads and the largest ones, and counts the rest. */
    private void lost(List<TraceStep.Lost> lost, String indent, StringBuilder out) {
        List<TraceStep.Lost> ranked = lost.stream()
                .sorted(Comparator.comparing((TraceStep.Lost l) -> l.critical().isEmpty())
                        .thenComparing(Comparator.comparing(TraceStep.Lost::customers).reversed())
                        .thenComparing(TraceStep.Lost::load))
                .toList();
        for (TraceStep.Lost load : ranked.subList(0, Math.min(NAMED, ranked.size()))) {
            String critical = load.critical().isEmpty() ? "" : ", critical: " + load.critical();
            String words = "LOSES SUPPLY: " + load.load() + ", " + customers(load.customers()) + ", phase "
                    + load.phases() + critical;
            out.append(indent).append(style.bad(words)).append('\n');
        }
        if (ranked.size() > NAMED) {
            List<TraceStep.Lost> rest = ranked.subList(NAMED, ranked.size());
            int customers = rest.stream().mapToInt(TraceStep.Lost::customers).sum();
            String words = "and " + rest.size() + " more loads, " + customers(customers);
            out.append(indent).append(style.bad(words)).append('\n');
        }
    }

    private static String customers(int count) {
        return count == 1 ? "1 customer" : count + " customers";
    }

    void why(Why why, int depth, StringBuilder out) {
        String mark = why.truth() == Truth.TRUE ? "true    " : why.truth() == Truth.FALSE ? "false   " : "unknown ";
        out.append("  ".repeat(depth)).append(mark).append(why.text()).append('\n');
        why.parts().forEach(part -> why(part, depth + 1, out));
    }
}
