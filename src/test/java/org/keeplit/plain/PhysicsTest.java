package org.keeplit.plain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.ShrinkingMode;
import net.jqwik.api.Tag;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.lifecycle.AfterProperty;
import org.keeplit.electric.Contact;
import org.keeplit.electric.flow.FlowSolution;
import org.keeplit.network.ClosingDuty;
import org.keeplit.network.Connection;
import org.keeplit.network.Element;
import org.keeplit.network.OpeningDuty;

/** What connectivity says against what volts and amperes say, on the same networks in the same positions. */
class PhysicsTest {
    private static final double ZERO = 1e-3;
    private int solved;
    private int backfed;
    private int parallels;
    private boolean failed;

    @Property(tries = 500, seed = "21", shrinking = ShrinkingMode.OFF)
    void connectivityIsPhysical(@ForAll long seed) {
        compare(seed);
    }

    @Tag("long")
    @Property(tries = 15_000, seed = "22", shrinking = ShrinkingMode.OFF)
    void connectivityIsPhysicalInTheLongRun(@ForAll long seed) {
        compare(seed);
    }

    private void compare(long seed) {
        failed = true;
        compareAll(seed);
        failed = false;
    }

    private void compareAll(long seed) {
        MadePositions made = new MadePositions(seed);
        Circuit circuit = made.circuit();
        // After a flash nothing is compared; two wyes to one delta coil is no bank that anybody builds.
        boolean odd = made.network().all(Element.Transformer.class)
                .anyMatch(t -> t.phases().size() == 2 && !t.centreTapped() && (t.primary() == Connection.DELTA) != (t.secondary() == Connection.DELTA));
        if (odd || circuit.now().anythingShorted()) {
            return;
        }
        FlowOfPositions flow = new FlowOfPositions(made, false);
        FlowSolution solution = flow.solve(null);
        Assume.that(solution != null);
        solved++;
        String name = "seed " + seed + ": ";
        made.grid().vertices().forEach(v -> place(MadePositions.name(v), circuit, flow, solution, name + v));
        if (steady(made)) {
            made.grid().vertices().forEach(v -> supply(MadePositions.name(v), circuit, flow, solution, name + v));
        }
        for (Contact contact : made.grid().contacts()) {
            duties(made, contact, circuit, flow, solution, name + made.joint(contact));
        }
    }

    /** Banks with floating sides let the voltage to ground go where it likes; these do not. */
    private static boolean steady(MadePositions made) {
        return made.network().all(Element.Transformer.class)
                .allMatch(t -> t.primary() != Connection.WYE && t.secondary() == Connection.GROUNDED_WYE);
    }

    private void place(String place, Circuit circuit, FlowOfPositions flow, FlowSolution solution, String at) {
        if (!flow.knows(place)) {
            return;
        }
        int level = circuit.now().level(place);
        double part = flow.volts(solution, place) / FlowOfPositions.VOLTS;
        if (level <= Voltages.MAY_BE) {
            // No generator runs here. What a ground holds down, straight or through a load, has the drop of its clamps.
            assertTrue(part < (flow.isGroundedAnywhere() ? ZERO : 1e-12), at + " is called dead at " + part);
        }
        backfed += level == Voltages.BACKFED && part > 0.05 ? 1 : 0;
    }

    private static void supply(String place, Circuit circuit, FlowOfPositions flow, FlowSolution solution, String at) {
        if (circuit.now().level(place) == Voltages.ENERGIZED && flow.knows(place)) {
            assertTrue(flow.volts(solution, place) > 0.7 * FlowOfPositions.VOLTS, at + " is called energized");
            String by = circuit.now().identity(place);
            double wanted = (by.startsWith("alpha") ? 0 : 17) - 30 * circuit.now().hour(place);
            double off = Math.floorMod(Math.round(flow.phasor(solution, place).degrees() - wanted + 180), 360) - 180;
            assertTrue(Math.abs(off) < 20, at + " stands " + off + " degrees off");
        }
    }

    private void duties(
            MadePositions made, Contact contact, Circuit circuit, FlowOfPositions flow, FlowSolution solution, String at) {
        Joint joint = made.joint(contact);
        if (made.isClosed(contact)) {
            OpeningDuty duty = circuit.opening(joint);
            double amperes = flow.amperes(solution, contact);
            Voltages then = made.circuitWithout(contact).now();
            // Of two grounds each takes its part; of a ganged set the pole that feeds the others has the duty.
            boolean shares = then.isEarthed(joint.a()) && then.isEarthed(joint.b())
                    || circuit.now().isEarthed(joint.a()) && made.grid().contacts(contact.key()).size() > 1;
            if (duty == OpeningDuty.BUSHING || duty == OpeningDuty.NOTHING && !shares) {
                assertTrue(amperes < ZERO, at + " is said to carry nothing: " + amperes + " A");
            } else if (duty == OpeningDuty.PARALLEL) {
                FlowSolution opened = flow.solve(contact);
                parallels++;
                assertTrue(opened == null || flow.voltsAcross(opened, contact) < 0.02 * FlowOfPositions.VOLTS, at + " parallel");
            }
        } else {
            ClosingDuty duty = circuit.closing(joint);
            double across = flow.voltsAcross(solution, contact);
            if (duty == ClosingDuty.NOTHING) {
                assertTrue(across < ZERO * FlowOfPositions.VOLTS, at + " nothing at " + across);
            } else if (duty == ClosingDuty.PARALLEL && steady(made)) {
                assertTrue(across < 0.05 * FlowOfPositions.VOLTS, at + " parallel at " + across);
            }
        }
    }

    /** With a primary phase lost, a delta-wye bank supplies the one phase that its clock says. */
    @Property(tries = 120, seed = "23", shrinking = ShrinkingMode.OFF)
    void theClockSaysWhichPhaseIsLeft(@ForAll @IntRange(min = 0, max = 5) int half, @ForAll long seed) {
        failed = true;
        int clock = 2 * half + 1;
        MadePositions made = new MadePositions(
                new Draw(seed),
                new MadeCase(
                                List.of(
                                        new MadeElement("source", "s-1", "n-1", null, "ABC", List.of("supply alpha")),
                                        new MadeElement("disconnect", "d-2", "n-1", "n-2", "ABC", List.of()),
                                        new MadeElement("transformer", "t-3", "n-2", "n-3", "ABC",
                                                List.of("delta to grounded wye", "clock " + clock))),
                                List.of(), List.of(), List.of(Part.step("east does \"nothing\"")), List.of(), List.of("tagging"), List.of())
                        .read());
        FlowOfPositions flow = new FlowOfPositions(made, false);
        FlowSolution solution = flow.solve(null);
        Voltages now = made.circuit().now();
        for (String phase : List.of("n-3/A", "n-3/B", "n-3/C")) {
            boolean full = flow.volts(solution, phase) > 0.9 * FlowOfPositions.VOLTS;
            assertEquals(full, now.level(phase) == Voltages.ENERGIZED, "clock " + clock + ", " + phase + " " + now.level(phase));
            supply(phase, made.circuit(), flow, solution, phase);
            backfed += now.level(phase) == Voltages.BACKFED ? 1 : 0;
            parallels++;
            solved++;
        }
        failed = false;
    }

    @AfterProperty
    void thereWasSomethingToCompare() {
        assertTrue(failed || solved > 100 && backfed > 10 && parallels > 100, solved + " " + backfed + " " + parallels);
    }
}
