package org.keeplit.electric.flow;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.keeplit.electric.complex.Complex;

/** Hundreds of states of random networks against the dense oracle, solved from scratch each. */
class OracleTest {
    /**
     * Volts to ground, as a part of 7200 V. Where nothing but line charging or stray conductance
     * holds an island to ground, rounding moves all of it together by about this much; voltages
     * between conductors and currents are compared more tightly.
     */
    private static final double TO_GROUND = 1e-4 * RandomNetwork.VOLTS;

    private int settled;
    private int softened;

    @Test
    void statesAgreeWithTheDenseOracle() {
        compareNetworks(0, 100);
        assertTrue(settled >= 480, "states compared: " + settled);
        assertTrue(softened > 100, "states with loads short of voltage: " + softened);
    }

    @Test
    @Tag("long")
    void manyMoreStatesAgreeWithTheDenseOracle() {
        compareNetworks(100, 3000);
        assertTrue(settled >= 14_000, "states compared: " + settled);
    }

    private void compareNetworks(int first, int end) {
        for (int run = first; run < end; run++) {
            RandomNetwork network = new RandomNetwork(run);
            FlowSolver solver = network.model.solver();
            Random choice = new Random(1000 + run);
            for (int k = 0; k < 5; k++) {
                FlowState state = k == 0 ? network.model.baseState() : network.randomState(choice);
                compare(network, state, solver.solve(state), "network " + run + ", state " + k);
            }
        }
    }

    private void compare(RandomNetwork network, FlowState state, FlowResult result, String where) {
        if (result.solution().isEmpty()) {
            return;
        }
        DenseOracle.Solved solved =
                DenseOracle.solve(network, state, result.solution().get()::isLive);
        if (solved == null) {
            return;
        }
        Complex[] expected = solved.voltages();
        FlowSolution solution = result.solution().get();
        settled++;
        softened += solution.softened().isEmpty() ? 0 : 1;
        for (int t = 0; t < expected.length; t++) {
            if (solution.isLive(t)) {
                close(expected[t], solution.voltage(t), TO_GROUND, where + ", " + network.model.terminals().get(t));
            } else {
                assertEquals(Complex.ZERO, solution.voltage(t), where);
            }
        }
        for (int e = 0; e < network.model.elements().size(); e++) {
            Element element = network.model.elements().get(e);
            int from = element.terminal(0);
            int to = element.terminal(1);
            String place = where + ", " + element.name();
            if (element instanceof Load load && (solution.isLive(from) || solution.isLive(to))) {
                Complex across = DenseOracle.across(expected, from, to);
                close(across, solution.voltageBetween(from, to), 1e-6 * load.ratedVolts(), place);
            }
            if (element instanceof Contact && state.isClosed(e) && solution.isLive(from)) {
                Complex current = solved.currents().get(e);
                close(current, solution.current(e, 0), 1e-5 + 1e-6 * current.abs(), place);
            }
        }
    }

    private static void close(Complex expected, Complex actual, double tolerance, String place) {
        assertTrue(expected.minus(actual).abs() <= tolerance,
                () -> place + ": expected " + expected + ", found " + actual);
    }
}
