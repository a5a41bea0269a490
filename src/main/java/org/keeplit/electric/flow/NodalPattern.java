package org.keeplit.electric.flow;

import java.util.Arrays;
import java.util.List;
import org.keeplit.electric.sparse.SymbolicLdlt;

/**
 * The nodal admittance matrix as a pattern: which cell of which element's own matrix goes into which
 * entry. The pattern holds every contact as if closed, so that one analysis serves all states.
 */
final class NodalPattern {
    private final SymbolicLdlt symbolic;
    /** For each entry its contributions, in the order of elements. */
    private final int[] start;
    private final int[] element;
    /** Row times 2^16 plus column in the element's matrix; -1 - that if it counts twice. */
    private final int[] cell;
    /** For each element its entries. */
    private final int[] elementStart;
    private final int[] elementEntry;

    NodalPattern(int terminals, List<Element> elements) {
        symbolic = SymbolicLdlt.analyse(terminals, pairs(elements));
        int[] count = new int[symbolic.entries() + 1];
        elementStart = new int[elements.size() + 1];
        for (int e = 0; e < elements.size(); e++) {
            int[] total = {elementStart[e]};
            visit(elements.get(e), (entry, code) -> {
                count[entry + 1]++;
                total[0]++;
            });
            elementStart[e + 1] = total[0];
        }
        for (int k = 0; k < symbolic.entries(); k++) {
            count[k + 1] += count[k];
        }
        start = count;
        element = new int[elementStart[elements.size()]];
        cell = new int[element.length];
        elementEntry = new int[element.length];
        int[] fill = Arrays.copyOf(start, symbolic.entries());
        for (int e = 0; e < elements.size(); e++) {
            int owner = e;
            int[] next = {elementStart[e]};
            visit(elements.get(e), (entry, code) -> {
                element[fill[entry]] = owner;
                cell[fill[entry]++] = code;
                elementEntry[next[0]++] = entry;
            });
        }
    }

    private interface Visitor {
        void accept(int entry, int cell);
    }

    private void visit(Element e, Visitor visitor) {
        for (int p = 0; p < e.positions(); p++) {
            for (int q = 0; q <= p; q++) {
                if (e.terminal(p) != FlowModel.GROUND && e.terminal(q) != FlowModel.GROUND) {
                    int code = p << 16 | q;
                    // Two ends on one terminal: both halves of the matrix fall on the diagonal.
                    boolean twice = p != q && e.terminal(p) == e.terminal(q);
                    visitor.accept(symbolic.entry(e.terminal(p), e.terminal(q)), twice ? -1 - code : code);
                }
            }
        }
    }

    private static long[] pairs(List<Element> elements) {
        long[] pairs = new long[64];
        int count = 0;
        for (Element e : elements) {
            for (int p = 0; p < e.positions(); p++) {
                for (int q = 0; q < p; q++) {
                    if (e.terminal(p) != FlowModel.GROUND && e.terminal(q) != FlowModel.GROUND) {
                        if (count == pairs.length) {
                            pairs = Arrays.copyOf(pairs, 2 * count);
                        }
                        pairs[count++] = SymbolicLdlt.pair(e.terminal(p), e.terminal(q));
                    }
                }
            }
        }
        return Arrays.copyOf(pairs, count);
    }

    SymbolicLdlt symbolic() {
        return symbolic;
    }

    int firstEntry(int ofElement) {
        return elementStart[ofElement];
    }

    int endEntry(int ofElement) {
        return elementStart[ofElement + 1];
    }

    int entry(int index) {
        return elementEntry[index];
    }

    int firstContribution(int entry) {
        return start[entry];
    }

    int endContribution(int entry) {
        return start[entry + 1];
    }

    int element(int contribution) {
        return element[contribution];
    }

    int row(int contribution) {
        return plain(contribution) >>> 16;
    }

    int column(int contribution) {
        return plain(contribution) & 0xFFFF;
    }

    int weight(int contribution) {
        return cell[contribution] < 0 ? 2 : 1;
    }

    private int plain(int contribution) {
        return cell[contribution] < 0 ? -1 - cell[contribution] : cell[contribution];
    }
}
