package org.keeplit.verdict;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.keeplit.outcome.Finding;
import org.keeplit.outcome.SlipResult;
import org.keeplit.outcome.SlipTable;

/** Tells as text what single slips do. The same tables give the same bytes. */
public final class SlipReport {
    private final Style style;
    private final boolean all;

    /**
     * Begins a report.
     *
     * @param style how to mark words
     * @param all whether every slip is told, not only the exposed ones
     */
    public SlipReport(Style style, boolean all) {
        this.style = style;
        this.all = all;
    }

    /**
     * {@return the text, with a line end at its end}
     *
     * @param tables the tables, in the order in which they are told
     */
    public String tell(List<SlipTable> tables) {
        StringBuilder out = new StringBuilder();
        for (SlipTable table : tables) {
            tell(table, out);
        }
        out.append(TextReport.CAUTION).append('\n');
        return out.toString();
    }

    private void tell(SlipTable table, StringBuilder out) {
        out.append(style.strong(table.instance().words()));
        if (!table.holds()) {
            out.append(TextReport.notTried(table.cut(), "slips are told of what holds"));
            return;
        }
        int tried = table.slips().size();
        out.append(": ").append(Counted.of(tried, "single slip")).append('\n');
        for (SlipResult.Ending ending : SlipResult.Ending.values()) {
            long count = table.count(ending);
            if (count > 0) {
                out.append(String.format(
                        Locale.ROOT, "  %-10s %5d  %5.1f %%%n", ending.word(), count, 100.0 * count / tried));
            }
        }
        long cured = table.slips().stream().filter(s -> s.cure().isPresent()).count();
        if (table.count(SlipResult.Ending.EXPOSED) > 0) {
            out.append("  of those exposed ").append(cured).append(cured == 1 ? " is" : " are").append(" caught by one more look\n");
        }
        String step = "";
        for (SlipResult one : table.slips()) {
            if (!all && one.ending() != SlipResult.Ending.EXPOSED) {
                continue;
            }
            if (!one.step().equals(step)) {
                step = one.step();
                out.append("\n  ").append(style.strong(step)).append('\n');
            }
            slip(one, out);
        }
        out.append('\n');
    }

    private void slip(SlipResult one, StringBuilder out) {
        out.append("    ").append(ending(one.ending())).append("  ");
        out.append(one.kind().word()).append(": ").append(one.words()).append('\n');
        if (one.ending() == SlipResult.Ending.EXPOSED) {
            Finding first = one.findings().get(0);
            out.append("        ").append(first.sentence()).append('\n');
            out.append("        ").append(first.name()).append(", at ").append(first.step()).append(", after ");
            out.append(Counted.of(first.trace().size(), "act"));
            int more = one.findings().size() - 1;
            out.append(more > 0 ? ", and " + more + " more" : "").append('\n');
            out.append("        ").append(one.cure().map(SlipReport::cure).orElse("no single look was found that catches it"));
            out.append('\n');
        } else if (one.ending() == SlipResult.Ending.CAUGHT || one.ending() == SlipResult.Ending.NOTICED) {
            String where = one.findings().stream().map(Finding::step).distinct().collect(Collectors.joining("; "));
            out.append("        at ").append(where).append('\n');
        }
    }

    private static String cure(SlipResult.Cure cure) {
        String where = cure.before().isEmpty() ? " at the end" : " before " + cure.before();
        return "caught if " + cure.actor() + " " + cure.look() + where;
    }

    private String ending(SlipResult.Ending ending) {
        String word = String.format(Locale.ROOT, "%-9s", ending.word());
        return switch (ending) {
            case EXPOSED -> style.bad(word);
            case CAUGHT, HARMLESS, NOTICED -> style.good(word);
            case UNDECIDED -> style.warning(word);
        };
    }
}
