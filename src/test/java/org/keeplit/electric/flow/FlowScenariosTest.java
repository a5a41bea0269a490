package org.keeplit.electric.flow;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.keeplit.electric.flow.FlowModel.GROUND;
import static org.keeplit.electric.flow.SmallFeeder.LINE_VOLTS;
import static org.keeplit.electric.flow.SmallFeeder.VOLTS;
import static org.keeplit.electric.flow.SmallFeeder.impedance;
import static org.keeplit.electric.flow.SmallFeeder.power;
import static org.keeplit.electric.flow.SmallFeeder.solve;

import org.junit.jupiter.api.Test;
import org.keeplit.electric.complex.Complex;

/** What happens on the pole, against figures that a pencil gives. */
class FlowScenariosTest {
    @Test
    void parallelContactsShareCurrentByImpedance() {
        SmallFeeder feeder = new SmallFeeder();
        Complex coil = new Complex(0.02, 0.06);
        Complex jumper = new Complex(0.002, 0.0005);
        int first = feeder.contact("s.A", "n.A", coil, true);
        int second = feeder.contact("s.A", "n.A", jumper, true);
        feeder.builder.load("load", feeder.at("n.A"), GROUND, VOLTS, power(900_000, 300_000));
        FlowSolution solution = solve(feeder.builder.build());
        Complex ratio = solution.current(first, 0).over(solution.current(second, 0));
        Complex expected = jumper.over(coil);
        assertEquals(expected.re(), ratio.re(), 1e-7);
        assertEquals(expected.im(), ratio.im(), 1e-7);
        double total = solution.residual(first, second).abs();
        assertEquals(Math.hypot(900_000, 300_000) / VOLTS, total, 0.05);
    }

    /** The textbook case: the first jumper takes most of one phase's current out of the coils. */
    @Test
    void aJumperOnOnePhaseRaisesTheResidualOfTheOthers() {
        SmallFeeder feeder = new SmallFeeder();
        int[] coils = feeder.poles("s", "n", new Complex(0.02, 0.06));
        int jumper = feeder.contact("s.A", "n.A", new Complex(0.002, 0.0005), false);
        feeder.loads("n", impedance(720_000, 0));
        FlowModel model = feeder.builder.build();
        FlowSolution before = solve(model);
        assertEquals(0, before.residual(coils).abs(), 0.1);
        FlowSolution after = solve(model, model.baseState().edit().contact(jumper, true).state());
        assertTrue(after.residual(coils).abs() > 95, "residual: " + after.residual(coils).abs());
        assertTrue(after.current(jumper, 0).abs() > 95);
        Complex poor = new Complex(0.1, 0);
        FlowSolution badClamp = solve(
                model, model.baseState().edit().contact(jumper, true).impedance(jumper, poor).state());
        assertTrue(badClamp.residual(coils).abs() < 60, "residual: " + badClamp.residual(coils).abs());
    }

    /** A grounded-wye to delta bank holds the voltage of an open phase up from behind, in full. */
    @Test
    void anOpenPhaseIsFedBackThroughAGroundedWyeDeltaBank() {
        SmallFeeder feeder = new SmallFeeder();
        int[] poles = feeder.poles("s", "n");
        TransformerBank.add(feeder.builder, "bank",
                new TransformerBank.Side(
                        feeder.builder.terminals("n", "ABC"), GROUND, WindingConnection.WYE, LINE_VOLTS),
                new TransformerBank.Side(
                        feeder.builder.terminals("low", "ABC"), GROUND, WindingConnection.DELTA_FORWARD, 480),
                300, new Complex(0.01, 0.04));
        FlowModel model = feeder.builder.build();
        FlowState open = model.baseState().edit().contact(poles[0], false).state();
        FlowSolution solution = solve(model, open);
        int fed = model.terminals().indexOf("n.A");
        assertTrue(solution.isLive(fed));
        assertEquals(VOLTS, solution.voltage(fed).abs(), 1);
        assertEquals(0, solution.voltage(fed).degrees(), 0.1);
        assertEquals(Complex.ZERO, solution.current(poles[0], 0));
    }

