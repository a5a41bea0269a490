package org.keeplit.electric.flow;

import com.google.common.primitives.ImmutableIntArray;
import org.keeplit.electric.complex.ComplexMatrix;

/**
 * A line or cable section of n conductors: series impedance, and half of the shunt admittance at
 * each end. Positions 0 to n-1 are the sending ends, n to 2n-1 the receiving ends.
 */
public final class LineSection extends Element {
    private final ComplexMatrix admittance;

    LineSection(String name, ImmutableIntArray terminals, ComplexMatrix series, ComplexMatrix shunt) {
        super(name, terminals);
        int n = series.rows();
        ComplexMatrix through = series.inverse().symmetrized();
        ComplexMatrix end = through.plus(shunt.times(0.5));
        admittance = ComplexMatrix.of(2 * n, 2 * n, (i, j) ->
                (i < n) == (j < n) ? end.at(i % n, j % n) : through.at(i % n, j % n).negate());
    }

    /**
     * The number of conductors.
     *
     * @return n
     */
    public int conductors() {
        return positions() / 2;
    }

    @Override
    ComplexMatrix admittance(FlowState state) {
        return admittance;
    }

    /** A conductor joins its own two ends only: what its neighbours induce does not make it alive. */
    @Override
    void couple(DisjointSets sets) {
        for (int k = 0; k < conductors(); k++) {
            coupleEnds(sets, k, k + conductors());
        }
    }
}
