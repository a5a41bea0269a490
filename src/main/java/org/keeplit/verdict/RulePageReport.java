package org.keeplit.verdict;

import java.util.List;
import java.util.Optional;
import org.keeplit.outcome.Finding;
import org.keeplit.outcome.RuleResult;
import org.keeplit.procedure.Block;
import org.keeplit.rule.Rule;

/** Tells the page of a rule as text. The same page gives the same bytes. */
public final class RulePageReport {
    private final Style style;

    /**
     * Begins a report.
     *
     * @param style how to mark words
     */
    public RulePageReport(Style style) {
        this.style = style;
    }

    /**
     * {@return the page, with a line end at its end}
     *
     * @param page what there is to say
     */
    public String tell(RulePage page) {
        StringBuilder out = new StringBuilder();
        Rule rule = page.rule();
        out.append(style.strong(rule.name())).append("  of ").append(page.rulebook()).append(", ")
                .append(rule.span().source().name()).append(':').append(rule.span().line()).append('\n');
        part("What it asks", out);
        page.asks().forEach(line -> out.append("  ").append(line).append('\n'));
        part("Why it matters", out);
        out.append("  ").append(rule.because()).append('\n');
        part("Source", out);
        out.append("  ").append(rule.citation().orElse("common practice, no source")).append('\n');
        part("Weight", out);
        out.append("  ").append(weight(rule.severity())).append('\n');
        if (!page.overridden().isEmpty()) {
            part("Where it does not count as it stands", out);
            page.overridden().forEach(o -> out.append("  ").append(o.by()).append(o.replaced() ? " replaces it" : " drops it")
                    .append(", because ").append(o.because()).append('\n'));
        }
        keeping(page.keeping(), out);
        breaking(page, out);
        judgements(page, out);
        if (!page.related().isEmpty()) {
            part("Rules that are judged alike", out);
            out.append("  ").append(String.join(", ", page.related())).append('\n');
        }
        return out.toString();
    }

    private void part(String title, StringBuilder out) {
        out.append('\n').append(style.strong(title)).append('\n');
    }

    private static String weight(Rule.Severity severity) {
        return switch (severity) {
            case STOP -> "stop: breaking it breaks the procedure";
            case CAUTION -> "caution: breaking it is told, and counts under a strict check";
            case ADVICE -> "advice: breaking it is told";
        };
    }

    private void keeping(Optional<ExampleJudgement> example, StringBuilder out) {
        part("An example that keeps it", out);
        example.ifPresentOrElse(e -> example(e, out), () -> out.append("  there is none\n"));
    }

    private void breaking(RulePage page, StringBuilder out) {
        part("An example that breaks it", out);
        if (page.breaking().isEmpty()) {
            out.append("  there is none\n");
            return;
        }
        ExampleJudgement example = page.breaking().get();
        example(example, out);
        Optional<Finding> found = example.judgement().outcome().rules().stream()
                .filter(r -> r.rule().name().equals(page.rule().name()))
                .flatMap(r -> r.finding().stream())
                .findFirst();
        found.ifPresent(finding -> {
            out.append("\n  ").append(style.bad(finding.sentence())).append('\n');
            if (finding.trace().isEmpty()) {
                out.append("  It is so before the first step.\n");
            } else {
                new Story(style).trace(finding, List.of(), out);
            }
            if (!finding.why().text().isEmpty()) {
                out.append("  What was asked, and what was so:\n");
                new Story(style).why(finding.why(), 2, out);
            }
        });
    }

    private void example(ExampleJudgement one, StringBuilder out) {
        out.append("  ").append(one.example().title()).append("  (on ").append(one.judgement().instance().network().name())
                .append(", ").append(one.example().span().source().name()).append(':')
                .append(one.example().span().line()).append(")\n");
        one.judgement().procedure().starts().forEach(start -> out.append("    starts with ")
                .append(start.span().source().line(start.span().line()).strip()).append('\n'));
        steps(one.judgement().procedure().body(), 2, out);
    }

    private static void steps(List<Block> blocks, int depth, StringBuilder out) {
        for (Block block : blocks) {
            String line = block.span().source().line(block.span().line()).strip();
            out.append("  ".repeat(depth)).append(line).append('\n');
            if (block instanceof Block.Group group) {
                steps(group.parts(), depth + 1, out);
            } else if (block instanceof Block.ForEachPhase each) {
                steps(each.parts(), depth + 1, out);
            } else if (block instanceof Block.Repeat repeat) {
                steps(repeat.parts(), depth + 1, out);
            }
        }
    }

    private void judgements(RulePage page, StringBuilder out) {
        if (page.judgements().isEmpty()) {
            return;
        }
        part("In the procedures given", out);
        for (Judgement judgement : page.judgements()) {
            for (RuleResult result : judgement.outcome().rules()) {
                if (result.rule().name().equals(page.rule().name())) {
                    out.append("  ").append(judgement.instance().words()).append(": ").append(verdict(result)).append('\n');
                    result.remark().ifPresent(r -> out.append("    ").append(r.sentence()).append('\n'));
                }
            }
        }
    }

    private static String verdict(RuleResult result) {
        return switch (result.verdict()) {
            case HOLDS -> "holds";
            case BROKEN -> "broken" + result.finding()
                    .filter(f -> !f.step().isEmpty())
                    .map(f -> " at " + f.step())
                    .orElse("");
            case ONLY_AFTER -> "broken only after " + result.finding().flatMap(Finding::after).orElse("another break");
            case NOT_EXERCISED -> "its case never comes up";
            case UNDECIDED -> "undecided";
        };
    }
}
