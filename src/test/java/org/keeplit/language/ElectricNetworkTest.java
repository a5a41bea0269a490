package org.keeplit.language;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.keeplit.network.Conductor;
import org.keeplit.network.Connection;
import org.keeplit.network.Element;
import org.keeplit.network.LoadModel;
import org.keeplit.network.Network;
import org.keeplit.network.Phases;
import org.keeplit.network.Spacing;
import org.keeplit.network.Trait;
import org.keeplit.unit.Dimension;

/** The figures that a load flow needs, from the sample network that has one of each. */
class ElectricNetworkTest {
    private static final double MILE = 1609.344;

    private final Network network = Samples.library().networks().get("electric");

    private Element.Line line(String name) {
        return (Element.Line) network.element(name).orElseThrow();
    }

    private Element.Transformer transformer(String name) {
        return (Element.Transformer) network.element(name).orElseThrow();
    }

    private Element.Load load(String name) {
        return (Element.Load) network.element(name).orElseThrow();
    }

    private double figure(String element, String name) {
        return network.element(element).orElseThrow().figures().get(name).si();
    }

    private static Phases phases(String letters) {
        return Phases.parse(letters).orElseThrow();
    }

    @Test
    void loadCasesAndLimits() {
        assertEquals(0.4, network.system().get("load case light").si(), 1e-12);
        assertEquals(2.5, network.system().get("load case cold-pickup").si(), 1e-12);
        assertEquals(0.95, network.system().get("voltage low").si(), 1e-12);
        assertEquals(1.05, network.system().get("voltage high").si(), 1e-12);
        assertEquals(Dimension.RATIO, network.system().get("voltage high").dimension());
    }

    @Test
    void conductorsAndSpacingsComeWithTheNetwork() {
        assertEquals(
                0.592 / MILE, network.conductors().get("acsr-4-0").get("resistance").si(), 1e-12);
        Spacing spacing = network.spacings().get("top-500");
        assertEquals(Optional.of("acsr-4-0"), spacing.neutral());
        assertEquals(-4 * 0.3048, spacing.positions().get(Conductor.A).across(), 1e-12);
        assertEquals(24 * 0.3048, spacing.positions().get(Conductor.N).height(), 1e-12);
        assertEquals(phases("ABCN"), spacing.conductors());
        assertEquals(Phases.ABC, spacing.phases());
        assertEquals(phases("AB"), network.spacings().get("side").phases());
        assertEquals(Optional.empty(), network.spacings().get("side").neutral());
    }

    @Test
    void aLineWithoutASpacingHasTheFirstOfItsPhases() {
        assertEquals(Optional.of("top-500"), line("said").spacing());
        assertEquals(Optional.of("top-500"), line("usual").spacing());
        assertEquals(Optional.of("side"), line("pair").spacing());
        assertEquals(Optional.empty(), line("lonely").spacing(), "no spacing has phase B alone");
        assertEquals(Optional.empty(), line("buried").spacing(), "a cable hangs nowhere");
        assertEquals(Optional.empty(), line("outright").spacing());
    }

    @Test
    void everyOverheadLineOfTheProjectsNetworkHangsSomewhere() {
        Network own = new Reader()
                .read(List.of(Samples.ROOT.resolve("shared")))
                .networks()
                .get("heron-vale");
        own.all(Element.Line.class).filter(l -> !l.kind().has(Trait.CABLE)).forEach(l -> {
            Spacing spacing = own.spacings().get(l.spacing().orElseThrow());
            assertEquals(l.phases(), spacing.phases(), l.name());
        });
        assertEquals(0.4, own.system().get("load case light").si(), 1e-12);
    }

    @Test
    void impedancesOfOneMetre() {
        assertEquals(0.3e-3, figure("outright", "resistance"), 1e-12);
        assertEquals(0.4e-3, figure("outright", "reactance"), 1e-12);
        assertEquals(0.5e-3, figure("outright", "zero resistance"), 1e-12);
        assertEquals(1.2e-3, figure("outright", "zero reactance"), 1e-12);
        assertEquals(0.2066 / MILE, figure("matrix", "resistance BC"), 1e-12, "whichever letter was first");
        assertEquals(0.4591 / MILE, figure("matrix", "reactance BC"), 1e-12);
        assertEquals(1.3569 / MILE, figure("matrix", "reactance CC"), 1e-12);
        assertEquals(-0.8999e-6 / MILE, figure("matrix", "susceptance BC"), 1e-18);
        assertEquals(
                Dimension.ADMITTANCE,
                line("matrix").figures().get("susceptance BB").dimension());
    }

    @Test
    void tapsAndSettingsOfRegulators() {
        Element.Regulator stepped =
                (Element.Regulator) network.element("stepped").orElseThrow();
        assertEquals(Map.of("control", "manual", "control-power", "off"), stepped.settings());
        assertEquals(10, figure("stepped", "tap A"));
        assertEquals(-8, figure("stepped", "tap B"));
        assertFalse(stepped.figures().containsKey("tap C"), "not known");
        assertEquals(0, figure("level", "tap A"));
        assertEquals(0, figure("level", "tap B"));
        assertFalse(network.element("level").orElseThrow().figures().containsKey("tap C"), "it has no such phase");
    }

    @Test
    void openBanksAndSinglePhaseTransformers() {
        assertEquals(0.011, figure("whole", "resistance"), 1e-12);
        assertEquals(0.02, figure("whole", "reactance"), 1e-12);
        assertEquals(Phases.ABC, transformer("whole").windings());
        Element.Transformer opened = transformer("opened");
        assertEquals(Connection.GROUNDED_WYE, opened.primary());
        assertEquals(Connection.DELTA, opened.secondary());
        assertEquals(phases("AB"), opened.windings());
        assertEquals(Phases.ABC, opened.secondaryPhases());
        Element.Transformer angled = transformer("angled");
        assertEquals(Connection.DELTA, angled.primary());
        assertEquals(phases("BC"), angled.windings(), "the windings from B to C and from C to A");
        assertEquals(Phases.ABC, angled.secondaryPhases());
        Element.Transformer across = transformer("across");
        assertEquals(Connection.DELTA, across.primary());
        assertEquals(Connection.GROUNDED_WYE, across.secondary());
        assertEquals(phases("C"), across.windings());
        assertEquals(phases("C"), across.secondaryPhases());
        assertEquals(11, across.clock());
        Element.Transformer upright = transformer("upright");
        assertEquals(Connection.GROUNDED_WYE, upright.primary());
        assertEquals(phases("B"), upright.secondaryPhases());
        assertEquals(phases("C"), network.nodes().get("t-4"));
    }

    @Test
    void loadsPhaseByPhaseAndTheirModels() {
        assertEquals(LoadModel.IMPEDANCE, load("uneven").model());
        assertEquals(160e3, figure("uneven", "active power A"));
        assertEquals(90e3, figure("uneven", "reactive power B"));
        assertFalse(load("uneven").figures().containsKey("reactive power C"));
        assertEquals(400e3, figure("uneven", "active power"), "all of it");
        assertEquals(200e3, figure("uneven", "reactive power"));
        assertEquals(LoadModel.CURRENT, load("looped").model());
        assertEquals(115e3, figure("looped", "active power CA"));
        assertEquals(LoadModel.POWER, load("case").model(), "unless said");
    }

    @Test
    void figuresOfDevices() {
        assertEquals(400, figure("rated", "continuous"));
        assertEquals(0.02, figure("rated", "impedance"), 1e-12);
        assertEquals(280, figure("rated", "minimum trip"));
    }
}
