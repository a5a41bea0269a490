package org.keeplit.editor;

import java.util.ArrayList;
import java.util.List;
import org.eclipse.lsp4j.FoldingRange;
import org.keeplit.language.Sketch;

/** What can be folded away: what stands deeper below a line, with the {@code end} that closes it. */
final class Folding {
    private Folding() {}

    static List<FoldingRange> of(Page page) {
        List<Sketch.Row> rows = page.sketch().rows();
        List<FoldingRange> all = new ArrayList<>();
        for (int i = 0; i < rows.size(); i++) {
            int last = last(rows, i);
            if (last > i) {
                boolean closed = last + 1 < rows.size() && rows.get(last + 1).starts("end") && rows.get(last + 1).depth() == rows.get(i).depth();
                all.add(new FoldingRange(rows.get(i).number() - 1, rows.get(closed ? last + 1 : last).number() - 1));
            }
        }
        return all;
    }

    /** {@return the last row that belongs to one; itself if none does} */
    static int last(List<Sketch.Row> rows, int of) {
        int at = of;
        boolean head = isHead(rows.get(of));
        while (at + 1 < rows.size()
                && (rows.get(at + 1).depth() > rows.get(of).depth() || head && !isHead(rows.get(at + 1)))) {
            at++;
        }
        return at;
    }

    /** The head of a procedure or a rulebook stands as deep as its sections. */
    static boolean isHead(Sketch.Row row) {
        return row.depth() == 0 && !row.item().isEmpty() && row.section().equals(row.item()) && row.starts(row.item());
    }
}
