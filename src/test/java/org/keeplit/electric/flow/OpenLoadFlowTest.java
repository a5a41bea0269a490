package org.keeplit.electric.flow;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.keeplit.electric.flow.FlowModel.GROUND;

import com.powsybl.iidm.network.Network;
import com.powsybl.iidm.network.Substation;
import com.powsybl.iidm.network.TopologyKind;
import com.powsybl.iidm.network.VoltageLevel;
import com.powsybl.loadflow.LoadFlow;
import com.powsybl.loadflow.LoadFlowParameters;
import com.powsybl.math.matrix.DenseMatrixFactory;
import com.powsybl.openloadflow.OpenLoadFlowParameters;
import com.powsybl.openloadflow.OpenLoadFlowProvider;
import com.powsybl.openloadflow.network.SlackBusSelectionMode;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import org.keeplit.electric.complex.Complex;
import org.keeplit.electric.complex.ComplexMatrix;

/**
 * Balanced three-phase networks, radial and meshed, against powsybl-open-loadflow, a Newton-Raphson load flow of the positive
 * sequence (MPL 2.0): lines, loads of constant power, capacitors, and transformers with ratio taps.
 */
class OpenLoadFlowTest {
    private static final double KILOVOLTS = 12.47;
    private static final double VOLTS = KILOVOLTS * 1000 / Math.sqrt(3);
    private static final String PHASES = "ABC";
    private static double lowest = 1;
    private static int compared;
    private static int unsolved;

    private final FlowModelBuilder ours = FlowModel.builder();
    private final Network theirs = Network.create("made", "test");
    private final VoltageLevel level;

    OpenLoadFlowTest() {
        Substation substation = theirs.newSubstation().setId("s").add();
        level = substation.newVoltageLevel().setId("v").setNominalV(KILOVOLTS).setTopologyKind(TopologyKind.BUS_BREAKER).add();
    }

    @TestFactory
    Stream<DynamicTest> generatedNetworks() {
        return IntStream.range(0, 60).mapToObj(seed ->
                DynamicTest.dynamicTest("network " + seed, () -> new OpenLoadFlowTest().compare(new Random(seed))));
    }

    private void compare(Random draw) {
        int buses = 4 + draw.nextInt(28);
        for (int b = 0; b < buses; b++) {
            bus(b);
        }
        source();
        for (int b = 1; b < buses; b++) {
            int parent = Math.max(0, b - 1 - draw.nextInt(4));
            boolean steps = draw.nextInt(6) == 0;
            if (steps) {
                regulator("r" + b, parent, b, draw.nextInt(33) - 16);
            } else {
                line("l" + b, parent, b, draw);
            }
            if (steps || draw.nextInt(3) > 0) {
                load(b, 20_000 + draw.nextInt(150_000), draw.nextInt(60_000));
            }
            if (draw.nextInt(8) == 0) {
                capacitor(b, 50_000 + draw.nextInt(200_000));
            }
        }
        for (int loop = draw.nextInt(3); loop > 0; loop--) {
            int a = draw.nextInt(buses);
            int b = draw.nextInt(buses);
            if (a != b) {
                line("loop" + loop, a, b, draw);
            }
        }
        solve(buses);
    }

    private void bus(int b) {
        level.getBusBreakerView().newBus().setId("b" + b).add();
        ours.terminals("b" + b, PHASES);
    }

    private int[] at(int b) {
        return ours.terminals("b" + b, PHASES);
    }

    private void source() {
        level.newGenerator().setId("g").setBus("b0").setConnectableBus("b0").setMinP(-1e3).setMaxP(1e3)
                .setVoltageRegulatorOn(true).setTargetV(KILOVOLTS).setTargetP(0).setTargetQ(0).add();
        // Stiff: two millionths of an ohm behind it.
        ours.source("bus", at(0), GROUND, SourceImpedance.balanced(VOLTS, 0),
                ComplexMatrix.diagonal(new Complex(0, 2e-6), new Complex(0, 2e-6), new Complex(0, 2e-6)));
    }

