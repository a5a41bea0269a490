package org.keeplit.electric.flow;

import java.util.HashMap;
import java.util.Map;
import org.keeplit.electric.sparse.SingularMatrixException;

/**
 * Solves the load flow of one state after another. A result depends on the model and the state only:
 * each starts from the base factorisation and the base solution, never from the state before. Not
 * safe for use by several threads; results are.
 */
public final class FlowSolver {
    private final FlowModel model;
    private final Map<Integer, Work> works = new HashMap<>();

    /** Working copies of a load case's matrices. */
    private record Work(BaseCase base, StateMatrix flow, StateMatrix linear, Iteration iteration) {}

    FlowSolver(FlowModel model) {
        this.model = model;
    }

    /**
     * Solves a state.
     *
     * @param state a state of this solver's model
     * @return the solution, or that there is no convergence
     */
    public FlowResult solve(FlowState state) {
        if (state.layout() != model.baseState().layout()) {
            throw new IllegalArgumentException("The state belongs to another model.");
        }
        try {
            Work work = works.computeIfAbsent(state.loadCase(), this::work);
            try {
                return solve(state, work);
            } finally {
                work.flow().matrix().reset();
                work.linear().matrix().reset();
            }
        } catch (SingularMatrixException singular) {
            return new NoConvergence(state, 0, "The load flow has no solution: nothing holds the voltage of terminal \""
                    + model.terminals().get(singular.vertex()) + "\".");
        }
    }

    private Work work(int loadCase) {
        BaseCase base = model.baseCase(loadCase);
        StateMatrix flow = new StateMatrix(model, base.flow());
        StateMatrix linear = new StateMatrix(model, base.linear());
        return new Work(base, flow, linear, new Iteration(model, flow.matrix(), base.loads()));
    }

    /** Begins where the base solution would be if the change moved it as it moves the linear network. */
    private FlowResult solve(FlowState state, Work work) {
        int[] differences = state.differences(model.baseState());
        work.linear().apply(state, differences);
        double[] change = work.linear().change(state, differences, work.base().linearVoltages());
        work.flow().apply(state, differences);
        Zones.Live live = model.zones().live(state);
        Iteration iteration = work.iteration();
        double[] voltages = iteration.run(state, live, work.base().flowVoltages(), change);
        return voltages == null
                ? new NoConvergence(state, iteration.iterations(), iteration.complaint())
                : new FlowSolution(model, state, live, voltages, iteration.iterations());
    }
}
