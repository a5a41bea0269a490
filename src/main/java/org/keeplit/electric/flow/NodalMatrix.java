package org.keeplit.electric.flow;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.keeplit.electric.complex.ComplexMatrix;
import org.keeplit.electric.sparse.LdltFactor;
import org.keeplit.electric.sparse.SymbolicLdlt;

/**
 * A nodal admittance matrix and its factorisation. Every entry is the sum of its contributions in
 * the order of elements, summed anew when one of them changes, so that a matrix does not remember
 * what it was before.
 */
final class NodalMatrix {
    private final NodalPattern pattern;
    private final double strayConductance;
    private final ComplexMatrix[] parts;
    private final LdltFactor factor;
    private final NodalMatrix base;
    private final List<Integer> changed = new ArrayList<>();

    /**
     * Assembles and factorises.
     *
     * @param part gives each element's own matrix
     */
    NodalMatrix(FlowModel model, Function<Element, ComplexMatrix> part) {
        pattern = model.pattern();
        strayConductance = model.options().strayConductance();
        parts = model.elements().stream().map(part).toArray(ComplexMatrix[]::new);
        factor = new LdltFactor(pattern.symbolic());
        base = null;
        for (int entry = 0; entry < pattern.symbolic().entries(); entry++) {
            sum(entry);
        }
        factor.refresh();
    }

    private NodalMatrix(NodalMatrix base) {
        pattern = base.pattern;
        strayConductance = base.strayConductance;
        parts = base.parts.clone();
        factor = base.factor.copy();
        this.base = base;
    }

    /** A copy to change, which {@link #reset} brings back. */
    NodalMatrix copy() {
        return new NodalMatrix(this);
    }

    /** Gives an element another matrix; takes effect with {@link #refresh}. */
    void set(int element, ComplexMatrix part) {
        parts[element] = part;
        changed.add(element);
    }

    /** Brings the factorisation up to date. */
    void refresh() {
        for (int element : changed) {
            for (int k = pattern.firstEntry(element); k < pattern.endEntry(element); k++) {
                sum(pattern.entry(k));
            }
        }
        factor.refresh();
    }

    /** Takes back all changes since the copy or the last reset. */
    void reset() {
        for (int element : changed) {
            parts[element] = base.parts[element];
        }
        changed.clear();
        factor.reset(base.factor);
    }

    /** Solves in place; {@code values} is in elimination order, re and im alternating. */
    void solve(double[] values) {
        factor.solve(values);
    }

    SymbolicLdlt symbolic() {
        return pattern.symbolic();
    }

    private void sum(int entry) {
        double re = entry < pattern.symbolic().size() ? strayConductance : 0;
        double im = 0;
        for (int c = pattern.firstContribution(entry); c < pattern.endContribution(entry); c++) {
            ComplexMatrix part = parts[pattern.element(c)];
            re += pattern.weight(c) * part.re(pattern.row(c), pattern.column(c));
            im += pattern.weight(c) * part.im(pattern.row(c), pattern.column(c));
        }
        factor.set(entry, re, im);
    }
}
