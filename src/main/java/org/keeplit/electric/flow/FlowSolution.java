package org.keeplit.electric.flow;

import com.google.common.primitives.ImmutableIntArray;
import java.util.Optional;
import org.keeplit.electric.complex.Complex;

/** A converged load flow. */
public final class FlowSolution extends Phasors implements FlowResult {
    private final int iterations;

    FlowSolution(FlowModel model, FlowState state, Zones.Live live, double[] voltages, int iterations) {
        super(model, state, live, voltages);
        this.iterations = iterations;
    }

    @Override
    public int iterations() {
        return iterations;
    }

    @Override
    public Optional<FlowSolution> solution() {
        return Optional.of(this);
    }

    /**
     * The live loads that keep their impedance, because their voltage is below the lowest at which
     * they keep power or current. A report that uses the solution has to say so.
     *
     * @return element indices, ascending
     */
    public ImmutableIntArray softened() {
        ImmutableIntArray.Builder found = ImmutableIntArray.builder();
        LoadTable loads = model().baseCase(state().loadCase()).loads();
        for (int element : loads.element) {
            Load load = (Load) model().elements().get(element);
            boolean live = isLive(load.terminal(0)) || isLive(load.terminal(1));
            double across = voltageBetween(load.terminal(0), load.terminal(1)).abs();
            if (live && load.inService(state()) && across < load.lowestVolts()) {
                found.add(element);
            }
        }
        return found.build();
    }

    @Override
    Complex loadCurrent(Load load, Complex voltage) {
        return load.current(state(), voltage);
    }
}
