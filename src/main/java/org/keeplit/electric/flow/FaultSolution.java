package org.keeplit.electric.flow;

import com.google.common.collect.ImmutableList;
import org.keeplit.electric.complex.Complex;

/** The network while a fault is on it; every element's share comes from {@link #current(int, int)}. */
public final class FaultSolution extends Phasors {
    private final Fault fault;
    private final ImmutableList<Complex> currents;
    private final FaultLoads loads;

    FaultSolution(
            FlowModel model,
            FlowState state,
            Zones.Live live,
            double[] voltages,
            Fault fault,
            ImmutableList<Complex> currents,
            FaultLoads loads) {
        super(model, state, live, voltages);
        this.fault = fault;
        this.currents = currents;
        this.loads = loads;
    }

    /**
     * The fault.
     *
     * @return the fault that was put on
     */
    public Fault fault() {
        return fault;
    }

    /**
     * The fault currents.
     *
     * @return amperes out of each faulted terminal into the fault, in the fault's order
     */
    public ImmutableList<Complex> faultCurrents() {
        return currents;
    }

    /**
     * The current that the fault leads to ground.
     *
     * @return the sum of the fault currents, amperes
     */
    public Complex groundCurrent() {
        return currents.stream().reduce(Complex.ZERO, Complex::plus);
    }

    @Override
    Complex loadCurrent(Load load, Complex voltage) {
        return loads == FaultLoads.IGNORED
                ? Complex.ZERO
                : voltage.times(BaseCase.linearAdmittance(load, state()));
    }
}
