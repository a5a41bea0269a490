package org.keeplit.plain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.keeplit.electric.Contact;
import org.keeplit.electric.Electric;
import org.keeplit.electric.complex.Complex;
import org.keeplit.electric.flow.FlowSolution;
import org.keeplit.electric.power.PowerException;
import org.keeplit.electric.power.PowerModel;
import org.keeplit.electric.power.PowerStates;
import org.keeplit.language.Library;
import org.keeplit.language.Reader;
import org.keeplit.network.Conductor;
import org.keeplit.network.Element;
import org.keeplit.network.Phases;
import org.keeplit.procedure.Bound;
import org.keeplit.procedure.Procedure;
import org.keeplit.program.Vertex;
import org.keeplit.text.Source;

/** Every current and every voltage, and fault currents, from both load flows, with contacts in many positions. */
class FiguresAgreementTest {
    private static final double PART = 1e-6;
    private static final double ABSOLUTE = 1e-4;
    /** Where only a billionth of a siemens refers a whole side to ground, a hundredth of a volt is let pass. */
    private static final double FLOATING = 0.01 / PART;

    private static double worstAmperes;
    private static double worstVolts;
    private static int solved;
    private static int unsolved;

    /** A pole with a coil and room for jumpers, a lateral, a cable and a delta load behind it; two load cases. */
    static final String POLE = """
            language 1
            network net
            uses overhead
            system voltage 12.47 kV, frequency 60 Hz
            load case light 40 %
            source bus at s-0, phases ABC, supply grid, fault level 100 MVA, reactance ratio 8, ground fault level 80 MVA
            breaker feeder from s-0 to s-1, phases ABC, pickup 480 A, ground pickup 240 A
            line l-1 from s-1 to s-2, phases ABC, length 1.7 km, conductor acsr-336
            recloser r from s-2 to s-3, phases ABC, single-phase units, coil 100 A
            line l-2 from s-3 to s-4, phases ABC, length 2.1 km, conductor acsr-4-0
            cutout f from s-3 to t-1, phases B, single-phase units
            line l-3 from t-1 to t-2, phases B, length 0.9 km, conductor acsr-2
            load lane at t-2, phases B, 60 kW, 21 kvar, 9 customers
            switch river from s-4 to s-5, phases ABC
            cable under from s-5 to s-6, phases ABC, length 0.6 km, conductor cable-1-0
            load mill at s-6, phases ABC, 300 kW, 100 kvar, 1 customer, delta
            load row at s-4, phases ABC, A 110 kW 30 kvar, B 60 kW 10 kvar, C 90 kW 35 kvar, 12 customers
            """;

    /** A regulator off neutral, a delta-wye bank, capacitors, loads of all models, and delta loads leg by leg. */
    static final String TOWN = """
            language 1
            network net
            uses overhead
            system voltage 12.47 kV, frequency 60 Hz
            load case light 40 %
            load case winter 120 %
            source bus at s-0, phases ABC, supply grid, fault level 140 MVA
            breaker feeder from s-0 to s-1, phases ABC, pickup 480 A, ground pickup 240 A
            line l-1 from s-1 to s-2, phases ABC, length 2.5 km, conductor acsr-4-0
            regulator vr from s-2 to s-3, phases ABC, rating 219 A, tap A 7, tap B -3, tap C 11
            line l-2 from s-3 to s-4, phases ABC, length 2.1 km, resistance 0.3 ohm per km, reactance 0.4 ohm per km
            disconnect r from s-4 to s-5, phases ABC, single-phase units
            line l-3 from s-5 to s-6, phases CA, length 1.1 km, conductor acsr-2
            transformer t from s-5 to hall, phases ABC, delta to grounded wye, clock %CLOCK%, rating 300 kVA, low voltage 480 V, impedance 4 %
            capacitor star at s-4, phases ABC, ungrounded wye, 300 kvar
            capacitor mesh at s-5, phases ABC, delta, 150 kvar
            load hall-load at hall, phases ABC, constant current, A 60 kW 20 kvar, B 25 kW 5 kvar, C 40 kW 11 kvar, 1 customer
            load legs at s-5, phases ABC, delta, AB 80 kW 20 kvar, BC 140 kW 50 kvar, CA 60 kW 15 kvar, 1 customer
            load pair at s-6, phases CA, delta, constant current, CA 70 kW 20 kvar, 1 customer
            load single at s-6, phases A, constant impedance, 40 kW, 10 kvar, 2 customers
            """;

