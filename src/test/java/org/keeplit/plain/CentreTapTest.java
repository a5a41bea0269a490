package org.keeplit.plain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.keeplit.language.Library;
import org.keeplit.procedure.Procedure;

/** Loads on the legs of a centre tap: levels, what a load from leg to leg feeds back, and figures by hand. */
class CentreTapTest {
    /** One unit from phase to neutral, one between two phases; loads on each leg and from leg to leg. */
    static final String LANE = """
            language 1
            network net
            uses overhead
            system voltage 12.47 kV, frequency 60 Hz
            limits voltage 90 % to 110 %
            load case light 40 %
            source bus at s-0, phases ABC, supply grid, fault level 140 MVA
            recloser r from s-0 to s-1, phases ABC, single-phase units, coil 50 A
            cutout f from s-1 to s-2, phases B, single-phase units
            transformer pot from s-2 to service, phases B, centre-tapped, rating 25 kVA, low voltage 240 V, resistance 1.2 %, reactance 1.5 %
            line drop from service to meter, phases X1X3, length 30 m, resistance 0.5 ohm per km, reactance 0.1 ohm per km
            disconnect river from meter to house, phases X1X3, single-phase units
            load lights at house, phases X1, constant impedance, 1.5 kW, 1 customer
            load sockets at house, phases X3, constant impedance, 2.4 kW, 1 customer
            load range at house, phases X1X3, delta, constant impedance, X1X3 5 kW 0 kvar, 1 customer
            transformer pair from s-1 to shop, phases CA, centre-tapped, rating 50 kVA, low voltage 240 V, impedance 2 %
            load shop-load at shop, phases X1X3, X1 6 kW 1 kvar, X3 3 kW 2 kvar, 1 customer
            generator roof at shop, phases X1X3, 4 kW
            """;

    private static final String NO_ROOF = LANE.replaceAll("generator roof.*\n", "");

    private static final String STEPS = """
            language 1
            procedure p revision 1
            title "x"
            keeps test
            crew
              op "Operator", in charge
            temporary
              bypass-jumper J for each phase of river
            proved on net
            stage "x"
            """;

    private static Map<String, Integer> roots(String network, String step, String rule) {
        String rules = "language 1\nrulebook test revision 1\nrule asked\n  " + rule + "\n  says \"x\"\n  because \"x\"\n";
        Library library = FiguresAgreementTest.read(network, STEPS + "  " + step + "\n", rules);
        Procedure procedure = library.procedures().get("p");
        return Agreement.check(procedure, library.networks().get("net"), procedure.proofs().get(0), rule)
                .plain()
                .roots();
    }

    private static boolean kept(String network, String step, String rule) {
        return !roots(network, step, rule).containsKey("asked");
    }

    private static boolean afterOpening(String rule) {
        return kept(NO_ROOF, "op opens river on X3", rule);
    }

    @Test
    void aLegThatIsOpenedIsFedThroughWhatHangsBetweenTheLegs() {
        assertTrue(afterOpening("at the end for every disconnect D, the load-side line of D is energized on X1"));
        assertTrue(afterOpening("at the end for every disconnect D, the load-side line of D is alive on X3"), "through the range");
        assertFalse(afterOpening("at the end for every disconnect D, the load-side line of D is energized on X3"));
        assertFalse(afterOpening("at the end for every load L, L is supplied"));
        String without = NO_ROOF.replaceAll("load range.*\n", "");
        assertTrue(kept(without, "op opens river on X3", "at the end for every disconnect D, the load-side line of D is dead on X3"));
    }

    /** Ohms by hand: the sockets have 120²/2400 = 6, the range 240²/5000 = 11.52; less than a volt is lost before them. */
    @Test
    void theOpenLegHasWhatTheRangeLeaves() {
        String rule = "at the end for every disconnect D, the voltage at the load-side line of D on X3 is %s %d V";
        assertTrue(afterOpening(rule.formatted("above", 39)), "119 V times 6 / 17.52 is 40.8 V");
        assertTrue(afterOpening(rule.formatted("below", 42)));
        assertTrue(afterOpening("at the end for every disconnect D, the nominal voltage of the load-side line of D is at most 120 V"));
        assertTrue(afterOpening("at the end for every disconnect D, the nominal voltage of the load-side line of D is at least 120 V"));
    }