    /** Coupled phases: of the matrix only the difference of own and mutual impedance is the positive sequence. */
    private void line(String name, int from, int to, Random draw) {
        Complex positive = new Complex(0.1 + draw.nextDouble() * 0.4, 0.2 + draw.nextDouble() * 0.6);
        double micro = draw.nextDouble() * 20e-6;
        Complex mutual = positive.times(0.5);
        ours.line(name, at(from), at(to), ComplexMatrix.balanced(3, positive.plus(mutual), mutual),
                ComplexMatrix.balanced(3, new Complex(0, micro), Complex.ZERO), 1);
        theirs.newLine().setId(name).setVoltageLevel1("v").setBus1("b" + from).setConnectableBus1("b" + from)
                .setVoltageLevel2("v").setBus2("b" + to).setConnectableBus2("b" + to)
                .setR(positive.re()).setX(positive.im()).setB1(micro / 2).setB2(micro / 2).setG1(0).setG2(0).add();
    }

    private void regulator(String name, int from, int to, int tap) {
        Complex own = new Complex(0.01, 0.08);
        for (int p = 0; p < 3; p++) {
            ours.regulator(name + p, at(from)[p], at(to)[p], GROUND, RegulatorKind.TYPE_A, own, tap);
        }
        theirs.getSubstation("s").newTwoWindingsTransformer().setId(name)
                .setVoltageLevel1("v").setBus1("b" + from).setConnectableBus1("b" + from).setRatedU1(KILOVOLTS)
                .setVoltageLevel2("v").setBus2("b" + to).setConnectableBus2("b" + to).setRatedU2(KILOVOLTS)
                .setR(own.re()).setX(own.im()).setG(0).setB(0).add()
                .newRatioTapChanger().setLowTapPosition(0).setTapPosition(0).setLoadTapChangingCapabilities(false)
                .beginStep().setRho(1 + 0.00625 * tap).setR(0).setX(0).setG(0).setB(0).endStep().add();
    }

    private void load(int b, double watts, double vars) {
        level.newLoad().setId("u" + b).setBus("b" + b).setConnectableBus("b" + b).setP0(3 * watts / 1e6).setQ0(3 * vars / 1e6).add();
        for (int p = 0; p < 3; p++) {
            ours.load("u" + b + p, at(b)[p], GROUND, VOLTS, LoadPower.constantPower(new Complex(watts, vars)));
        }
    }

    private void capacitor(int b, double vars) {
        level.newShuntCompensator().setId("c" + b).setBus("b" + b).setConnectableBus("b" + b).setSectionCount(1)
                .newLinearModel().setBPerSection(vars / (VOLTS * VOLTS)).setMaximumSectionCount(1).add().add();
        for (int p = 0; p < 3; p++) {
            ours.capacitor("c" + b + p, at(b)[p], GROUND, VOLTS, vars);
        }
    }

    private void solve(int buses) {
        FlowModel model = ours.build();
        FlowSolution solution = model.solver().solve(model.baseState()).solution().orElseThrow();
        if (!solution.softened().isEmpty()) {
            // Below 0.7 of rated voltage our loads keep their impedance; theirs keep their power to the end.
            return;
        }
        LoadFlowParameters parameters = new LoadFlowParameters().setDistributedSlack(false).setUseReactiveLimits(false);
        OpenLoadFlowParameters.create(parameters).setSlackBusSelectionMode(SlackBusSelectionMode.NAME)
                .setSlackBusId(level.getBusView().getMergedBus("b0").getId())
                .setNewtonRaphsonConvEpsPerEq(1e-8);
        var result = new LoadFlow.Runner(new OpenLoadFlowProvider(new DenseMatrixFactory())).run(theirs, parameters);
        if (!result.isFullyConverged()) {
            // From flat voltages Newton's method does not find every loop with a regulator far off neutral in it.
            unsolved++;
            return;
        }
        for (int b = 0; b < buses; b++) {
            var bus = level.getBusBreakerView().getBus("b" + b);
            double angle = bus.getAngle();
            for (int p = 0; p < 3; p++) {
                Complex volts = solution.voltage(model.terminals().indexOf("b" + b + "." + PHASES.charAt(p)));
                assertEquals(bus.getV() / KILOVOLTS, volts.abs() / VOLTS, 1e-6, "b" + b);
                assertEquals(0, Math.IEEEremainder(angle - 120 * p - volts.degrees(), 360), 1e-4, "angle of b" + b);
            }
            lowest = Math.min(lowest, bus.getV() / KILOVOLTS);
            compared++;
        }
    }

    @AfterAll
    static void theNetworksAreLoaded() {
        assertTrue(lowest < 0.95 && compared > 500, lowest + " lowest of " + compared);
        assertTrue(unsolved <= 6, unsolved + " of 60 not solved by the other");
    }
}
