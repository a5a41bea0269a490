package org.keeplit.electric.flow;

import org.keeplit.electric.complex.Complex;
import org.keeplit.electric.complex.ComplexMatrix;

/**
 * What a model computes once for a load case, at its base state: the matrix of the iteration (loads
 * that keep their impedance are in it), the matrix with every load as the impedance that it has at
 * rated voltage, and the voltages of both.
 */
final class BaseCase {
    private final NodalMatrix flow;
    private final NodalMatrix linear;
    private final LoadTable loads;
    private final double[] linearVoltages;
    /** Null if the base state itself does not converge. */
    private final double[] flowVoltages;

    BaseCase(FlowModel model, int loadCase) {
        FlowState state = model.baseState().inCase(loadCase);
        loads = new LoadTable(model, loadCase);
        flow = new NodalMatrix(model, e -> part(e, state, false));
        linear = new NodalMatrix(model, e -> part(e, state, true));
        linearVoltages = new StateMatrix(model, linear).voltages(state);
        flowVoltages = new Iteration(model, flow.copy(), loads)
                .run(state, model.zones().live(state), linearVoltages.clone());
    }

    private static ComplexMatrix part(Element element, FlowState state, boolean linear) {
        if (element instanceof Load load) {
            return Shunt.branch(linear ? linearAdmittance(load, state) : load.fixedAdmittance(state.loadCase()));
        }
        return element.admittance(state);
    }

    /** A load as an impedance; a follower, which holds nothing, is left out. */
    static Complex linearAdmittance(Load load, FlowState state) {
        return load.isFollower()
                ? Complex.ZERO
                : load.slackAdmittance(state.loadCase(), load.ratedVolts())
                        .plus(load.fixedAdmittance(state.loadCase()));
    }

    NodalMatrix flow() {
        return flow;
    }

    NodalMatrix linear() {
        return linear;
    }

    LoadTable loads() {
        return loads;
    }

    /** The voltages of the linear matrix in the base state. */
    double[] linearVoltages() {
        return linearVoltages;
    }

    /** The voltages to which changes are added: the solution, or else the linear ones. */
    double[] flowVoltages() {
        return flowVoltages == null ? linearVoltages : flowVoltages;
    }
}
