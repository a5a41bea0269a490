package org.keeplit.electric.flow;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.keeplit.electric.flow.FlowModel.GROUND;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.keeplit.electric.complex.Complex;
import org.keeplit.electric.complex.ComplexMatrix;

/** A long radial feeder against the backward and forward sweep, a method that knows no matrix. */
class RadialSweepTest {
    private static final int NODES = 3000;
    private static final double VOLTS = 7200;

    private static final Complex BEHIND_SOURCE = new Complex(0, 1e-6);

    private final int[] parent = new int[NODES];
    private final Complex[] impedance = new Complex[NODES];
    private final Complex[] power = new Complex[NODES];

    private FlowModel model() {
        Random random = new Random(5);
        // The sweep has no stray conductance, so that next to none is wanted here.
        FlowModelBuilder builder = FlowModel.builder().options(new FlowOptions(1e-12, 100, 1e-16));
        builder.source("source", new int[] {builder.terminal("0")}, GROUND,
                new Complex[] {Complex.real(VOLTS)}, ComplexMatrix.diagonal(BEHIND_SOURCE));
        for (int n = 1; n < NODES; n++) {
            parent[n] = Math.max(0, n - 1 - random.nextInt(12));
            impedance[n] = new Complex(random.nextDouble(), 2 * random.nextDouble()).times(0.005);
            power[n] = new Complex(random.nextDouble(), 0.5 * random.nextDouble()).times(1000);
            int terminal = builder.terminal("" + n);
            builder.line("line " + n, new int[] {builder.terminal("" + parent[n])}, new int[] {terminal},
                    ComplexMatrix.diagonal(impedance[n]), 1);
            builder.load("load " + n, terminal, GROUND, VOLTS, LoadPower.constantPower(power[n]));
        }
        return builder.build();
    }

    private Complex[] sweep() {
        Complex[] volts = new Complex[NODES];
        java.util.Arrays.fill(volts, Complex.real(VOLTS));
        for (int round = 0; round < 60; round++) {
            Complex[] amperes = new Complex[NODES];
            amperes[0] = Complex.ZERO;
            for (int n = 1; n < NODES; n++) {
                amperes[n] = power[n].over(volts[n]).conjugate();
            }
            for (int n = NODES - 1; n > 0; n--) {
                amperes[parent[n]] = amperes[parent[n]].plus(amperes[n]);
            }
            volts[0] = Complex.real(VOLTS).minus(BEHIND_SOURCE.times(amperes[0]));
            for (int n = 1; n < NODES; n++) {
                volts[n] = volts[parent[n]].minus(impedance[n].times(amperes[n]));
            }
        }
        return volts;
    }

    @Test
    void agreesWithTheSweep() {
        FlowSolution solution = SmallFeeder.solve(model());
        Complex[] expected = sweep();
        for (int n = 0; n < NODES; n++) {
            assertEquals(0, expected[n].minus(solution.voltage(n)).abs(), 1e-6, "node " + n);
        }
        assertEquals(0, solution.softened().length());
    }
}
