package org.keeplit.electric.flow;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.keeplit.electric.flow.FlowModel.GROUND;
import static org.keeplit.electric.flow.SmallFeeder.LINE_VOLTS;
import static org.keeplit.electric.flow.SmallFeeder.VOLTS;
import static org.keeplit.electric.flow.SmallFeeder.impedance;
import static org.keeplit.electric.flow.SmallFeeder.power;
import static org.keeplit.electric.flow.SmallFeeder.solve;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.keeplit.electric.complex.Complex;
import org.keeplit.electric.complex.ComplexMatrix;

/** Each kind of equipment by itself, against figures that a pencil gives. */
class EquipmentTest {
    @Test
    void aRegulatorBypassedOffNeutralDrivesACirculatingCurrent() {
        SmallFeeder feeder = new SmallFeeder();
        Complex own = new Complex(0.02, 0.1);
        int regulator = feeder.builder.regulator(
                "R", feeder.at("s.A"), feeder.at("n.A"), GROUND, RegulatorKind.TYPE_A, own, 8);
        int jumper = feeder.contact("s.A", "n.A", new Complex(0.002, 0), false);
        feeder.builder.load("load", feeder.at("n.A"), GROUND, VOLTS, impedance(1000, 0));
        FlowModel model = feeder.builder.build();
        FlowState bypassed = model.baseState().edit().contact(jumper, true).state();
        double step = 0.05 * VOLTS;
        double expected = step / own.plus(new Complex(0.002, 0)).abs();
        assertEquals(expected, solve(model, bypassed).current(jumper, 0).abs(), 0.01 * expected);
        FlowState neutral = bypassed.edit().tap(regulator, 0).state();
        assertTrue(solve(model, neutral).current(jumper, 0).abs() < 1);
    }

    @Test
    void aGeneratorHoldsAnIslandOnlyWhileItRuns() {
        SmallFeeder feeder = new SmallFeeder();
        int[] poles = feeder.poles("s", "n");
        int generator = feeder.builder.generator("mobile", feeder.builder.terminals("n", "ABC"), GROUND,
                SourceImpedance.balanced(VOLTS, 10), ComplexMatrix.balanced(3, new Complex(1, 8), Complex.ZERO), false);
        FlowModel model = feeder.builder.build();
        FlowState.Editor island = model.baseState().edit();
        for (int pole : poles) {
            island.contact(pole, false);
        }
        int n = model.terminals().indexOf("n.A");
        assertFalse(solve(model, island.state()).isLive(n));
        FlowSolution running = solve(model, island.generator(generator, true).state());
        assertEquals(VOLTS, running.voltage(n).abs(), 0.1);
        assertEquals(10, running.voltage(n).degrees(), 0.01);
    }

    @Test
    void aFollowerDeliversOnlyWhereItFindsVoltage() {
        SmallFeeder feeder = new SmallFeeder();
        int[] poles = feeder.poles("s", "n");
        feeder.loads("n", power(50_000, 0));
        int solar = feeder.builder.follower(
                "solar", feeder.at("n.A"), GROUND, VOLTS, new Complex(80_000, 0), true);
        FlowModel model = feeder.builder.build();
        FlowSolution fed = solve(model);
        assertEquals(-80_000, fed.power(solar).re(), 1);
        assertEquals(-30_000, fed.power(poles[0], 0).re(), 1);
        FlowState open = model.baseState().edit().contact(poles[0], false).state();
        assertEquals(Complex.ZERO, solve(model, open).current(solar, 0));
        FlowState off = model.baseState().edit().generator(solar, false).state();
        assertEquals(50_000, solve(model, off).power(poles[0], 0).re(), 1);
    }

    @Test
    void loadsShortOfVoltageKeepTheirImpedanceAndAreReported() {
        SmallFeeder feeder = new SmallFeeder();
        feeder.builder.line("thin", new int[] {feeder.at("s.A")}, new int[] {feeder.at("n.A")},
                ComplexMatrix.diagonal(new Complex(60, 0)), 1);
        int load = feeder.builder.load("load", feeder.at("n.A"), GROUND, VOLTS, power(720_000, 0));
        FlowModel model = feeder.builder.build();
        FlowSolution solution = solve(model);
        assertEquals(load, solution.softened().get(0));
        // 720 kW at 0.7 of 7200 V is 35.28 ohm, in series with 60.
        assertEquals(VOLTS * 35.28 / 95.28, solution.voltage(model.terminals().indexOf("n.A")).abs(), 0.1);
    }

    @Test
    void noConvergenceIsAResultThatNamesTheElement() {
        SmallFeeder feeder = new SmallFeeder();
        feeder.builder.options(new FlowOptions(1e-10, 2, 1e-9));
        feeder.builder.line("thin", new int[] {feeder.at("s.A")}, new int[] {feeder.at("n.A")},
                ComplexMatrix.diagonal(new Complex(10, 10)), 1);
        feeder.builder.load("mill", feeder.at("n.A"), GROUND, VOLTS, power(720_000, 0));
        FlowModel model = feeder.builder.build();
        FlowResult result = model.solver().solve(model.baseState());
        assertTrue(result.solution().isEmpty());
        assertEquals(
                "The load flow did not settle in 2 iterations: the voltage across \"mill\" still moved.",
                assertInstanceOf(NoConvergence.class, result).reason());
    }

