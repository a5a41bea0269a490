package org.keeplit.electric.flow;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.keeplit.electric.flow.FlowModel.GROUND;

import org.junit.jupiter.api.Test;
import org.keeplit.electric.complex.Complex;
import org.keeplit.electric.complex.ComplexMatrix;

/** A 7200 to 120/240 V transformer against the equations of its circuit, worked out by hand and by substitution. */
class CentreTappedTest {
    private static final Complex PER_UNIT = new Complex(0.012, 0.017);
    private static final double KVA = 50;

    private final FlowModelBuilder builder = FlowModel.builder();
    private final int high = builder.terminal("high");
    private final int one = builder.terminal("one");
    private final int two = builder.terminal("two");

    private FlowModel model(double oneOhms, double twoOhms, double acrossOhms) {
        Complex[] emf = {Complex.real(7200)};
        builder.source("bus", new int[] {high}, GROUND, emf, ComplexMatrix.diagonal(new Complex(0, 1e-3)));
        CentreTapped.add(
                builder, "pot", new int[] {high, GROUND}, new int[] {one, GROUND, two}, 7200, 120, KVA, PER_UNIT);
        load("lamp", one, GROUND, 120, oneOhms);
        load("kettle", GROUND, two, 120, twoOhms);
        load("stove", one, two, 240, acrossOhms);
        return builder.build();
    }

    private void load(String name, int from, int to, double volts, double ohms) {
        if (from == GROUND) {
            builder.load(name, to, from, volts, LoadPower.constantImpedance(Complex.real(volts * volts / ohms)));
        } else {
            builder.load(name, from, to, volts, LoadPower.constantImpedance(Complex.real(volts * volts / ohms)));
        }
    }

    /** A dead short of one leg sees 1.5 R + j 1.2 X on 120 V, of both legs R + jX on 240 V. */
    @Test
    void shortCircuitsOfOneLegAndOfBoth() {
        FlowModel model = model(1e6, 1e6, 1e6);
        ShortCircuitSolver solver = model.shortCircuit(FaultLoads.IGNORED);
        Complex leg = new Complex(1.5 * 0.012, 1.2 * 0.017).times(120 * 120 / (KVA * 1000));
        double alone = solver.solve(model.baseState(), Fault.lineToGround(one, Complex.ZERO)).faultCurrents().get(0).abs();
        assertEquals(120 / leg.abs(), alone, 1e-3 * alone);
        Complex whole = PER_UNIT.times(240 * 240 / (KVA * 1000));
        double both = solver.solve(model.baseState(), Fault.lineToLine(one, two, Complex.ZERO)).faultCurrents().get(0).abs();
        assertEquals(240 / whole.abs(), both, 1e-3 * both);
    }

    /** Unequal legs: the voltages of the circuit's own equations, solved by substituting one into the other. */
    @Test
    void unequalLegs() {
        FlowModel model = model(1.2, 4.8, 3.0);
        FlowSolution solution = model.solver().solve(model.baseState()).solution().orElseThrow();
        double ratio = 60;
        Complex primary = new Complex(0.5 * 0.012, 0.8 * 0.017).times(7200.0 * 7200 / (KVA * 1000));
        Complex leg = new Complex(0.012, 0.4 * 0.017).times(120 * 120 / (KVA * 1000));
        Complex supply = solution.voltage(high);
        Complex v1 = Complex.real(120);
        Complex v2 = Complex.real(120);
        for (int round = 0; round < 200; round++) {
            Complex across = v1.plus(v2).times(1 / 3.0);
            Complex i1 = v1.times(1 / 1.2).plus(across);
            Complex i2 = v2.times(1 / 4.8).plus(across);
            Complex core = supply.minus(primary.times(i1.plus(i2)).times(1 / ratio)).times(1 / ratio);
            v1 = core.minus(leg.times(i1));
            v2 = core.minus(leg.times(i2));
        }
        assertEquals(v1.abs(), solution.voltage(one).abs(), 1e-4);
        assertEquals(v2.abs(), solution.voltage(two).abs(), 1e-4);
        assertEquals(v1.plus(v2).abs(), solution.voltageBetween(one, two).abs(), 1e-4);
    }
}
