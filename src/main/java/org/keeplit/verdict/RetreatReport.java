package org.keeplit.verdict;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.keeplit.outcome.CalledOutage;
import org.keeplit.outcome.ChosenAct;
import org.keeplit.outcome.RetreatTable;

/** Tells as text the ways back to normal. The same tables give the same bytes. */
public final class RetreatReport {
    /** How many acts of a way are told where it is not told in full. */
    private static final int TOLD = 3;

    private final Style style;
    private final boolean all;

    /**
     * Begins a report.
     *
     * @param style how to mark words
     * @param all whether every way is told in full
     */
    public RetreatReport(Style style, boolean all) {
        this.style = style;
        this.all = all;
    }

    /**
     * {@return the text, with a line end at its end}
     *
     * @param tables the tables, in the order in which they are told
     */
    public String tell(List<RetreatTable> tables) {
        StringBuilder out = new StringBuilder();
        for (RetreatTable table : tables) {
            tell(table, out);
        }
        out.append(TextReport.CAUTION).append('\n');
        return out.toString();
    }

    private void tell(RetreatTable table, StringBuilder out) {
        out.append(style.strong(table.instance().words()));
        if (!table.holds()) {
            out.append(TextReport.notTried(table.cut(), "ways back are told of what holds"));
            return;
        }
        table.outage().ifPresent(outage -> outage(outage, out));
        String told = table.none() == 0
                ? "a safe way back to normal from each; the longest takes " + Counted.of(table.longest(), "act")
                : style.bad("from " + table.none() + " of them no safe way back was found");
        out.append(String.format(Locale.ROOT, "  %s, %s%n", Counted.of(table.states(), "state"), told));
        if (table.cut()) {
            out.append("  ").append(style.warning("not decided")).append(": there are more states than were looked at\n");
        }
        for (RetreatTable.Stop stop : table.stops()) {
            stop(stop, out);
        }
        out.append('\n');
    }

    /** A called outage comes first: it is always safe, and supply never ranks with life. */
    private void outage(CalledOutage outage, StringBuilder out) {
        out.append("\n  Always safe, at any step: stop, hands off, all clear, and call the desk for an outage.\n");
        if (!outage.devices().isEmpty()) {
            out.append("    At the start that opens ").append(String.join(", ", outage.devices()));
            out.append(String.format(
                    Locale.ROOT,
                    " and leaves %s at %s without supply.%n",
                    Counted.of(outage.customers(), "customer"),
                    Counted.of(outage.loads(), "load")));
        }
        out.append('\n');
    }

    private void stop(RetreatTable.Stop stop, StringBuilder out) {
        out.append("\n  after ").append(style.strong(stop.part().name())).append("  (line ").append(stop.part().line()).append(")");
        if (stop.none() > 0) {
            out.append("  ").append(style.bad("NO WAY BACK " + (stop.proved() ? "exists" : "was found")));
            out.append(stop.none() == stop.states() ? "" : " from " + stop.none() + " of " + stop.states() + " states");
        }
        out.append('\n');
        stop.way().ifPresent(way -> way(stop, way, out));
    }

    private void way(RetreatTable.Stop stop, ImmutableList<ChosenAct> way, StringBuilder out) {
        if (way.isEmpty()) {
            out.append("    nothing is to be put back\n");
            return;
        }
        out.append("    ").append(Counted.of(way.size(), "act"));
        out.append(way.size() <= stop.atLeast() ? ", the fewest that there can be" : ", at least " + stop.atLeast());
        Optional<String> more = stop.longest() > way.size()
                ? Optional.of("; up to " + stop.longest() + " from where its other orders may stand")
                : Optional.empty();
        out.append(more.orElse("")).append('\n');
        List<String> lines = new ArrayList<>();
        way.forEach(act -> lines.add(act.actor() + " " + act.text()));
        int told = all ? lines.size() : Math.min(TOLD, lines.size());
        for (int i = 0; i < told; i++) {
            out.append(String.format(Locale.ROOT, "    %4d  %s%n", i + 1, lines.get(i)));
        }
        if (told < lines.size()) {
            out.append("          and ").append(lines.size() - told).append(" more\n");
        }
    }
}
