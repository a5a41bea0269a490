package org.keeplit.verdict;

import java.util.stream.Collectors;
import org.keeplit.condition.Truth;
import org.keeplit.explore.Finding;
import org.keeplit.explore.RuleResult;
import org.keeplit.explore.TraceStep;
import org.keeplit.explore.Why;
import org.keeplit.rule.Rule;

/** Tells the shortest way to each break of one procedure. */
final class Story {
    private final Style style;

    Story(Style style) {
        this.style = style;
    }

    void tell(Judgement judgement, StringBuilder out) {
        out.append(style.strong(judgement.procedure().name() + " on " + TextReport.place(judgement)))
                .append('\n');
        judgement.differences().forEach(d -> out.append("  ").append(d).append('\n'));
        for (Finding finding : judgement.stories()) {
            tell(finding, judgement, out);
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

    private void tell(Finding finding, Judgement judgement, StringBuilder out) {
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
            trace(finding, out);
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
                + (length == 0 ? "" : length == 1 ? ", at the first act" : ", after " + length + " acts");
    }

    private static void reasons(Rule rule, StringBuilder out) {
        out.append("  Why it matters: ").append(rule.because()).append('\n');
        out.append("  Source: ")
                .append(rule.citation().orElse("common practice, no source"))
                .append('\n');
    }

    private void trace(Finding finding, StringBuilder out) {
        int last = finding.trace().size();
        int width = String.valueOf(last).length();
        for (TraceStep step : finding.trace()) {
            String number = " ".repeat(width - String.valueOf(step.number()).length()) + step.number();
            String line = "    " + number + "  " + step.actor() + " " + step.text();
            out.append(step.number() == last ? style.bad(line) : line).append('\n');
            String indent = " ".repeat(8 + width);
            for (String change : step.changes()) {
                if (!change.isEmpty()) {
                    out.append(indent).append(change).append('\n');
                }
            }
            for (TraceStep.Lost lost : step.lost()) {
                out.append(indent).append(style.bad(lost(lost))).append('\n');
            }
        }
    }

    private static String lost(TraceStep.Lost lost) {
        String customers = lost.customers() == 1 ? "1 customer" : lost.customers() + " customers";
        String critical = lost.critical().isEmpty() ? "" : ", critical: " + lost.critical();
        return "LOSES SUPPLY: " + lost.load() + ", " + customers + ", phase " + lost.phases() + critical;
    }

    private void why(Why why, int depth, StringBuilder out) {
        String mark = why.truth() == Truth.TRUE ? "true    " : why.truth() == Truth.FALSE ? "false   " : "unknown ";
        out.append("  ".repeat(depth)).append(mark).append(why.text()).append('\n');
        why.parts().forEach(part -> why(part, depth + 1, out));
    }
}
