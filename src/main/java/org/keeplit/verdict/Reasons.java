package org.keeplit.verdict;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.keeplit.condition.Truth;
import org.keeplit.outcome.Finding;
import org.keeplit.outcome.RuleResult;
import org.keeplit.outcome.Why;

/** Tells of every rule why it is kept or broken, part by part, and what a check remembers for it. */
final class Reasons {
    /** How many alike are each told on a line of its own. */
    private static final int ALIKE = 3;
    /** How many alike are named before the rest is only counted. */
    private static final int NAMED = 20;

    private final Style style;

    Reasons(Style style) {
        this.style = style;
    }

    void tell(Judgement judgement, StringBuilder out) {
        out.append('\n')
                .append(style.strong("Reasons: " + judgement.instance().words()))
                .append('\n');
        out.append("  It rests on:\n");
        judgement.basis().all().forEach(line -> out.append("    ").append(line).append('\n'));
        for (RuleResult result : judgement.outcome().rules()) {
            Optional<Why> broken = result.finding().map(Finding::tree).filter(w -> !w.text().isEmpty());
            Optional<Why> why = broken.isPresent() ? broken : result.example();
            why.ifPresent(w -> tree(w, 1, out));
            if (why.isEmpty()) {
                out.append("  not asked  rule ").append(result.rule().name()).append('\n');
            }
            result.remark().ifPresent(r -> out.append("             ").append(r.sentence()).append('\n'));
            if (result.memoryBits() > 0) {
                out.append("             remembers ")
                        .append(result.memoryBits())
                        .append(result.memoryBits() == 1 ? " bit" : " bits")
                        .append(" in each state\n");
            }
        }
    }

    /** Draws a condition with the value under each part. @param depth how far it is set in */
    static void tree(Why why, int depth, StringBuilder out) {
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
        parts(why.parts(), depth + 1, out);
    }

    /** Many things of which the same is so are told in one line after the first of them. */
    private static void parts(List<Why> parts, int depth, StringBuilder out) {
        int at = 0;
        while (at < parts.size()) {
            int to = at + 1;
            while (to < parts.size() && isAlike(parts.get(at), parts.get(to))) {
                to++;
            }
            int told = to - at > ALIKE ? at + 1 : to;
            parts.subList(at, told).forEach(part -> tree(part, depth, out));
            if (told < to) {
                int named = Math.min(to, told + NAMED);
                String names = parts.subList(told, named).stream()
                        .map(part -> part.witness().replaceFirst("^.* = ", ""))
                        .collect(Collectors.joining(", "));
                names += named < to ? " and " + (to - named) + " more" : "";
                out.append("  ".repeat(depth)).append("           and so for ").append(names).append('\n');
            }
            at = to;
        }
    }

    private static boolean isAlike(Why one, Why other) {
        return one.truth() == other.truth() && isPlain(one) && isPlain(other);
    }

    private static boolean isPlain(Why why) {
        return !why.witness().isEmpty() && why.parts().isEmpty() && why.figures().isEmpty() && why.path().isEmpty();
    }

    private static String way(List<String> path) {
        return String.join(" - ", path);
    }
}
