package org.keeplit.electric.flow;

import java.util.List;
import org.keeplit.electric.complex.Complex;
import org.keeplit.electric.sparse.SymbolicLdlt;

/** A nodal matrix that is brought from the base state to another and back. */
final class StateMatrix {
    private final FlowModel model;
    private final NodalMatrix matrix;

    StateMatrix(FlowModel model, NodalMatrix base) {
        this.model = model;
        matrix = base.copy();
    }

    /** Takes in what differs from the base state. */
    void apply(FlowState state) {
        List<Element> elements = model.elements();
        for (int element : state.differences(model.baseState())) {
            // A follower's switch changes no admittance.
            if (!(elements.get(element) instanceof Load)) {
                matrix.set(element, elements.get(element).admittance(state));
            }
        }
        matrix.refresh();
    }

    NodalMatrix matrix() {
        return matrix;
    }

    /** What the running sources push into the terminals, in elimination order. */
    static double[] injections(FlowModel model, FlowState state) {
        SymbolicLdlt symbolic = model.pattern().symbolic();
        double[] values = new double[2 * symbolic.size()];
        for (int element : state.layout().sources().asList()) {
            Source source = (Source) model.elements().get(element);
            for (int p = 0; p < source.positions(); p++) {
                if (source.terminal(p) != FlowModel.GROUND) {
                    Complex current = source.injection(p, state);
                    int place = symbolic.place(source.terminal(p));
                    values[2 * place] += current.re();
                    values[2 * place + 1] += current.im();
                }
            }
        }
        return values;
    }
}