    /** The neutral of a floating wye goes half-way between the phases that are left. */
    @Test
    void aFloatingWyeDeltaBankGivesTheOpenPhaseTheMeanOfTheOthers() {
        SmallFeeder feeder = new SmallFeeder();
        int[] poles = feeder.poles("s", "n");
        TransformerBank.add(feeder.builder, "bank",
                new TransformerBank.Side(
                        feeder.builder.terminals("n", "ABC"), feeder.at("n.N"), WindingConnection.WYE, LINE_VOLTS),
                new TransformerBank.Side(
                        feeder.builder.terminals("low", "ABC"), GROUND, WindingConnection.DELTA_FORWARD, 480),
                300, new Complex(0.01, 0.04));
        int[][] pairs = {{0, 1}, {1, 2}, {2, 0}};
        int[] low = feeder.builder.terminals("low", "ABC");
        for (int[] pair : pairs) {
            feeder.builder.load("motor " + pair[0], low[pair[0]], low[pair[1]], 480, impedance(50_000, 20_000));
        }
        FlowModel model = feeder.builder.build();
        FlowSolution solution = solve(model, model.baseState().edit().contact(poles[0], false).state());
        Complex mean = Complex.polar(VOLTS, -120).plus(Complex.polar(VOLTS, 120)).times(0.5);
        Complex fed = solution.voltage(model.terminals().indexOf("n.A"));
        assertEquals(0, fed.minus(mean).abs(), 5);
    }

    @Test
    void whatNoSourceReachesIsExactlyDead() {
        SmallFeeder feeder = new SmallFeeder();
        int[] poles = feeder.poles("s", "n");
        feeder.line("n", "m");
        int[] loads = feeder.loads("m", power(300_000, 100_000));
        FlowModel model = feeder.builder.build();
        FlowState.Editor editor = model.baseState().edit();
        for (int pole : poles) {
            editor.contact(pole, false);
        }
        FlowSolution solution = solve(model, editor.state());
        int m = model.terminals().indexOf("m.B");
        assertFalse(solution.isLive(m));
        assertEquals(Complex.ZERO, solution.voltage(m));
        assertEquals(Complex.ZERO, solution.current(loads[1], 0));
        assertEquals(VOLTS, solution.voltageBetween(model.terminals().indexOf("s.B"), m).abs(), 0.1);
    }

    /** The recovery voltage of an open in a loop is the small drop over the other way round. */
    @Test
    void anOpenInALoopHasAFewVoltsAcross() {
        SmallFeeder feeder = new SmallFeeder();
        int[] poles = feeder.poles("s", "n");
        feeder.poles("s", "n", new Complex(0.05, 0.1));
        feeder.loads("n", power(720_000, 0));
        FlowModel model = feeder.builder.build();
        FlowSolution solution = solve(model, model.baseState().edit().contact(poles[2], false).state());
        double across = solution.voltageBetween(
                model.terminals().indexOf("s.C"), model.terminals().indexOf("n.C")).abs();
        assertEquals(100 * Math.hypot(0.05, 0.1), across, 0.2);
    }

    /** Between phases of one system the full voltage stands across an open contact, at 120 degrees. */
    @Test
    void crossedPhasesShowAcrossAnOpenContact() {
        SmallFeeder feeder = new SmallFeeder();
        int crossed = feeder.contact("s.A", "s.B", new Complex(0.001, 0), false);
        FlowModel model = feeder.builder.build();
        int a = model.elements().get(crossed).terminal(0);
        int b = model.elements().get(crossed).terminal(1);
        assertEquals(LINE_VOLTS, solve(model).voltageBetween(a, b).abs(), 0.1);
    }

    /** A ground put on a live phase: the load flow still comes out, and agrees with the fault. */
    @Test
    void aGroundOnALivePhaseDrawsTheFaultCurrent() {
        SmallFeeder feeder = new SmallFeeder();
        int[] poles = feeder.poles("s", "n");
        feeder.line("n", "m");
        Complex clamp = new Complex(0.001, 0);
        int ground = feeder.contact("m.A", "ground", clamp, false);
        int[] loads = feeder.loads("m", power(300_000, 100_000));
        FlowModel model = feeder.builder.build();
        FlowSolution solution = solve(model, model.baseState().edit().contact(ground, true).state());
        int place = model.elements().get(ground).terminal(0);
        FaultSolution fault = model.shortCircuit(FaultLoads.AS_IMPEDANCES)
                .solve(model.baseState(), Fault.lineToGround(place, clamp));
        // The loads of the other phases are impedances in the one and not in the other.
        double expected = fault.groundCurrent().abs();
        assertEquals(expected, solution.current(ground, 0).abs(), 0.003 * expected);
        assertTrue(solution.residual(poles).abs() > 6000);
        assertEquals(loads[0], solution.softened().get(0));
    }
}
