package org.keeplit.electric.flow;

import com.google.common.primitives.ImmutableIntArray;
import org.keeplit.electric.complex.Complex;
import org.keeplit.electric.complex.ComplexMatrix;

/**
 * A single-phase step regulator, an autotransformer with taps. Positions: 0 the source bushing, 1
 * the load bushing, 2 the common bushing (ground, a neutral, or another phase in delta banks).
 */
public final class Regulator extends Element {
    private final RegulatorKind kind;
    private final Complex seriesAdmittance;
    private final int lowestTap;
    private final int highestTap;
    private final int ordinal;

    Regulator(
            String name,
            ImmutableIntArray terminals,
            RegulatorKind kind,
            Complex impedance,
            int lowestTap,
            int highestTap,
            int ordinal) {
        super(name, terminals);
        this.kind = kind;
        seriesAdmittance = impedance.reciprocal();
        this.lowestTap = lowestTap;
        this.highestTap = highestTap;
        this.ordinal = ordinal;
    }

    /**
     * The lowest tap.
     *
     * @return usually -16
     */
    public int lowestTap() {
        return lowestTap;
    }

    /**
     * The highest tap.
     *
     * @return usually 16
     */
    public int highestTap() {
        return highestTap;
    }

    int ordinal() {
        return ordinal;
    }

    /** One current through the series impedance, seen at each bushing through the ideal ratio. */
    @Override
    ComplexMatrix admittance(FlowState state) {
        double ratio = kind.ratio(state.tapAt(ordinal));
        double[] weight = {-ratio, 1, ratio - 1};
        return ComplexMatrix.of(3, 3, (i, j) -> seriesAdmittance.times(weight[i] * weight[j]));
    }

    @Override
    void couple(DisjointSets sets) {
        coupleAll(sets);
    }
}
