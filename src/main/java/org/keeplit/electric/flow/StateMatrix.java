package org.keeplit.electric.flow;

import org.keeplit.electric.complex.Complex;
import org.keeplit.electric.complex.ComplexMatrix;

/** A nodal matrix that is brought from the base state to another and back. */
final class StateMatrix {
    private final FlowModel model;
    private final NodalMatrix matrix;

    StateMatrix(FlowModel model, NodalMatrix base) {
        this.model = model;
        matrix = base.copy();
    }

    /**
     * Takes in what differs from the base state.
     *
     * @param differences {@link FlowState#differences} from the base state
     */
    void apply(FlowState state, int[] differences) {
        for (int element : differences) {
            matrix.set(element, model.elements().get(element).admittance(state));
        }
        matrix.refresh();
    }

    NodalMatrix matrix() {
        return matrix;
    }

    /** With a state applied: the voltages that its sources give. */
    double[] voltages(FlowState state) {
        double[] values = model.vector();
        new SourceCurrents(model, state).addTo(values);
        matrix.solve(values);
        return values;
    }

    /**
     * With a state applied: how its voltages differ from those of the base state. Only the elements
     * that differ push currents, so that most of the forward substitution is over nothing.
     *
     * @param differences the elements that differ
     * @param baseVoltages the voltages of this matrix in the base state
     */
    double[] change(FlowState state, int[] differences, double[] baseVoltages) {
        FlowState base = model.baseState();
        double[] values = model.vector();
        for (int index : differences) {
            Element element = model.elements().get(index);
            ComplexMatrix less = element.admittance(base);
            ComplexMatrix more = element.admittance(state);
            for (int p = 0; p < element.positions(); p++) {
                Complex pushed = Complex.ZERO;
                for (int q = 0; q < element.positions(); q++) {
                    Complex volts = model.at(baseVoltages, element.terminal(q));
                    pushed = pushed.plus(less.at(p, q).minus(more.at(p, q)).times(volts));
                }
                if (element instanceof Source source) {
                    pushed = pushed.plus(source.injection(p, state)).minus(source.injection(p, base));
                }
                if (element.terminal(p) != FlowModel.GROUND) {
                    int place = model.pattern().symbolic().place(element.terminal(p));
                    values[2 * place] += pushed.re();
                    values[2 * place + 1] += pushed.im();
                }
            }
        }
        matrix.solve(values);
        return values;
    }
}
