package org.keeplit.verdict;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.keeplit.outcome.Finding;
import org.keeplit.outcome.Harm;
import org.keeplit.outcome.OrderTable;
import org.keeplit.outcome.Part;
import org.keeplit.outcome.TraceStep;

/** Tells as text which steps must come before which. The same tables give the same bytes. */
public final class OrderReport {
    private final Style style;
    private final boolean all;

    /**
     * Begins a report.
     *
     * @param style how to mark words
     * @param all whether every pair is told, not only what must come before what and does not follow from two others
     */
    public OrderReport(Style style, boolean all) {
        this.style = style;
        this.all = all;
    }

    /**
     * {@return the text, with a line end at its end}
     *
     * @param tables the tables, in the order in which they are told
     */
    public String tell(List<OrderTable> tables) {
        StringBuilder out = new StringBuilder();
        for (OrderTable table : tables) {
            tell(table, out);
        }
        out.append(TextReport.CAUTION).append('\n');
        return out.toString();
    }

    private void tell(OrderTable table, StringBuilder out) {
        out.append(style.strong(table.instance().words()));
        if (!table.holds()) {
            out.append(TextReport.notTried(table.cut(), "what must come first is told of what holds"));
            return;
        }
        out.append(String.format(
                Locale.ROOT,
                ": %s, %s that the text orders%n"
                        + "  %,d must come in that order, %s%n"
                        + "  %,d must as long as nothing else is changed (marked ~)%n  %,d may change places%s%n",
                Counted.of(table.parts().size(), "step"),
                Counted.of(table.pairs().size(), "pair"),
                count(table, OrderTable.Kind.NECESSARY),
                table.exhaustive() ? "of all orders that there are" : "of those that were tried",
                count(table, OrderTable.Kind.AS_WRITTEN),
                count(table, OrderTable.Kind.FREE),
                count(table, OrderTable.Kind.UNKNOWN) == 0
                        ? ""
                        : String.format(Locale.ROOT, ", %,d cannot be told", count(table, OrderTable.Kind.UNKNOWN))));
        for (Part part : table.parts()) {
            List<OrderTable.Pair> told = table.pairs().stream()
                    .filter(p -> p.after() == part.number() && (all || p.direct()))
                    .toList();
            if (!told.isEmpty()) {
                out.append("\n  ").append(style.strong(part.name())).append("  (line ").append(part.line()).append(")\n");
                told.forEach(pair -> pair(table, pair, out));
            }
        }
        out.append('\n');
        boolean one = count(table, OrderTable.Kind.AS_WRITTEN) == 0;
        every(one ? "these" : "what is not marked", table.necessary(), out);
        if (!one) {
            every("all of these", table.asWritten(), out);
        }
        out.append('\n');
    }

    private static long count(OrderTable table, OrderTable.Kind kind) {
        return table.pairs().stream().filter(p -> p.kind() == kind).count();
    }

    private void pair(OrderTable table, OrderTable.Pair pair, StringBuilder out) {
        String name = table.parts().get(pair.before()).name();
        switch (pair.kind()) {
            case FREE -> out.append("    may come before ").append(name).append('\n');
            case UNKNOWN -> out.append("    ").append(style.warning("cannot be told")).append(" against ").append(name).append('\n');
            case NECESSARY, AS_WRITTEN -> {
                out.append(pair.kind() == OrderTable.Kind.NECESSARY ? "    after " : "  ~ after ").append(name);
                out.append(pair.direct() ? "\n" : ", as follows from others\n");
                pair.harm().ifPresent(harm -> out.append("        ").append(words(harm)).append('\n'));
            }
        }
    }

    private static String words(Harm harm) {
        String at = harm.step().isEmpty() ? " at the end" : " at " + harm.step();
        return harm.sentence() + " (" + harm.name() + at + harm.phase().map(p -> " on phase " + p).orElse("") + ")";
    }

    private void every(String which, OrderTable.Every every, StringBuilder out) {
        String states = Counted.of(every.states(), "state");
        switch (every.answer()) {
            case SAFE -> out.append("  ").append(style.good("Every order that keeps to " + which + " is safe"))
                    .append(", in ").append(states).append(".\n");
            case UNDECIDED -> out.append("  Whether every order that keeps to ").append(which).append(" is safe is ")
                    .append(style.warning("not decided")).append(": none that is not was found in ").append(states).append(".\n");
            case NOT_SAFE -> {
                Finding finding = every.exception().orElseThrow();
                out.append("  ").append(style.bad("Not every order that keeps to " + which + " is safe")).append(": ")
                        .append(finding.sentence()).append(" (").append(Expected.words(finding)).append(")\n");
                out.append("    in this order: ").append(String.join("; ", steps(finding))).append('\n');
            }
        }
    }

    /** {@return the steps of a way, in order} */
    private static List<String> steps(Finding finding) {
        List<String> all = new ArrayList<>();
        for (TraceStep step : finding.trace()) {
            if (all.isEmpty() || !all.get(all.size() - 1).equals(step.step())) {
                all.add(step.step());
            }
        }
        return all;
    }
}
