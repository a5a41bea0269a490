package org.keeplit.electric.flow;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.keeplit.electric.flow.FlowModel.GROUND;
import static org.keeplit.electric.flow.SmallFeeder.MILE;
import static org.keeplit.electric.flow.SmallFeeder.VOLTS;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.keeplit.electric.complex.Complex;
import org.keeplit.electric.complex.ComplexMatrix;

class ShortCircuitTest {
    private static final Complex POSITIVE = MILE.at(0, 0).minus(MILE.at(0, 1)).plus(new Complex(0, 1e-3));
    private static final Complex ZERO = MILE.at(0, 0).plus(MILE.at(0, 1).times(2)).plus(new Complex(0, 1e-3));

    private static FlowModel mile() {
        SmallFeeder feeder = new SmallFeeder();
        feeder.line("s", "n");
        return feeder.builder.build();
    }

    private static FaultSolution fault(FlowModel model, Fault fault) {
        return model.shortCircuit(FaultLoads.IGNORED).solve(model.baseState(), fault);
    }

    @Test
    void faultsAtTheEndOfABalancedLineFollowTheSequenceFormulas() {
        FlowModel model = mile();
        int[] n = "ABC".chars().map(phase -> model.terminals().indexOf("n." + (char) phase)).toArray();
        Complex none = Complex.ZERO;
        double three = VOLTS / POSITIVE.abs();
        assertEquals(three, fault(model, Fault.threePhase(n[0], n[1], n[2], none)).faultCurrents().get(1).abs(), 0.01);
        assertEquals(
                3 * VOLTS / POSITIVE.times(2).plus(ZERO).abs(),
                fault(model, Fault.lineToGround(n[2], none)).faultCurrents().get(0).abs(), 0.01);
        assertEquals(
                three * Math.sqrt(3) / 2,
                fault(model, Fault.lineToLine(n[0], n[1], none)).faultCurrents().get(0).abs(), 0.01);
        Complex ground = fault(model, Fault.doubleLineToGround(n[1], n[2], none, none)).groundCurrent();
        assertEquals(3 * VOLTS / POSITIVE.plus(ZERO.times(2)).abs(), ground.abs(), 0.01);
    }

    @Test
    void faultImpedanceIsInTheRightPlace() {
        FlowModel model = mile();
        int a = model.terminals().indexOf("n.A");
        int b = model.terminals().indexOf("n.B");
        Complex ohms = new Complex(5, 0);
        FaultSolution between = fault(model, Fault.lineToLine(a, b, ohms));
        Complex across = between.voltageBetween(a, b);
        Complex drop = between.faultCurrents().get(0).times(ohms);
        assertEquals(0, across.minus(drop).abs(), 1e-3);
        FaultSolution toGround = fault(model, Fault.doubleLineToGround(a, b, Complex.ZERO, ohms));
        assertEquals(0, toGround.voltage(a).minus(toGround.groundCurrent().times(ohms)).abs(), 1e-3);
        assertEquals(0, toGround.voltageBetween(a, b).abs(), 1e-3);
    }

    @Test
    void parallelWaysShareAFaultByImpedance() {
        SmallFeeder feeder = new SmallFeeder();
        int near = feeder.contact("s.A", "n.A", new Complex(0.2, 0.5), true);
        int far = feeder.contact("s.A", "n.A", new Complex(0.4, 1.0), true);
        FlowModel model = feeder.builder.build();
        FaultSolution solution = fault(model, Fault.lineToGround(model.terminals().indexOf("n.A"), Complex.ZERO));
        assertEquals(2, solution.current(near, 0).abs() / solution.current(far, 0).abs(), 1e-6);
        Complex sum = solution.residual(near, far);
        assertEquals(0, sum.minus(solution.faultCurrents().get(0)).abs(), 1e-3);
    }

    @Test
    void theTheveninImpedanceOfALineIsTheLine() {
        FlowModel model = mile();
        int n = model.terminals().indexOf("n.A");
        Thevenin seen = model.shortCircuit(FaultLoads.IGNORED).thevenin(model.baseState(), n);
        assertEquals(VOLTS, seen.voltages().get(0).abs(), 0.01);
        assertEquals(0, seen.impedance().at(0, 0).minus(MILE.at(0, 0).plus(new Complex(0, 1e-3))).abs(), 1e-6);
    }

    @Test
    void aFaultOnADeadConductorDrawsNothingAndOneOntoALiveOneMakesItLive() {
        SmallFeeder feeder = new SmallFeeder();
        feeder.contact("s.B", "n.B", new Complex(0.001, 0), false);
        feeder.builder.load("load", feeder.at("n.B"), GROUND, VOLTS, SmallFeeder.impedance(1000, 0));
        FlowModel model = feeder.builder.build();
        int dead = model.terminals().indexOf("n.B");
        assertEquals(0, fault(model, Fault.lineToGround(dead, Complex.ZERO)).groundCurrent().abs(), 1e-6);
        int live = model.terminals().indexOf("s.C");
        FaultSolution across = fault(model, Fault.lineToLine(dead, live, Complex.ZERO));
        assertTrue(across.isLive(dead));
        assertEquals(VOLTS, across.voltage(dead).abs(), 0.1);
    }

    /** A fault put on by superposition is the load flow of the network with a contact in its place. */
    @Test
    void aFaultEqualsAGroundingContactInTheLinearNetwork() {
        for (int run = 0; run < 30; run++) {
            RandomNetwork network = new RandomNetwork(run);
            FlowState state = network.randomState(new Random(run));
            int grounding = network.contacts.get(network.contacts.size() - 1);
            for (int contact : network.contacts) {
                if (network.model.elements().get(contact).terminal(1) == GROUND) {
                    grounding = contact;
                }
            }
            FlowState open = state.edit().contact(grounding, false).state();
            FlowState closed = open.edit().contact(grounding, true).state();
            int place = network.model.elements().get(grounding).terminal(0);
            Complex ohms = ((Contact) network.model.elements().get(grounding)).impedance(closed);
            ShortCircuitSolver solver = network.model.shortCircuit(FaultLoads.AS_IMPEDANCES);
            FaultSolution put = solver.solve(open, Fault.lineToGround(place, ohms));
            Thevenin after = solver.thevenin(closed, place);
            Complex byContact = after.voltages().get(0).over(ohms);
            assertEquals(0, byContact.minus(put.groundCurrent()).abs(), 1e-6 * (1 + byContact.abs()), "run " + run);
        }
    }

    @Test
    void faultLevelsGiveTheirImpedance() {
        ComplexMatrix z = SourceImpedance.ofFaultLevels(12_470, 100e6, 10, 80e6, 5);
        Complex positive = z.at(0, 0).minus(z.at(0, 1));
        Complex zero = z.at(0, 0).plus(z.at(0, 1).times(2));
        assertEquals(12_470.0 * 12_470 / 100e6, positive.abs(), 1e-9);
        assertEquals(10, positive.im() / positive.re(), 1e-9);
        assertEquals(3 * 12_470.0 * 12_470 / 80e6, positive.times(2).plus(zero).abs(), 1e-9);
        assertEquals(5, zero.im() / zero.re(), 1e-9);
    }
}
