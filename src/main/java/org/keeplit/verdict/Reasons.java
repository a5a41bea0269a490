package org.keeplit.verdict;

import java.util.List;
import java.util.Optional;
import org.keeplit.condition.Truth;
import org.keeplit.explore.Finding;
import org.keeplit.explore.RuleResult;
import org.keeplit.explore.Why;

/** Tells of every rule why it is kept or broken, part by part, and what a check remembers for it. */
final class Reasons {
    private final Style style;

    Reasons(Style style) {
        this.style = style;
    }

    void tell(Judgement judgement, StringBuilder out) {
        out.append('\n')
                .append(style.strong("Reasons: " + judgement.procedure().name() + " on " + TextReport.place(judgement)))
                .append('\n');
        for (RuleResult result : judgement.outcome().rules()) {
            Optional<Why> broken = result.finding().map(Finding::tree).filter(w -> !w.text().isEmpty());
            Optional<Why> why = broken.isPresent() ? broken : result.example();
            why.ifPresent(w -> tree(w, 1, out));
            if (why.isEmpty()) {
                out.append("  not asked  rule ").append(result.rule().name()).append('\n');
            }
            result.remark().ifPresent(r -> out.append("             ").append(r).append('\n'));
            if (result.memoryBits() > 0) {
                out.append("             remembers ")
                        .append(result.memoryBits())
                        .append(result.memoryBits() == 1 ? " bit" : " bits")
                        .append(" in each state\n");
            }
        }
    }

    private static void tree(Why why, int depth, StringBuilder out) {
        String mark = why.truth() == Truth.TRUE ? "true       " : why.truth() == Truth.FALSE ? "false      " : "unknown    ";
        String indent = "  ".repeat(depth);
        out.append(indent).append(mark);
        if (!why.witness().isEmpty()) {
            out.append(why.witness()).append(": ");
        }
        out.append(why.text()).append('\n');
        for (Why.Beside one : why.figures()) {
            out.append(indent).append("           ");
            out.append(one.where().isEmpty() ? "" : one.where() + ": ").append(one.figure());
            out.append(one.limit().isEmpty() ? "" : " beside " + one.limit()).append('\n');
        }
        if (!why.path().isEmpty()) {
            out.append(indent).append("           by ").append(way(why.path())).append('\n');
        }
        why.parts().forEach(part -> tree(part, depth + 1, out));
    }

    private static String way(List<String> path) {
        return String.join(" - ", path);
    }
}