    /** 900 kW cannot be pushed through 60 ohm of reactance; the follower is then limited, not infinite. */
    @Test
    void aFollowerThatCannotDeliverFallsBelowItsLowestVoltage() {
        SmallFeeder feeder = new SmallFeeder();
        feeder.builder.line("thin", new int[] {feeder.at("s.A")}, new int[] {feeder.at("n.A")},
                ComplexMatrix.diagonal(new Complex(0, 60)), 1);
        int follower = feeder.builder.follower("mill", feeder.at("n.A"), GROUND, VOLTS, new Complex(900_000, 0), true);
        FlowSolution solution = solve(feeder.builder.build());
        assertEquals(follower, solution.softened().get(0));
        assertTrue(solution.power(follower).re() > -432_000, "delivered: " + solution.power(follower));
    }

    @Test
    void loadCasesAreSolvedApart() {
        SmallFeeder feeder = new SmallFeeder();
        feeder.builder.loadCases("peak", "light");
        int pole = feeder.contact("s.A", "n.A", new Complex(0.001, 0), true);
        LoadPower[] powers = {power(720_000, 0), impedance(72_000, 0)};
        feeder.builder.load("load", feeder.at("n.A"), GROUND, VOLTS, powers);
        FlowModel model = feeder.builder.build();
        assertEquals(100, solve(model).current(pole, 0).abs(), 0.01);
        FlowState light = model.baseState().edit().loadCase(model.loadCases().indexOf("light")).state();
        assertEquals(10, solve(model, light).current(pole, 0).abs(), 0.01);
    }

    @Test
    void anOpenEndedCableDrawsItsChargingCurrent() {
        SmallFeeder feeder = new SmallFeeder();
        int pole = feeder.contact("s.A", "n.A", new Complex(0.001, 0), true);
        feeder.builder.line("cable", new int[] {feeder.at("n.A")}, new int[] {feeder.at("m.A")},
                ComplexMatrix.diagonal(new Complex(0.8, 0.45)), ComplexMatrix.diagonal(new Complex(0, 96.9e-6)), 2);
        FlowSolution solution = solve(feeder.builder.build());
        assertEquals(VOLTS * 2 * 96.9e-6, solution.current(pole, 0).abs(), 0.001);
        assertEquals(90, solution.current(pole, 0).degrees(), 0.1);
    }

    @Test
    void aCentreTappedUnitFeedsBothLegs() {
        SmallFeeder feeder = new SmallFeeder();
        Complex leakage = new Complex(0.006, 0.01);
        feeder.builder.transformer("pole-top",
                new Winding(feeder.at("s.A"), GROUND, VOLTS, leakage.times(VOLTS * VOLTS / 50_000)),
                new Winding(feeder.at("one"), GROUND, 120, leakage.times(120 * 120 / 50_000.0)),
                new Winding(GROUND, feeder.at("two"), 120, leakage.times(120 * 120 / 50_000.0)));
        int one = feeder.builder.load("one", feeder.at("one"), GROUND, 120, impedance(6_000, 0));
        feeder.builder.load("dryer", feeder.at("one"), feeder.at("two"), 240, impedance(4_800, 0));
        FlowModel model = feeder.builder.build();
        FlowSolution solution = solve(model);
        int first = model.terminals().indexOf("one");
        int second = model.terminals().indexOf("two");
        assertEquals(240, solution.voltageBetween(first, second).abs(), 2);
        assertTrue(solution.voltage(first).abs() < solution.voltage(second).abs());
        assertEquals(180, Math.abs(solution.voltage(second).degrees()), 1);
        assertEquals(50, solution.current(one, 0).abs(), 1);
    }

    /** Two regulators from A and C to B raise every line-to-line voltage alike. */
    @Test
    void openDeltaRegulatorsRaiseAllThreeVoltages() {
        SmallFeeder feeder = new SmallFeeder();
        int[] s = feeder.builder.terminals("s", "ABC");
        int[] n = {feeder.at("n.A"), s[1], feeder.at("n.C")};
        for (int k = 0; k < 3; k += 2) {
            feeder.builder.regulator(
                    "R" + k, s[k], n[k], s[1], RegulatorKind.TYPE_B, new Complex(0, 1e-4), 8);
        }
        LoadPower each = power(100_000, 50_000);
        LoadGroup.delta(feeder.builder, "mill", n, LINE_VOLTS, each, each, each);
        FlowSolution solution = solve(feeder.builder.build());
        for (int k = 0; k < 3; k++) {
            double raised = solution.voltageBetween(n[k], n[(k + 1) % 3]).abs();
            assertEquals(LINE_VOLTS / 0.95, raised, 0.5);
        }
    }

    @Test
    void aRatingInTheWrongUnitIsDoubted() {
        SmallFeeder feeder = new SmallFeeder();
        feeder.loads("s", impedance(1000, 0));
        feeder.builder.load("kilo", feeder.at("s.A"), GROUND, 7, power(10, 0));
        feeder.builder.load("line", feeder.at("s.B"), GROUND, LINE_VOLTS, power(10, 0));
        assertEquals(
                List.of("Load \"kilo\" is rated 7 V and finds 7200 V.",
                        "Load \"line\" is rated 12471 V and finds 7200 V."),
                RatingDoubts.of(solve(feeder.builder.build())));
    }

    @Test
    void anUnloadedTransformerDrawsItsNoLoadPower() {
        SmallFeeder feeder = new SmallFeeder();
        int unit = feeder.builder.transformer("unit", new Complex(100, 400),
                new Winding(feeder.at("s.A"), GROUND, VOLTS, new Complex(5, 15)),
                new Winding(feeder.at("low"), GROUND, 240, new Complex(0.005, 0.015)));
        Complex drawn = solve(feeder.builder.build()).power(unit);
        assertEquals(100, drawn.re(), 0.1);
        assertEquals(400, drawn.im(), 0.2);
    }
}
