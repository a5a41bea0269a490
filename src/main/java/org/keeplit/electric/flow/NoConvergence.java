package org.keeplit.electric.flow;

import java.util.Optional;

/**
 * The load flow of a state did not converge: nothing is known about its currents and voltages.
 *
 * @param state the state
 * @param iterations the iterations spent
 * @param reason a sentence that names the worst element or terminal
 */
public record NoConvergence(FlowState state, int iterations, String reason) implements FlowResult {
    @Override
    public Optional<FlowSolution> solution() {
        return Optional.empty();
    }
}