    /** Opening the pot's cutout takes both legs; nothing is left to feed them. */
    @Test
    void withoutThePrimaryBothLegsAreDead() {
        assertTrue(kept(NO_ROOF, "op opens f", "at the end for every disconnect D, the load-side line of D is dead"));
        assertFalse(kept(LANE.replace("at shop, phases X1X3, 4 kW", "at house, phases X1, 4 kW"), "op opens f", "at the end for every cutout F, the load-side line of F is dead on B"));
    }

    /** The legs stand opposite one another, so what joins them is a short circuit of the whole secondary. */
    @Test
    void aJumperFromLegToLegIsCrossed() {
        String step = "op installs J from meter on X1 to meter on X3";
        assertTrue(roots(NO_ROOF, step, "before making any contact K on phase P\n  require K is fit to close on P").containsKey("asked"));
    }

    /**
     * By hand, per unit of a leg's 120 V and 25 kVA, so of 0.576 ohm: one leg alone has 1.5 times 1.2 % and 1.2 times 1.5 %
     * (Kersting, from memory). A load of 10 ohm on X1 with nothing else leaves 120 V times |10 / (10 + Z)|, and lifts X3 to
     * what the core has, 120 V times |(10 + Z1) / (10 + Z)|, Z1 = 0.576 (0.012 + j 0.006); the feeder is as good as stiff.
     */
    @Test
    void oneLegAloneByHand() {
        String network = """
                language 1
                network net
                uses overhead
                system voltage 12.47 kV, frequency 60 Hz
                source bus at s-0, phases ABC, supply grid, fault level 90000 MVA
                recloser r from s-0 to s-2, phases ABC, single-phase units, impedance 1 mohm
                transformer pot from s-2 to meter, phases B, centre-tapped, rating 25 kVA, low voltage 240 V, resistance 1.2 %, reactance 1.5 %
                disconnect river from meter to house, phases X1X3, single-phase units, impedance 0.001 mohm
                load lights at house, phases X1, constant impedance, 1.44 kW, 1 customer
                """;
        Cx z = new Cx(1.5 * 0.012, 1.2 * 0.015).times(0.576);
        Cx own = new Cx(0.012, 0.4 * 0.015).times(0.576);
        Cx load = Cx.real(10);
        double rated = 12_470 / Math.sqrt(3) / (12_470 / Math.sqrt(3)) * 120;
        double loaded = load.over(load.plus(z)).times(rated).size();
        double other = load.plus(own).over(load.plus(z)).times(rated).size();
        PlainFlow flow = FiguresAgreementTest.plain(network, Map.of());
        assertEquals(loaded, flow.volts("house/X1").size(), 2e-3);
        assertEquals(other, flow.volts("house/X3").size(), 2e-3);
        Cx ratio = flow.volts("meter/X1").over(flow.volts("meter/X3"));
        assertTrue(ratio.re() < -0.99, "opposite: " + ratio);
        assertEquals(120, FiguresAgreementTest.pieces(network).nominal("house/X1"), 1e-9);
    }

    /** From C to A the voltage stands at 150 degrees, so the first leg does, and the identity says 7 hours behind A. */
    @Test
    void aUnitBetweenTwoPhasesHasTheirAngle() {
        PlainFlow flow = FiguresAgreementTest.plain(NO_ROOF, Map.of());
        Cx ratio = flow.volts("shop/X1").over(flow.volts("s-0/A"));
        assertEquals(150, Math.toDegrees(Math.atan2(ratio.im(), ratio.re())), 2);
        Voltages levels = FiguresAgreementTest.levels(NO_ROOF);
        assertEquals(7, levels.hour("shop/X1"));
        assertEquals(1, levels.hour("shop/X3"));
    }

    @TestFactory
    Stream<DynamicTest> bothEvaluatorsGiveTheSameFigures() {
        return IntStream.range(0, 24).mapToObj(seed -> DynamicTest.dynamicTest(
                "lane " + seed,
                () -> FiguresAgreementTest.compare(
                        FiguresAgreementTest.positions(LANE, "net", seed % 2 == 0 ? "river" : "r", seed), true)));
    }
}
