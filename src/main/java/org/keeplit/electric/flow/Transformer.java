package org.keeplit.electric.flow;

import com.google.common.primitives.ImmutableIntArray;
import java.util.List;
import org.keeplit.electric.complex.Complex;
import org.keeplit.electric.complex.ComplexMatrix;

/**
 * A transformer unit: windings on one core, ideal but for each winding's leakage and the core's
 * magnetizing admittance. Position 2k is the from end of winding k, 2k+1 its to end. Three-phase
 * banks, open banks and every clock shift come from how units connect to terminals.
 */
public final class Transformer extends Element {
    private final ComplexMatrix admittance;

    Transformer(String name, ImmutableIntArray terminals, List<Winding> windings, Complex magnetizing) {
        super(name, terminals);
        admittance = admittance(windings, magnetizing);
    }

    /**
     * With voltages counted in parts of the rated ones, the windings meet as a star at the core's
     * voltage; the star point is eliminated.
     */
    private static ComplexMatrix admittance(List<Winding> windings, Complex magnetizing) {
        int n = windings.size();
        Complex[] leg = new Complex[n];
        Complex total = magnetizing;
        for (int k = 0; k < n; k++) {
            double volts = windings.get(k).ratedVolts();
            leg[k] = windings.get(k).leakage().reciprocal().times(volts * volts);
            total = total.plus(leg[k]);
        }
        Complex sum = total.reciprocal();
        ComplexMatrix star = ComplexMatrix.of(n, n, (i, j) -> {
            Complex shared = leg[i].times(leg[j]).times(sum);
            return i == j ? leg[i].minus(shared) : shared.negate();
        });
        ComplexMatrix ends = ComplexMatrix.of(n, 2 * n, (k, p) -> Complex.real(
                p / 2 != k ? 0 : (p % 2 == 0 ? 1 : -1) / windings.get(k).ratedVolts()));
        return ends.transpose().times(star).times(ends).symmetrized();
    }

    @Override
    ComplexMatrix admittance(FlowState state) {
        return admittance;
    }

    @Override
    void couple(DisjointSets sets) {
        coupleAll(sets);
    }
}
