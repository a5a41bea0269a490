package org.keeplit.electric.flow;

import java.util.Optional;

/** What a load flow comes to: a solution, or that there is none to be had. */
public sealed interface FlowResult permits FlowSolution, NoConvergence {
    /**
     * The state that was solved.
     *
     * @return the state
     */
    FlowState state();

    /**
     * The number of iterations used.
     *
     * @return at least 0
     */
    int iterations();

    /**
     * The solution, if the load flow converged.
     *
     * @return empty if it did not
     */
    Optional<FlowSolution> solution();
}
