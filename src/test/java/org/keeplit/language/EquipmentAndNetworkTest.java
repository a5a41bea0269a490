package org.keeplit.language;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.keeplit.network.Base;
import org.keeplit.network.ClosingDuty;
import org.keeplit.network.Connection;
import org.keeplit.network.Effect;
import org.keeplit.network.Element;
import org.keeplit.network.Kind;
import org.keeplit.network.Mode;
import org.keeplit.network.Network;
import org.keeplit.network.OpeningDuty;
import org.keeplit.network.Phases;
import org.keeplit.network.Place;
import org.keeplit.network.Trait;
import org.keeplit.network.Verb;
import org.keeplit.unit.Quantity;

/** What the sample equipment and the sample network say, as typed values. */
class EquipmentAndNetworkTest {
    private final Library library = Samples.library();
    private final Network network = library.networks().get("heron-vale");

    private Kind kind(String name) {
        return library.equipment().get("overhead").kinds().get(name);
    }

    private <E extends Element> E element(Class<E> type, String name) {
        return type.cast(network.element(name).orElseThrow());
    }

    @Test
    void aKindHasItsTraitsDutiesAndModes() {
        Kind recloser = kind("recloser");
        assertEquals(Base.SWITCH, recloser.base());
        assertEquals(
                Set.of(
                        Trait.SINGLE_PHASE_UNITS,
                        Trait.GANGED,
                        Trait.LEADS,
                        Trait.TRIPS,
                        Trait.RECLOSES,
                        Trait.COUNTS,
                        Trait.REMOVABLE),
                recloser.traits());
        assertFalse(recloser.breaks().contains(OpeningDuty.CAPACITOR));
        assertTrue(recloser.breaks().contains(OpeningDuty.FAULT));
        assertEquals(Set.of(ClosingDuty.NOTHING, ClosingDuty.PARALLEL, ClosingDuty.ENERGIZE), recloser.makes());
        Mode reclosing = recloser.mode("reclosing").orElseThrow();
        assertEquals(List.of("on", "blocked"), reclosing.values());
        assertTrue(reclosing.each(), "each single-phase unit has its own");
        assertFalse(kind("breaker").mode("reclosing").orElseThrow().each());
        assertEquals(Base.JUMPER, kind("bypass-jumper").base());
        assertEquals(Base.GROUND, kind("ground-set").base());
        assertTrue(kind("cable").has(Trait.CABLE));
    }

    @Test
    void aVerbHasTwoFormsAndItsEffects() {
        Verb verb = kind("recloser").verbs().get(2);
        assertEquals("puts X in non-reclose", verb.one().with("X"));
        assertEquals("put X in non-reclose", verb.several().with("X"));
        assertEquals(List.of(new Effect.SetMode("reclosing", "blocked")), verb.effects());
        assertEquals(
                List.of(new Effect.Carry(Place.SHOP)),
                kind("recloser").verbs().stream()
                        .filter(v -> v.one().with("X").equals("takes X to shop"))
                        .findFirst()
                        .orElseThrow()
                        .effects());
        assertEquals(
                List.of(new Effect.ToNeutral()),
                kind("regulator").verbs().get(2).effects());
    }

    @Test
    void aConductorsFiguresAreKeptForOneMetre() {
        Map<String, Quantity> wire =
                library.equipment().get("wires").conductors().get("acsr-336");
        assertEquals(0.306 / 1609.344, wire.get("resistance").si(), 1e-12);
        assertEquals(0.0244 * 0.3048, wire.get("radius").si(), 1e-12);
        assertEquals(530, wire.get("ampacity").si());
    }

    @Test
    void theSystemAndItsSources() {
        assertEquals("Heron Vale feeder", network.title());
        assertEquals(12470, network.system().get("voltage").si());
        assertEquals(60, network.system().get("frequency").si());
        Element.Source source = element(Element.Source.class, "mill-bus");
        assertEquals("mill", source.supply());
        assertEquals(140e6, source.figures().get("fault level").si());
        assertEquals(8, source.figures().get("reactance ratio").si());
        assertEquals(Set.of("mill", "east"), network.supplies());
    }

    @Test
    void devicesHaveTheirSiteTheirBuildAndTheirPosition() {
        Element.Device r24 = element(Element.Device.class, "r-24");
        assertFalse(r24.ganged());
        assertEquals("pole-24", r24.site());
        assertEquals(Phases.ABC, r24.closed());
        assertEquals(140, r24.figures().get("coil").si());
        Element.Device r9 = element(Element.Device.class, "r-9");
        assertTrue(r9.ganged());
        assertEquals(Map.of("reclosing", "blocked"), r9.settings());
        assertEquals(Phases.NONE, element(Element.Device.class, "t-7").closed());
        assertFalse(element(Element.Device.class, "f-3").ganged(), "one phase is a single-phase unit");
        Element.Device s5 = element(Element.Device.class, "s-5");
        assertEquals("s-5", s5.site(), "it stands at a site named like itself");
        assertEquals(Phases.parse("AC").orElseThrow(), s5.closed());
        assertTrue(s5.ganged(), "its kind knows nothing else");
    }

    @Test
    void transformersLoadsAndBanks() {
        Element.Transformer transformer = element(Element.Transformer.class, "t-1");
        assertEquals(Connection.DELTA, transformer.primary());
        assertEquals(Connection.GROUNDED_WYE, transformer.secondary());
        assertEquals(1, transformer.clock());
        assertEquals(0.05, transformer.figures().get("impedance").si(), 1e-12);
        assertEquals(480, transformer.figures().get("low voltage").si());
        Element.Load dairy = element(Element.Load.class, "dairy");
        assertEquals(Optional.of("milking parlour"), dairy.critical());
        assertEquals(210e3, dairy.figures().get("active power").si());
        assertEquals(90e3, dairy.figures().get("reactive power").si());
        assertEquals(1, dairy.customers());
        Element.Load mill = element(Element.Load.class, "mill-works");
        assertTrue(mill.motor());
        assertEquals(Connection.DELTA, mill.connection());
        assertEquals(
                Connection.GROUNDED_WYE, element(Element.Load.class, "lane").connection(), "unless said");
        assertEquals(Connection.WYE, element(Element.Capacitor.class, "cap-2").connection());
        assertEquals("pole-40", element(Element.Regulator.class, "vr-1").site());
        assertEquals(
                50e3,
                element(Element.Generator.class, "sun-1")
                        .figures()
                        .get("active power")
                        .si());
        assertEquals(
                Optional.of("acsr-336"), element(Element.Line.class, "trunk-1").conductor());
        assertEquals(
                2100,
                element(Element.Line.class, "trunk-1").figures().get("length").si(),
                1e-9);
    }
}
