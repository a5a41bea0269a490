package org.keeplit.electric.flow;

import java.util.List;

/**
 * Where automatic regulators come to rest.
 *
 * @param result the load flow at the last taps; its state holds them
 * @param atRest whether every control is content, or its regulator at the end of its range
 * @param rounds how many times all controls were asked
 */
public record TapSettlement(FlowResult result, boolean atRest, int rounds) {
    /**
     * Steps regulators, each by one tap a round and all at once, until none wants to move.
     *
     * @param solver the solver
     * @param start where the taps begin
     * @param controls the controls
     * @param mostRounds the most rounds; controls that work against each other never come to rest
     * @return where they stop; if a load flow does not converge, there
     */
    public static TapSettlement settle(
            FlowSolver solver, FlowState start, List<LineDropControl> controls, int mostRounds) {
        FlowResult result = solver.solve(start);
        for (int round = 1; round <= mostRounds; round++) {
            if (result instanceof NoConvergence) {
                return new TapSettlement(result, false, round);
            }
            FlowState next = step((FlowSolution) result, controls);
            if (next.equals(result.state())) {
                return new TapSettlement(result, true, round);
            }
            result = solver.solve(next);
        }
        return new TapSettlement(result, false, mostRounds);
    }

    private static FlowState step(FlowSolution solution, List<LineDropControl> controls) {
        FlowState.Editor editor = solution.state().edit();
        for (LineDropControl control : controls) {
            Regulator regulator = (Regulator) solution.model().elements().get(control.regulator());
            int tap = solution.state().tap(control.regulator()) + control.step(solution);
            if (tap >= regulator.lowestTap() && tap <= regulator.highestTap()) {
                editor.tap(control.regulator(), tap);
            }
        }
        return editor.state();
    }
}
