package org.keeplit.electric.flow;

import com.google.common.collect.ImmutableList;
import java.util.HashMap;
import java.util.Map;
import org.keeplit.electric.complex.Complex;
import org.keeplit.electric.complex.ComplexMatrix;

/**
 * Short circuits by superposition on the linear network: sources behind their impedances, loads left
 * out or as impedances, followers left out. Like the load flow a pure function of model, state and
 * fault. Not safe for use by several threads.
 */
public final class ShortCircuitSolver {
    private final FlowModel model;
    private final FaultLoads loads;
    private final Map<Integer, StateMatrix> matrices = new HashMap<>();

    ShortCircuitSolver(FlowModel model, FaultLoads loads) {
        this.model = model;
        this.loads = loads;
    }

    /**
     * The network seen from some terminals.
     *
     * @param state the state
     * @param terminals the terminals
     * @return voltages and impedances there
     */
    public Thevenin thevenin(FlowState state, int... terminals) {
        StateMatrix matrix = matrix(state);
        try {
            matrix.apply(state, state.differences(model.baseState()));
            return thevenin(terminals, matrix.voltages(state), unitResponses(matrix, terminals));
        } finally {
            matrix.matrix().reset();
        }
    }

    /**
     * Puts a fault on the network.
     *
     * @param state the state
     * @param fault the fault
     * @return currents and voltages while the fault lasts
     */
    public FaultSolution solve(FlowState state, Fault fault) {
        int[] terminals = fault.terminals().toArray();
        StateMatrix matrix = matrix(state);
        try {
            matrix.apply(state, state.differences(model.baseState()));
            double[] voltages = matrix.voltages(state);
            double[][] responses = unitResponses(matrix, terminals);
            ImmutableList<Complex> currents = currents(thevenin(terminals, voltages, responses), fault);
            for (int k = 0; k < terminals.length; k++) {
                subtract(voltages, responses[k], currents.get(k));
            }
            Zones.Live live = model.zones().live(state, terminals);
            return new FaultSolution(model, state, live, voltages, fault, currents, loads);
        } finally {
            matrix.matrix().reset();
        }
    }

    /**
     * Prepares faults at one after another of some terminals.
     *
     * @param state the state
     * @param terminals where faults will be
     * @param contacts the contacts whose currents will be asked for
     * @return what each fault comes to
     */
    public FaultSweep sweep(FlowState state, int[] terminals, int[] contacts) {
        StateMatrix matrix = matrix(state);
        try {
            matrix.apply(state, state.differences(model.baseState()));
            FaultSweep sweep = new FaultSweep(model, state, terminals, contacts, matrix.voltages(state));
            for (int k = 0; k < terminals.length; k++) {
                sweep.take(k, unitResponses(matrix, new int[] {terminals[k]})[0]);
            }
            return sweep;
        } finally {
            matrix.matrix().reset();
        }
    }

    private StateMatrix matrix(FlowState state) {
        if (loads == FaultLoads.IGNORED) {
            return matrices.computeIfAbsent(-1, key -> new StateMatrix(model, model.network()));
        }
        return matrices.computeIfAbsent(
                state.loadCase(), key -> new StateMatrix(model, model.baseCase(key).linear()));
    }

    /** For each terminal the voltages everywhere for one ampere into it. */
    private double[][] unitResponses(StateMatrix matrix, int[] terminals) {
        double[][] responses = new double[terminals.length][];
        for (int k = 0; k < terminals.length; k++) {
            responses[k] = model.vector();
            responses[k][2 * model.pattern().symbolic().place(terminals[k])] = 1;
            matrix.matrix().solve(responses[k]);
        }
        return responses;
    }

    private Thevenin thevenin(int[] terminals, double[] voltages, double[][] responses) {
        ImmutableList.Builder<Complex> before = ImmutableList.builder();
        for (int terminal : terminals) {
            before.add(model.at(voltages, terminal));
        }
        int n = terminals.length;
        return new Thevenin(
                before.build(), ComplexMatrix.of(n, n, (i, j) -> model.at(responses[j], terminals[i])));
    }

    /**
     * With i out of the terminals and s the voltage of the common point: E - Z i = z i + s, and either
     * s = zg sum(i) or sum(i) = 0.
     */
    private static ImmutableList<Complex> currents(Thevenin before, Fault fault) {
        int n = before.voltages().size();
        Complex ground = fault.toGround();
        ComplexMatrix system = ComplexMatrix.of(n + 1, n + 1, (i, j) -> {
            if (i < n && j < n) {
                Complex z = before.impedance().at(i, j);
                return i == j ? z.plus(fault.impedance()) : z;
            }
            if (i == n && j == n) {
                return ground == null ? Complex.ZERO : Complex.ONE;
            }
            return i < n ? Complex.ONE : ground == null ? Complex.ONE : ground.negate();
        });
        ComplexMatrix right = ComplexMatrix.of(
                n + 1, 1, (i, j) -> i < n ? before.voltages().get(i) : Complex.ZERO);
        ComplexMatrix solved = system.solve(right);
        ImmutableList.Builder<Complex> currents = ImmutableList.builder();
        for (int k = 0; k < n; k++) {
            currents.add(solved.at(k, 0));
        }
        return currents.build();
    }

    private static void subtract(double[] voltages, double[] response, Complex current) {
        for (int k = 0; k < voltages.length; k += 2) {
            voltages[k] -= response[k] * current.re() - response[k + 1] * current.im();
            voltages[k + 1] -= response[k] * current.im() + response[k + 1] * current.re();
        }
    }
}
