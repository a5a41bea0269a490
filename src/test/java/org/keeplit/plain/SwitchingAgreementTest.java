package org.keeplit.plain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import org.keeplit.condition.Measure;
import org.keeplit.electric.Contact;
import org.keeplit.electric.Electric;
import org.keeplit.electric.flow.FlowSolution;
import org.keeplit.electric.flow.FlowState;
import org.keeplit.electric.power.PowerModel;
import org.keeplit.electric.power.PowerStates;

/** What opening would leave across a contact and closing would drive through it, from both load flows. */
class SwitchingAgreementTest {
    private static int parted;
    private static int carried;

    @TestFactory
    Stream<DynamicTest> everyContactBothWays() {
        return IntStream.range(0, 25).boxed().flatMap(seed -> Stream.of(
                DynamicTest.dynamicTest("pole " + seed, () -> compare(positions(FiguresAgreementTest.POLE, seed))),
                DynamicTest.dynamicTest("town " + seed, () -> compare(
                        positions(FiguresAgreementTest.town(2 * (seed % 6) + 1), seed))),
                DynamicTest.dynamicTest("loop " + seed, () -> compare(positions(LOOP, seed)))));
    }

    /** Two feeders of one bus, a tie between them, and a second behind a delta-wye bank that is turned by 30 degrees. */
    static final String LOOP =
            """
            language 1
            network net
            uses overhead
            system voltage 12.47 kV, frequency 60 Hz
            load case light 30 %
            source bus at s-0, phases ABC, supply grid, fault level 120 MVA
            line west from s-0 to w-1, phases ABC, length 1.7 km, conductor acsr-336
            line east from s-0 to e-1, phases ABC, length 3.1 km, conductor acsr-4-0
            recloser r from w-1 to w-2, phases ABC, single-phase units, coil 70 A
            tie t from w-2 to e-1, phases ABC, open
            transformer turn from s-0 to x-0, phases ABC, delta to grounded wye, clock 1, rating 5 MVA, low voltage 12.47 kV, impedance 6 %
            switch odd from x-0 to w-2, phases ABC, open
            load a at w-2, phases ABC, 900 kW, 300 kvar, 12 customers
            load b at e-1, phases ABC, 1400 kW, 420 kvar, 12 customers
            """;

    private static MadePositions positions(String network, long seed) {
        return FiguresAgreementTest.positions(network, "net", "r", seed);
    }

    private static void compare(MadePositions made) {
        Electric electric = new Electric(made.grid(), c -> true, made::isClosed);
        PowerModel model = PowerModel.of(made.grid());
        PowerStates states = new PowerStates(model, electric.cells(), made::isClosed);
        PlainFigures plain = made.figures();
        PlainSwitching switching = new PlainSwitching(plain);
        for (int c = 0; c < model.cases().size(); c++) {
            FlowState now = states.state(electric.startSet(), c, made::neutral);
            for (Contact contact : made.grid().contacts()) {
                Joint joint = made.joint(contact);
                String what = "case " + c + ", " + joint;
                FlowSolution open = states.solve(states.switched(now, contact, false)).solution().orElse(null);
                double volts = open == null
                        ? Double.NaN
                        : open.voltageBetween(model.terminal(contact.a()), model.terminal(contact.b())).abs();
                same(volts, switching.after(Measure.RECOVERY, joint, c), 0.01, "recovery voltage, " + what);
                FlowSolution closed = states.solve(states.switched(now, contact, true)).solution().orElse(null);
                double amperes = closed == null ? Double.NaN : closed.current(model.element(contact), 0).abs();
                same(amperes, switching.after(Measure.CLOSING_CURRENT, joint, c), 1e-3, "closing current, " + what);
                parted += volts > 1 ? 1 : 0;
                carried += amperes > 1 ? 1 : 0;
            }
        }
    }

    private static void same(double fast, double slow, double absolute, String what) {
        assertEquals(fast, slow, Math.max(absolute, 1e-6 * Math.abs(fast)), what);
    }

    @AfterAll
    static void thereWasSomethingToCompare() {
        assertTrue(parted > 500 && carried > 500, parted + " with voltage, " + carried + " with current");
    }
}
