package org.keeplit.plain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.common.collect.ImmutableSet;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.Set;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.ShrinkingMode;
import net.jqwik.api.Tag;
import net.jqwik.api.lifecycle.AfterProperty;
import org.keeplit.condition.Truth;
import org.keeplit.electric.Analysis;
import org.keeplit.electric.Contact;
import org.keeplit.electric.Electric;
import org.keeplit.electric.SiteGraph;
import org.keeplit.network.ClosingDuty;
import org.keeplit.network.Conductor;
import org.keeplit.network.Element;
import org.keeplit.network.Mode;
import org.keeplit.network.OpeningDuty;
import org.keeplit.network.Phases;
import org.keeplit.program.FieldKey;
import org.keeplit.program.Vertex;

/**
 * Everything electrical, asked of both evaluators in made positions: of the grid with nothing drawn together, and with
 * whatever does not move drawn together. Every contact has exactly one opening duty and one closing duty.
 */
class ElectricAgreementTest {
    private final Set<OpeningDuty> openings = EnumSet.noneOf(OpeningDuty.class);
    private final Set<ClosingDuty> closings = EnumSet.noneOf(ClosingDuty.class);

    @Property(tries = 400, seed = "11", shrinking = ShrinkingMode.OFF)
    void both(@ForAll long seed) {
        compare(seed);
    }

    @Tag("long")
    @Property(tries = 40_000, seed = "12", shrinking = ShrinkingMode.OFF)
    void bothInTheLongRun(@ForAll long seed) {
        compare(seed);
    }

    void compare(long seed) {
        MadePositions made = new MadePositions(seed);
        Set<FieldKey> moving = new HashSet<>();
        made.grid().contacts().forEach(c -> {
            if (made.draw().chance(50)) {
                moving.add(c.key());
            }
        });
        Circuit plain = made.circuit();
        compare(made, plain, new Electric(made.grid(), c -> true, made::isClosed), "seed " + seed + ", nothing drawn together");
        compare(made, plain, new Electric(made.grid(), c -> moving.contains(c.key()), made::isClosed), "seed " + seed);
    }

    private void compare(MadePositions made, Circuit plain, Electric electric, String name) {
        Analysis fast = electric.at(electric.startSet());
        for (int v = 0; v < made.grid().vertices().size(); v++) {
            Vertex vertex = made.grid().vertices().get(v);
            String there = MadePositions.name(vertex);
            String at = name + ": " + vertex;
            assertEquals(plain.now().level(there), fast.level(v).ordinal(), at + " level");
            assertEquals(plain.now().isShorted(there), fast.shorted(v), at + " short-circuited");
            assertEquals(plain.now().isEarthed(there), fast.tiedToGround(v), at + " tied to a ground");
            assertEquals(plain.grounded(there), fast.groundedForPeople(v), at + " grounded");
        }
        assertEquals(plain.now().anythingShorted(), fast.status().shortedAnywhere(), name + ": a flash");
        made.grid().contacts().forEach(c -> duties(made, plain, fast, c, name));
        made.network().elements().forEach(e -> element(made, plain, fast, electric, e, name));
        ImmutableSet<String> mayClose = made.network().all(Element.Device.class)
                .filter(d -> d.kind().mode(Mode.REMOTE).isPresent())
                .map(Element.Device::name)
                .collect(ImmutableSet.toImmutableSet());
        made.network().sites().forEach(s -> assertEquals(
                ImmutableSet.copyOf(plain.feeding(s)), fast.feeding(s, mayClose), name + ": what feeds " + s));
    }

    private void duties(MadePositions made, Circuit plain, Analysis fast, Contact contact, String name) {
        Joint joint = made.joint(contact);
        String at = name + ": " + joint;
        OpeningDuty opening = fast.openingDuty(contact);
        ClosingDuty closing = fast.closingDuty(contact);
        SiteGraph site = new SiteGraph(made.grid(), contact.site());
        SiteGraph.Taps taps = (v, p) -> made.neutral(v, p) ? Truth.TRUE : Truth.UNKNOWN;
        if (closing == ClosingDuty.PARALLEL && site.unequal(contact, made::isClosed, taps) != Truth.FALSE) {
            closing = ClosingDuty.UNEQUAL;
        }
        assertNotNull(opening);
        assertNotNull(closing);
        assertTrue(opening == OpeningDuty.NOTHING || made.isClosed(contact), at);
        assertTrue(closing == ClosingDuty.NOTHING || !made.isClosed(contact), at);
        assertEquals(plain.opening(joint), opening, at + " opening");
        assertEquals(plain.closing(joint), closing, at + " closing");
        openings.add(opening);
        closings.add(closing);
    }

    private static void element(
            MadePositions made, Circuit plain, Analysis fast, Electric electric, Element element, String name) {
        String at = name + ": " + element.name();
        if (element instanceof Element.Device || element instanceof Element.Regulator) {
            Element.Branch branch = (Element.Branch) element;
            SiteGraph site = new SiteGraph(
                    made.grid(),
                    element instanceof Element.Device d ? d.site() : ((Element.Regulator) element).site());
            SiteGraph.Taps taps = (v, p) -> made.neutral(v, p) ? Truth.TRUE : Truth.UNKNOWN;
            assertEquals(plain.isolated(branch), fast.isolated(branch), at + " isolated");
            for (Conductor p : branch.phases()) {
                assertEquals(plain.looped(branch, p), fast.looped(branch, p), at + " looped on " + p);
                assertEquals(
                        plain.bypassed(branch, p),
                        site.bypassed(branch, p, made::isClosed, taps),
                        at + " bypassed on " + p);
            }
        } else if (element instanceof Element.Load load) {
            int first = load.phases().and(Phases.LEGS).isEmpty() ? 0 : Conductor.X1.ordinal();
            int[] cells = first == 0 ? new int[] {-1, -1, -1} : new int[] {-1, -1};
            for (Conductor p : load.phases()) {
                Vertex vertex = new Vertex.AtNode(load.node(), p);
                cells[p.ordinal() - first] = electric.cells().cell(made.grid().number(vertex).orElseThrow());
            }
            assertEquals(plain.supplied(load), fast.supplied(cells), at + " supplied");
        }
    }

    @AfterProperty
    void everyDutyCameUp() {
        assertEquals(EnumSet.allOf(OpeningDuty.class), openings);
        assertEquals(EnumSet.allOf(ClosingDuty.class), closings);
    }
}
