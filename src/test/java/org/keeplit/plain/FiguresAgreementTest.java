package org.keeplit.plain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.keeplit.electric.Contact;
import org.keeplit.electric.Electric;
import org.keeplit.electric.flow.FlowSolution;
import org.keeplit.electric.power.PowerModel;
import org.keeplit.electric.power.PowerStates;
import org.keeplit.language.Library;
import org.keeplit.language.Reader;
import org.keeplit.network.Conductor;
import org.keeplit.network.Element;
import org.keeplit.program.Vertex;
import org.keeplit.text.Source;

/** Every current and every voltage, and fault currents, from both load flows, with contacts in many positions. */
class FiguresAgreementTest {
    private static final double PART = 1e-6;
    private static final double ABSOLUTE = 1e-4;
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
                "language 1\nrulebook none revision 1\nrule none\n  always every load L is supplied\n  says \"{L}\"\n  because \"x\"\n");
        return new MadePositions(
                new Draw(seed),
                new MadeCase.Read(library.procedures().get("p"), library.networks().get(name)));
    }

    @TestFactory
    Stream<DynamicTest> smallNetworks() {
        return IntStream.range(0, 60).boxed().flatMap(seed -> Stream.concat(
                Stream.of(DynamicTest.dynamicTest("pole " + seed, () -> compare(positions(POLE, "net", "r", seed), true))),
                IntStream.of(1, 5, 7, 11).filter(c -> (seed + c / 2) % 4 == 0).mapToObj(clock -> DynamicTest.dynamicTest(
                        "town, clock " + clock + ", " + seed,
                        () -> compare(positions(town(clock), "net", "r", seed), true)))));
    }

    static String town(int clock) {
        return TOWN.replace("%CLOCK%", Integer.toString(clock));
    }

    @TestFactory
    Stream<DynamicTest> theTerritory() {
        return IntStream.range(0, 4).mapToObj(seed -> DynamicTest.dynamicTest("territory " + seed, () -> compare(
                positions(file("shared/networks/heron-vale.network"), "heron-vale", "r-52", seed), false)));
    }

    private static void compare(MadePositions made, boolean faults) {
        Electric electric = new Electric(made.grid(), c -> true, made::isClosed);
        PowerModel model = PowerModel.of(made.grid());
        PowerStates states = new PowerStates(model, electric.cells(), made::isClosed);
        PlainFigures plain = made.figures();
        for (int c = 0; c < model.flow().loadCases().size(); c++) {
            FlowSolution fast = states.solve(electric.startSet(), c).solution().orElse(null);
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
                double volts = fast.voltage(model.terminal(v)).abs();
                worstVolts = Math.max(worstVolts, same(volts, slow.volts(MadePositions.name(vertex)).size(), at + vertex));
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
                double amperes = states.faultCurrent(electric.startSet(), v);
                String place = MadePositions.name(made.grid().vertices().get(v));
                same(amperes, PlainPieces.ground(place) == null ? 0 : plain.flow(0).fault(place), "fault at " + place);
            }
        }
    }

    private static void branches(MadePositions made, PowerModel model, FlowSolution fast, PlainFlow slow, String at) {
        for (Element element : made.network().elements()) {
            if (element instanceof Element.Line || element instanceof Element.Regulator) {
                Element.Branch branch = (Element.Branch) element;
                for (Conductor p : element.phases()) {
                    int[] place = model.branch(element.name(), p).orElseThrow();
                    double amperes = fast.current(place[0], place[1]).abs();
                    PlainPieces.Piece piece = made.pieces()
                            .piece(element instanceof Element.Line ? element.name() : element.name() + " " + p);
                    double slowly = slow.into(piece, Names.node(branch.from(), p)).size();
                    worstAmperes = Math.max(worstAmperes, same(amperes, slowly, at + element.name() + " " + p));
                }
            }
        }
    }

    private static double same(double fast, double slow, String what) {
        assertEquals(fast, slow, Math.max(ABSOLUTE, PART * Math.abs(fast)), what);
        return Math.abs(fast - slow);
    }

    @AfterAll
    static void somethingWasCompared() {
        System.out.println("worst " + worstAmperes + " A, " + worstVolts + " V, " + solved + " solved, " + unsolved + " not");
    }
}
