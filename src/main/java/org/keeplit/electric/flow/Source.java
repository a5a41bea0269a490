package org.keeplit.electric.flow;

import com.google.common.primitives.ImmutableIntArray;
import org.keeplit.electric.complex.Complex;
import org.keeplit.electric.complex.ComplexMatrix;

/**
 * Voltages behind an impedance: a substation, or a generator that holds an island by itself.
 * Positions 0 to n-1 are the phases, position n the return (ground or a neutral).
 */
public final class Source extends Element {
    private final ComplexMatrix admittance;
    private final ComplexMatrix injection;
    private final int ordinal;

    /**
     * Makes a source.
     *
     * @param emf the voltages, a column
     * @param impedance n by n
     * @param ordinal the generator's number in the state, or -1 if it is always on
     */
    Source(String name, ImmutableIntArray terminals, ComplexMatrix emf, ComplexMatrix impedance, int ordinal) {
        super(name, terminals);
        this.ordinal = ordinal;
        int n = impedance.rows();
        ComplexMatrix inverse = impedance.inverse().symmetrized();
        ComplexMatrix incidence = ComplexMatrix.of(
                n, n + 1, (i, j) -> Complex.real(j == n ? -1 : i == j ? 1 : 0));
        admittance = incidence.transpose().times(inverse).times(incidence);
        injection = incidence.transpose().times(inverse).times(emf);
    }

    /**
     * Says whether the source is in service in a state.
     *
     * @param state the state
     * @return true always for a substation, as the state says for a generator
     */
    public boolean running(FlowState state) {
        return ordinal < 0 || state.runs(ordinal);
    }

    int ordinal() {
        return ordinal;
    }

    /** The current that the source pushes out of a position besides what its admittance draws. */
    Complex injection(int position, FlowState state) {
        return running(state) ? injection.at(position, 0) : Complex.ZERO;
    }

    @Override
    ComplexMatrix admittance(FlowState state) {
        return running(state) ? admittance : ComplexMatrix.zero(positions());
    }

    /** Nothing: a source that runs makes all its terminals alive, one at rest is an open contact. */
    @Override
    void couple(DisjointSets sets) {}
}
