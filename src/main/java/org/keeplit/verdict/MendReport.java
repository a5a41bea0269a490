package org.keeplit.verdict;

import com.github.difflib.DiffUtils;
import com.github.difflib.UnifiedDiffUtils;
import java.util.List;
import org.keeplit.outcome.Mend;

/** Tells how a procedure may be mended, the smallest change as a difference of texts. The same result gives the same bytes. */
public final class MendReport {
    /** How many other changes are named. */
    private static final int OTHERS = 4;
    /** How many lines stand around a change. */
    private static final int AROUND = 2;

    private final Style style;

    /**
     * Begins a report.
     *
     * @param style how to mark words
     */
    public MendReport(Style style) {
        this.style = style;
    }

    /**
     * {@return the text, with a line end at its end}
     *
     * @param mends what was found, in the order in which it is told
     */
    public String tell(List<Mend> mends) {
        StringBuilder out = new StringBuilder();
        mends.forEach(mend -> tell(mend, out));
        out.append("A mend is a proposal: who writes the procedure decides whether it says what was meant.\n");
        out.append(TextReport.CAUTION).append('\n');
        return out.toString();
    }

    private void tell(Mend mend, StringBuilder out) {
        out.append(style.strong(mend.procedure().name())).append(": ");
        if (mend.holds()) {
            out.append("holds as it is\n\n");
            return;
        } else if (mend.cut()) {
            out.append("undecided, ").append(TextReport.CUT).append("\n\n");
            return;
        } else if (mend.mends().isEmpty()) {
            out.append(style.bad("no small change was found after which it holds")).append(", in ");
            out.append(Counted.of(mend.tried(), "changed text")).append("\n\n");
            return;
        }
        Mend.Change best = mend.mends().get(0);
        out.append(style.good("holds after " + Counted.of(best.edits().size(), "change"))).append('\n');
        best.edits().forEach(edit -> out.append("  ").append(edit).append('\n'));
        out.append('\n');
        diff(mend, best, out);
        for (Mend.Change other : mend.mends().stream().skip(1).limit(OTHERS).toList()) {
            out.append("  or: ").append(String.join("; ", other.edits())).append('\n');
        }
        int more = mend.mends().size() - 1 - OTHERS;
        out.append(more > 0 ? "  and " + more + " more\n" : "");
        out.append("  ").append(Counted.of(mend.tried(), "changed text")).append(" read and proved\n\n");
    }

    private void diff(Mend mend, Mend.Change change, StringBuilder out) {
        List<String> was = mend.source().content().lines().toList();
        List<String> is = change.text().lines().toList();
        String name = mend.source().name();
        List<String> lines =
                UnifiedDiffUtils.generateUnifiedDiff(name, name, was, DiffUtils.diff(was, is), AROUND);
        for (String line : lines) {
            boolean head = line.startsWith("---") || line.startsWith("+++");
            String marked = head
                    ? line
                    : line.startsWith("-") ? style.bad(line) : line.startsWith("+") ? style.good(line) : line;
            out.append(marked).append('\n');
        }
        out.append('\n');
    }
}