    private static final String PROCEDURE = """
            language 1
            procedure p revision 1
            title "x"
            crew
              op "Operator", in charge
            temporary
              bypass-jumper J for each phase of %DEVICE%
              ground-set G for each phase of %DEVICE%
            proved on %NETWORK%
            stage "x"
              op does "nothing"
            """;

    private static final String RULE = """
            language 1
            rulebook test revision 1
            rule none
              always every load L is supplied
              says "{L}"
              because "x"
            """;

    static Library read(String network, String procedure, String rules) {
        List<Source> sources = List.of(
                new Source("overhead.equipment", file("shared/equipment/overhead.equipment")),
                new Source("net.network", network),
                new Source("test.rules", rules),
                new Source("p.procedure", procedure));
        Library library = new Reader().readSources(sources);
        assertEquals(List.of(), library.problems());
        return library;
    }

    private static String file(String path) {
        try {
            return Files.readString(Path.of(path));
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    static MadePositions positions(String network, String name, String device, long seed) {
        Library library = read(
                network,
                PROCEDURE.replace("%DEVICE%", device).replace("%NETWORK%", name),
                RULE);
        return new MadePositions(
                new Draw(seed),
                new MadeCase.Read(library.procedures().get("p"), library.networks().get(name)));
    }

    @TestFactory
    Stream<DynamicTest> smallNetworks() {
        return IntStream.range(0, 60).boxed().flatMap(seed -> Stream.concat(
                Stream.of(DynamicTest.dynamicTest("pole " + seed, () -> compare(positions(POLE, "net", "r", seed), true))),
                IntStream.of(seed % 6).mapToObj(half -> DynamicTest.dynamicTest(
                        "town, clock " + (2 * half + 1) + ", " + seed,
                        () -> compare(positions(town(2 * half + 1), "net", "r", seed), true)))));
    }

    static String town(int clock) {
        return TOWN.replace("%CLOCK%", Integer.toString(clock));
    }

    /** Open banks, single-phase transformers, spacings, and a neutral that is switched along. */
    static final String ODD = """
            language 1
            network net
            uses overhead
            system voltage 12.47 kV, frequency 60 Hz
            source bus at s-0, phases ABC, supply grid, fault level 140 MVA
            recloser r from s-0 to s-1, phases ABCN, single-phase units, coil 50 A
            line l-1 from s-1 to s-2, phases ABCN, length 2.5 km, conductor acsr-336, spacing top-500-bac
            line l-2 from s-2 to s-3, phases BC, length 1.5 km, conductor acsr-2
            transformer open-delta from s-2 to shop, phases ABC, open delta to open delta, windings AB and CA, rating 100 kVA, low voltage 480 V, impedance 3 %
            transformer open-wye from s-3 to barn, phases BC, open wye to open delta, clock 1, rating 50 kVA, low voltage 240 V, impedance 2.5 %
            transformer lamp from s-2 to street, phases A, single-phase, rating 25 kVA, low voltage 240 V, impedance 2 %
            transformer pump from s-2 to well, phases CA, single-phase, rating 25 kVA, low voltage 240 V, impedance 2 %
            load shop-load at shop, phases ABC, 40 kW, 12 kvar, delta, 1 customer
            load barn-load at barn, phases ABC, 20 kW, 6 kvar, delta, 1 customer
            load street-load at street, phases A, 8 kW, 1 kvar, 1 customer
            switch river from s-3 to s-4, phases BC
            load rest at s-4, phases BC, 30 kW, 6 kvar, grounded wye, 4 customers
            """;

    @TestFactory
    Stream<DynamicTest> oddBanksAndSwitchedNeutrals() {
        return IntStream.range(0, 12).mapToObj(seed -> DynamicTest.dynamicTest(
                "odd " + seed, () -> compare(positions(ODD.replace("clock 1,", "clock " + (1 + 2 * (seed % 6)) + ","), "net", "r", seed), true, true)));
    }

    /** A long feeder with a bank whose control finds its taps, and a customer's generator beyond it. */
    static final String FARM = """
            language 1
            network net
            uses overhead
            system voltage 12.47 kV, frequency 60 Hz
            load case light 30 %
            source bus at s-0, phases ABC, supply grid, fault level 90 MVA
            line l-1 from s-0 to s-1, phases ABC, length 6 km, conductor acsr-4-0
            regulator vr from s-1 to s-2, phases ABC, rating 219 A, setting 122 V, bandwidth 2 V, compensator resistance 3 V, compensator reactance 5 V
            disconnect r from s-2 to s-3, phases ABC, single-phase units
            line l-2 from s-3 to s-4, phases ABC, length 5 km, conductor acsr-4-0
            switch river from s-4 to s-5, phases ABC
            load village at s-5, phases ABC, A 420 kW 140 kvar, B 300 kW 90 kvar, C 360 kW 130 kvar, 80 customers
            load mill at s-3, phases ABC, 240 kW, 100 kvar, delta, 1 customer
            generator biogas at s-4, phases ABC, 200 kW, 40 kvar
            generator roof at s-3, phases B, 12 kW
            """;

    @Test
    void tapsThatControlsFindAndGeneratorsThatRun() {
        int restless = 0;
        for (int seed = 0; seed < 12; seed++) {
            try {
                compare(positions(FARM, "net", "r", seed), true);
            } catch (PowerException hunting) {
                // With the village cut off and the generator running alone a control may step to and fro for ever.
                assertTrue(hunting.getMessage().contains("come to no rest"), hunting::getMessage);
                restless++;
            }
        }
        assertTrue(restless <= 3, restless + " positions in which controls hunt");
    }

    /** With everything closed both controls end within their band: 122 V with 1 V on either side, past the drop that they see. */
    @Test
    void aControlEndsWithinItsBand() {
        PlainFlow flow = plain(FARM, Map.of());
        for (Conductor p : Phases.ABC) {
            Cx out = flow.into(flow.piece("vr " + p), "s-2/" + p).times(-1.0 / 219);
            double seen = flow.volts("s-2/" + p)
                    .times(120 / (12470 / Math.sqrt(3)))
                    .minus(new Cx(3, 5).times(out))
                    .size();
            assertEquals(122, seen, 1, "phase " + p);
        }
    }

    /** Open wye to open delta: the one voltage that is there from line to line has the lag that the clock says. */
    @Test
    void anOpenBankHasItsClock() {
        for (int clock = 1; clock < 12; clock += 2) {
            PlainFlow flow = plain(ODD.replace("clock 1,", "clock " + clock + ","), Map.of());
            Cx high = flow.volts("s-0/A").minus(flow.volts("s-0/B"));
            Cx lag = high.over(flow.volts("barn/A").minus(flow.volts("barn/B")));
            double hours = Math.toDegrees(Math.atan2(lag.im(), lag.re())) / 30;
            assertEquals(0, Math.IEEEremainder(hours - clock, 12), 0.2, "lag of " + hours);
        }
    }

    /** The published 13-node feeder, which the fast load flow is held against elsewhere. */
    @TestFactory
    Stream<DynamicTest> thePublishedFeeder() {
        return IntStream.range(0, 6).mapToObj(seed -> DynamicTest.dynamicTest("feeder " + seed, () -> compare(
                positions(file("src/test/resources/outside/ieee13/ieee13.network"), "ieee-13", "sw-671", seed), true)));
    }

    /** Both give every bank the clock that it states, and draw one phase's load from the same phases. */
    @TestFactory
    Stream<DynamicTest> everyClock() {
        Stream<String> odd = Stream.of("delta to grounded wye", "delta to ungrounded wye", "grounded wye to delta");
        Stream<String> even = Stream.of("grounded wye to grounded wye", "delta to delta", "ungrounded wye to ungrounded wye");
        return Stream.concat(odd.flatMap(c -> clocks(c, 1)), even.flatMap(c -> clocks(c, 0)));
    }

    private static Stream<DynamicTest> clocks(String connections, int first) {
        return IntStream.range(0, 6).map(i -> first + 2 * i).mapToObj(clock -> DynamicTest.dynamicTest(
                connections + ", clock " + clock, () -> {
                    String network = """
                            language 1
                            network net
                            uses overhead
                            system voltage 12.47 kV, frequency 60 Hz
                            source bus at s-0, phases ABC, supply grid, fault level 140 MVA
                            recloser r from s-0 to s-1, phases ABC, single-phase units, coil 100 A
                            switch river from s-1 to s-2, phases ABC
                            transformer t from s-2 to hall, phases ABC, %s, clock %d, rating 300 kVA, low voltage 480 V, impedance 4 %%
                            load three at hall, phases ABC, 60 kW, 20 kvar, delta, 1 customer
                            load pair at hall, phases AB, 12 kW, 4 kvar, delta, 1 customer
                            """.formatted(connections, clock).replace("load three", "load town");
                    PlainFlow flow = plain(network, Map.of());
                    Cx high = flow.volts("s-0/A").minus(flow.volts("s-0/B"));
                    Cx low = flow.volts("hall/A").minus(flow.volts("hall/B"));
                    Cx lag = high.over(low);
                    double hours = Math.toDegrees(Math.atan2(lag.im(), lag.re())) / 30;
                    assertEquals(0, Math.IEEEremainder(hours - clock, 12), 0.1, "lag of " + hours);
                    for (int seed = 0; seed < 3; seed++) {
                        compare(positions(network, "net", "r", seed), false, true);
                    }
                }));
    }

    @TestFactory
    Stream<DynamicTest> theTerritory() {
        return IntStream.range(0, 4).mapToObj(seed -> DynamicTest.dynamicTest("territory " + seed, () -> compare(
                positions(file("shared/networks/heron-vale.network"), "heron-vale", "r-52", seed), false)));
    }

    private static final String OVER_R = """
            language 1
            procedure p revision 1
            title "x"
            keeps test
            crew
              op "Operator", in charge
            temporary
              bypass-jumper J for each phase of r
            proved on net
            stage "x"
              op installs J around r, line to line
              op opens r
              op opens river
            """;

    private static Agreement.Both both(String network, String rule) {
        String rules = "language 1\nrulebook test revision 1\nrule figure\n  " + rule + "\n  says \"x\"\n  because \"x\"\n";
        Library library = read(network, OVER_R, rules);
        Procedure procedure = library.procedures().get("p");
        return Agreement.check(procedure, library.networks().get("net"), procedure.proofs().get(0), rule);
    }

    private static boolean kept(String rule) {
        return kept(POLE, rule);
    }

    private static boolean kept(String network, String rule) {
        return !both(network, rule).plain().roots().containsKey("figure");
    }

    @Test
    void bothJudgeRulesAlike() {
        String limits = POLE.replace("load case light", "limits voltage 95 % to 105 %\nload case light");
        assertTrue(kept("always for any recloser D, the current through D is at most 40 A"));
        assertFalse(kept("always for any recloser D, the current through D on B is at least 8 A"), "light load");
        assertFalse(kept("always for any bypass-jumper J, the current through J is at most 5 A"));
        assertTrue(kept("always for any bypass-jumper J, the loading of J is at most 40 %"));
        assertFalse(kept("always for any recloser D, the residual current through D is below 0.1 A"));
        assertTrue(kept("always for any line M, for every phase P of M, the current through M on P is at most the ampacity of M"));
        assertTrue(kept(limits, "always for any line M, the loading of M is at most 50 %"));
        assertFalse(kept("always for any load L, for every phase P of L, the voltage at L on P is at least 95 % of the nominal voltage of L"));
        assertTrue(kept(limits, "always for any load L, the voltage at L is at most the upper voltage limit of L"));
        assertFalse(kept(limits, "always for any load L, the voltage at L is at least the lower voltage limit of L"));
        assertFalse(kept("always for any load L, the voltage at L is at most the upper voltage limit of L"), "not stated");
        assertTrue(kept("at the start for every load L, the fault current at L is at least 500 A"));
        assertFalse(kept("always for any switch S, the voltage across S is below 3 kV"));
    }

    /** A lead and a bushing have the nominal voltage of their side, and what a fault there draws. */
    @Test
    void figuresAtBushings() {
        String bushing = "always for any recloser D, the %s source bushing of D is %s";
        assertFalse(kept(bushing.formatted("voltage at the", "below 90 % of the nominal voltage of the source bushing of D")));
        assertTrue(kept(bushing.formatted("voltage at the", "at least 90 % of the nominal voltage of the source bushing of D")));
        assertTrue(kept(bushing.formatted("fault current at the", "at least 1 kA")));
    }

    /** A side that has no phase takes those of the other; a phase said on the right is meant. */
    @Test
    void phasesOfEitherSide() {
        assertFalse(kept("always for any recloser D, 10 A is at least the current through D"));
        assertTrue(kept("always for any recloser D, 40 A is at least the current through D"));
        assertFalse(kept("at the start for every recloser D, the current through D on B is below the current through D on A"));
        assertTrue(kept("at the start for every recloser D, the current through D on A is below the current through D on B"));
    }

    /**
     * By hand: 60 kW and 21 kvar at 7.2 kV nominal are 63.57 kVA, that is 8.83 A; the residual current of the source is no
     * more than that of the unequal loads. A coil of 100 A has 0.0305 ohm, a jumper with its two clamps 0.002: of the current
     * I the coil keeps I * 0.002 / |0.002 + 0.012 + 2 * 2 * 0.00005 + j 0.028|.
     */
    @Test
    void byHand() {
        PlainFlow flow = plain(POLE, Map.of());
        double lane = 63.57e3 / flow.volts("t-2/B").size();
        assertEquals(lane, through(POLE, flow, "f", Conductor.B), 0.01);
        Cx all = amperes(POLE, flow, "r", Conductor.B);
        PlainFlow bridged = plain(POLE, Map.of("clamp J B 1", "s-2/B", "clamp J B 2", "s-3/B"));
        Cx coil = new Cx(0.012 + 4 * 0.00005, 0.028);
        Cx share = Cx.real(0.002).over(coil.plus(Cx.real(0.002)));
        assertEquals(all.times(share).size(), amperes(POLE, bridged, "r", Conductor.B).size(), 0.002);
    }

    static void compare(MadePositions made, boolean faults) {
        compare(made, faults, false);
    }

    private static void compare(MadePositions made, boolean faults, boolean floating) {
        Electric electric = new Electric(made.grid(), c -> true, made::isClosed);
        PowerModel model = PowerModel.of(made.grid());
        PowerStates states = new PowerStates(model, electric.cells(), made::isClosed);
        PlainFigures plain = made.figures();
        for (int c = 0; c < model.cases().size(); c++) {
            FlowSolution fast = states.solve(states.state(electric.startSet(), c, made::neutral))
                    .solution()
                    .orElse(null);
            PlainFlow slow = plain.flow(c);
            String at = "case " + c + ": ";
            assertEquals(fast != null, slow.settled(), at + "solved");
            if (fast == null) {
                unsolved++;
                continue;
            }
            solved++;
            for (int v = 0; v < made.grid().vertices().size(); v++) {
                Vertex vertex = made.grid().vertices().get(v);
                Complex volts = fast.voltage(model.terminal(v));
                Cx slowly = slow.volts(MadePositions.name(vertex));
                double size = floating ? FLOATING : volts.abs();
                double off = Math.max(
                        same(volts.re(), slowly.re(), size, at + vertex), same(volts.im(), slowly.im(), size, at + vertex));
                worstVolts = floating ? worstVolts : Math.max(worstVolts, off);
            }
            for (Contact contact : made.grid().contacts()) {
                if (made.isClosed(contact)) {
                    double amperes = fast.current(model.element(contact), 0).abs();
                    Joint joint = made.joint(contact);
                    worstAmperes = Math.max(worstAmperes, same(amperes, slow.through(joint).size(), at + joint));
                }
            }
            branches(made, model, fast, slow, at);
        }
        if (faults) {
            for (int v = 0; v < made.grid().vertices().size(); v++) {
                double amperes = states.faultCurrent(states.state(electric.startSet(), 0, made::neutral), v);
                String place = MadePositions.name(made.grid().vertices().get(v));
                same(amperes, PlainPieces.ground(place) == null ? 0 : plain.flow(0).fault(place), "fault at " + place);
            }
        }
    }

    /** {@return the plain flow of the normal state with some clamps on} */
    static PlainFlow plain(String network, Map<String, String> clamps) {
        Plain it = new Plain(network, clamps);
        return it.figures.flow(0);
    }

    static Voltages levels(String network) {
        return new Plain(network, Map.of()).figures.circuit().now();
    }

    static PlainPieces pieces(String network) {
        return new Plain(network, Map.of()).wiring.pieces();
    }

    private static double through(String network, PlainFlow flow, String device, Conductor phase) {
        return amperes(network, flow, device, phase).size();
    }

    private static Cx amperes(String network, PlainFlow flow, String device, Conductor phase) {
        return flow.through(Asking.pole(new Plain(network, Map.of()).wiring, device, phase));
    }

    /** The plain evaluator's view of the normal state. */
    private static final class Plain {
        private final Wiring wiring;
        private final PlainFigures figures;

        Plain(String network, Map<String, String> clamps) {
            Library library = read(network, OVER_R, RULE);
            Procedure procedure = library.procedures().get("p");
            Bound bound = Agreement.bound(procedure, library.networks().get("net"), procedure.proofs().get(0));
            Names names = new Names(bound);
            Map<String, Integer> facts = new HashMap<>(new Normal(names).facts());
            clamps.forEach((fact, place) -> facts.put(fact, names.number(place)));
            this.wiring = new Wiring(names, List.of(), clamps);
            Circuit circuit = new Circuit(names, wiring, new Facts(facts));
            Scenery scenery = new Scenery(names, wiring, Set.of());
            scenery.startsFrom(new Facts(facts));
            this.figures = new PlainFigures(scenery, circuit);
        }
    }

    private static void branches(MadePositions made, PowerModel model, FlowSolution fast, PlainFlow slow, String at) {
        for (Element element : made.network().elements()) {
            if (element instanceof Element.Line || element instanceof Element.Regulator) {
                Element.Branch branch = (Element.Branch) element;
                for (Conductor p : element.phases().and(Phases.LIVE)) {
                    int[] place = model.branch(element.name(), p).orElseThrow();
                    double amperes = fast.current(place[0], place[1]).abs();
                    boolean line = element instanceof Element.Line;
                    PlainPieces.Piece piece = slow.piece(line ? element.name() : element.name() + " " + p);
                    double slowly = slow.into(piece, Names.node(branch.from(), p)).size();
                    worstAmperes = Math.max(worstAmperes, same(amperes, slowly, at + element.name() + " " + p));
                }
            }
        }
    }

    private static double same(double fast, double slow, String what) {
        return same(fast, slow, fast, what);
    }

    private static double same(double fast, double slow, double size, String what) {
        assertEquals(fast, slow, Math.max(ABSOLUTE, PART * Math.abs(size)), what);
        return Math.abs(fast - slow);
    }

    @AfterAll
    static void theyAreFarCloserThanAskedFor() {
        assertTrue(worstAmperes < 1e-5 && worstVolts < 1e-3, worstAmperes + " A, " + worstVolts + " V");
        assertTrue(unsolved * 20 <= solved, solved + " solved, " + unsolved + " not");
    }
}
