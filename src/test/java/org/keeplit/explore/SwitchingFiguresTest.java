package org.keeplit.explore;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.keeplit.Keeplit;
import org.keeplit.language.Library;
import org.keeplit.language.Reader;
import org.keeplit.outcome.Limits;
import org.keeplit.outcome.Watcher;
import org.keeplit.text.ProblemPrinter;
import org.keeplit.text.Problems;
import org.keeplit.text.Source;
import org.keeplit.verdict.Judgement;

/** Figures of what opening and closing would do, on networks small enough to be worked out by hand. */
class SwitchingFiguresTest {
    private static final String HEAD =
            """
            language 1
            network pole "A test"
            uses overhead, own
            system voltage 12.47 kV, frequency 60 Hz, fault resistance 20 ohm, cold load factor 2.5, inrush factor 10
            source bus at s-0, phases ABC, supply grid, fault level 100 MVA, reactance ratio 8
            breaker feeder from s-0 to s-1, phases ABC, pickup 480 A, ground pickup 240 A, clearing time 1 s
            """;

    private static final String PROCEDURE =
            """
            language 1
            procedure P revision 1
            title "A test"
            keeps test-rules
            crew
              op "Operator", in charge
            %s
            proved on pole
            stage "All"
            """;

    private static Judgement judge(String network, String equipment, String temporary, String rules, String steps) {
        Library library = new Reader().readSources(List.of(
                new Source("overhead.equipment", Small.read("shared/equipment/overhead.equipment")),
                new Source("own.equipment", "language 1\nequipment own \"Own\"\n" + equipment),
                new Source("pole.network", HEAD + network),
                new Source("test.rules", "language 1\nrulebook test-rules revision 1\n" + rules),
                new Source("p.procedure", PROCEDURE.formatted(temporary) + steps)));
        Problems problems = new Problems();
        library.problems().forEach(problems::add);
        List<Judgement> all = Keeplit.check(library, Limits.USUAL, Watcher.NOBODY, problems);
        assertEquals("", ProblemPrinter.print(problems.sorted()));
        return all.get(0);
    }

    private static String rule(String head, String condition) {
        return "rule figure\n  " + head + "\n  require " + condition + "\n  says \"x\"\n  because \"x\"\n";
    }

    private static Map<String, Integer> roots(String network, String rules, String steps) {
        return Small.roots(judge(network, "", "", rules, steps));
    }

    private static void between(String network, String head, String figure, double low, double high, String unit, String steps) {
        String within = figure + " is between " + low + " " + unit + " and " + high + " " + unit;
        Judgement judged = judge(network, "", "", rule(head, within), steps);
        assertFalse(Small.roots(judged).containsKey("figure"), () -> judged.outcome().findings().get(0).why().toString());
        String less = figure + " is below " + low + " " + unit;
        assertTrue(Small.roots(judge(network, "", "", rule(head, less), steps)).containsKey("figure"), "and not less");
    }

    private static final String LOOP =
            """
            line west from s-1 to w-1, phases ABC, length 2 km, resistance 0.2 ohm per km, reactance 0.4 ohm per km
            line east from s-1 to e-1, phases ABC, length 1 km, resistance 0.2 ohm per km, reactance 0.4 ohm per km
            switch s from w-1 to w-2, phases ABC
            tie t from w-2 to e-1, phases ABC, open
            load mill at w-2, phases ABC, 600 kW, 12 customers, constant current
            """;

    /**
     * 600 kW at 12.47 kV are 27.8 A. Closed, the tie takes two thirds of them, by 1 km against 2 km. With the loop open the voltage
     * across the tie is the drop of 27.8 A in 2 km of 0.447 ohm: 24.9 V. With the switch open in a closed loop all flows through the
     * tie, and across the switch stands the drop in 1 km: 12.4 V; with the loop open it is the whole 7200 V.
     */
    @Test
    void theLoopCurrentOfATie() {
        between(LOOP, "before closing any tie T on phase P", "the closing current through T on P", 18.3, 18.7, "A", "  op closes t\n");
        between(LOOP, "before closing any tie T on phase P", "the voltage across T on P", 24.5, 25.2, "V", "  op closes t\n");
        between(LOOP, "before closing any tie T on phase P", "the recovery voltage across T on P", 24.5, 25.2, "V", "  op closes t\n");
        between(LOOP, "before opening any switch S on phase P", "the recovery voltage across S on P", 7.1, 7.3, "kV", "  op opens s\n");
        String closed = LOOP.replace("phases ABC, open", "phases ABC");
        between(closed, "before opening any switch S on phase P", "the recovery voltage across S on P", 12.2, 12.6, "V", "  op opens s\n");
    }

    /** Closed, what flows is the current; open, what stands across is the voltage across: nothing else is asked. */
    @Test
    void theFigureOfWhatIsSoAlreadyIsTheFigureNow() {
        String same = "at the start for every switch S, the closing current through S is %s the current through S";
        assertEquals(Map.of(), roots(LOOP, "rule r\n  " + same.formatted("at most") + "\n  says \"x\"\n  because \"x\"\n", "  op opens s\n"));
        assertEquals(Map.of(), roots(LOOP, "rule r\n  " + same.formatted("at least") + "\n  says \"x\"\n  because \"x\"\n", "  op opens s\n"));
    }

    private static final String TURNED =
            """
            transformer turn from s-1 to x-1, phases ABC, delta to grounded wye, clock 1, rating 5 MVA, low voltage 12.47 kV, impedance 6 %
            tie t from x-1 to s-1, phases ABC, open
            load mill at x-1, phases ABC, 30 kW, 12 customers
            """;

    private static final String CLOSE = "rule makes-within-duty\n  before making any contact K on phase P\n  require K is fit to close on P\n"
            + "  says \"{K} would close as {closing duty of K}\"\n  because \"x\"\n";

    /** Two sides of one supply behind different vector groups: 30 degrees, which at 7.2 kV are 3.73 kV. */
    @Test
    void vectorGroupsThatDiffer() {
        Judgement judged = judge(TURNED, "", "", CLOSE, "  op closes t\n");
        String sentence = judged.outcome().findings().get(0).sentence();
        assertTrue(sentence.matches("t would close as cross-phase \\(the two sides are 30 degrees apart, 3\\.7[0-9]+ kV across\\)"), sentence);
        between(TURNED, "before closing any tie T on phase P", "the angle across T on P", 29.5, 30.5, "degrees", "  op closes t\n");
    }

    /** A lead of phase B on the line of phase C: 120 degrees, and the full voltage from line to line. */
    @Test
    void phasesThatMeet() {
        String rolled =
                """
                recloser r from s-1 to s-2, phases ABC, single-phase units
                line out from s-2 to s-3, phases ABC, length 1 km, conductor acsr-336
                load mill at s-3, phases ABC, 300 kW, 12 customers
                """;
        String steps = "  op installs J from the source-side line of r on B to the load-side line of r on C\n";
        Judgement judged = judge(rolled, "", "temporary\n  bypass-jumper J for each phase of r", CLOSE, steps);
        String sentence = judged.outcome().findings().get(0).sentence();
        assertTrue(sentence.matches("a clamp of J would close as cross-phase \\(the two sides are 120 degrees apart, 12\\.[45][0-9]* kV across\\)"), sentence);
    }

    private static final String REGULATOR =
            """
            regulator vr from s-1 to s-2, phases ABC, rating 219 A, tap A 1, tap B 4, tap C 0
            bypass-switch y from s-1 to s-2, phases ABC, single-phase units, open
            load mill at s-2, phases ABC, 300 kW, 12 customers
            """;

    /**
     * One step off neutral leaves 0.625 % of 7200 V, 45 V, across a bypass, and only the regulator's own impedance limits the
     * current: a ten-thousandth of 7200 V / 219 A is 3.29 mohm, with the switch's 0.2 mohm some 12.9 kA. Four steps would drive
     * four times that, but the source then gives a fortieth of it, 1.1 kA, through its 1.555 ohm: what is left of 7200 V drives
     * some 42 kA. On neutral nothing circulates.
     */
    @Test
    void aRegulatorBypassedOffNeutral() {
        String head = "before closing any bypass-switch Y on phase P";
        between(REGULATOR, head, "the closing current through Y on P", 12.9, 13.9, "kA", "  op closes y on A\n");
        between(REGULATOR, head, "the closing current through Y on P", 40, 44, "kA", "  op closes y on B\n");
        between(REGULATOR, head, "the voltage across Y on P", 44, 45.5, "V", "  op closes y on A\n");
        String atMost = rule(head, "the closing current through Y on P is at most 20 A");
        assertEquals(Map.of(), roots(REGULATOR, atMost, "  op closes y on C\n"));
        assertEquals(Map.of(), roots(REGULATOR, atMost, "  op sets vr to manual\n  op runs vr to neutral\n  op closes y on B\n"));
    }

    /**
     * Three kilometres of a cable of 0.25 microfarad a kilometre at 7200 V and 60 Hz charge with 2.04 A; of 100 uS a kilometre as
     * stated with 2.16 A.
     */
    @Test
    void theChargingCurrentOfACable() {
        String cable =
                """
                switch s from s-1 to c-1, phases ABC
                cable under from c-1 to c-2, phases ABC, length 3 km, conductor cable-1-0
                load mill at s-1, phases ABC, 30 kW, 12 customers
                """;
        String head = "before opening any switch S on phase P";
        between(cable, head, "the current through S on P", 1.99, 2.08, "A", "  op opens s\n");
        String stated = cable.replace("conductor cable-1-0", "resistance 0.3 ohm per km, reactance 0.12 ohm per km, susceptance 100 uS per km");
        between(stated, head, "the current through S on P", 2.12, 2.2, "A", "  op opens s\n");
        String untold = cable.replace("conductor cable-1-0", "resistance 0.3 ohm per km, reactance 0.12 ohm per km");
        between(untold, head, "the current through S on P", 1.99, 2.08, "A", "  op opens s\n");
    }

    private static final String LATERAL =
            """
            transformer t from s-2 to hall, phases ABC, delta to grounded wye, clock 1, rating 300 kVA, low voltage 480 V, impedance 4 %
            recloser r from s-1 to s-2, phases ABC, single-phase units, open, coil 50 A
            load mill at s-2, phases ABC, 300 kW, 12 customers, grounded wye, constant current
            """;

    /** 300 kW are 13.9 A, cold 34.7 A; a bank of 300 kVA has 13.9 A rated and draws ten times that. A coil of 50 A trips at 100 A. */
    @Test
    void coldLoadAndInrush() {
        String head = "before closing any recloser R on phase P";
        between(LATERAL, head, "the cold-load current through R on P", 34, 36.5, "A", "  op closes r\n");
        between(LATERAL, head, "the inrush current through R on P", 138, 139.5, "A", "  op closes r on A\n");
        String trip = "the cold-load current through R on P is at most the pickup of R";
        assertEquals(Map.of(), roots(LATERAL, rule(head, trip), "  op closes r\n"));
        String more = LATERAL.replace("300 kW", "900 kW");
        assertEquals(Map.of("figure", 1), roots(more, rule(head, trip), "  op closes r\n"));
    }

    /**
     * The source has 1.555 ohm and each kilometre 0.447 ohm of positive sequence, three times that of zero sequence: at the end of
     * 10 km a bolted fault between two phases draws 12.47 kV over twice the impedance on the way. Through 20 ohm to ground it is less.
     */
    @Test
    void whatTheBreakerSeesBeyondABypassedRecloser() {
        String network =
                """
                line near from s-1 to s-2, phases ABC, length 4 km, resistance 0.2 ohm per km, reactance 0.4 ohm per km
                recloser r from s-2 to s-3, phases ABC, ganged
                line out from s-3 to s-4, phases ABC, length 6 km, resistance 0.2 ohm per km, reactance 0.4 ohm per km
                recloser q from s-4 to s-5, phases ABC, ganged
                line far from s-5 to s-6, phases ABC, length 6 km, resistance 0.2 ohm per km, reactance 0.4 ohm per km
                load mill at s-6, phases ABC, 300 kW, 12 customers
                """;
        // Beyond R the section ends at Q; the fault between two phases at its end, then the one through 20 ohm to ground.
        double r = 1.555 / Math.hypot(1, 8) + 2;
        double x = 1.555 * 8 / Math.hypot(1, 8) + 4;
        double between = 12470 / 2 / Math.hypot(r, x);
        between(network, "before opening any recloser R on phase P", "for every breaker F, the smallest fault current through F beyond R",
                0.995 * between, 1.005 * between, "A", "  op opens r\n");
        // Of the source's zero sequence as much as its positive; of the line's three times.
        double ground = 3 * 7200 / Math.hypot(3 * 1.555 / Math.hypot(1, 8) + 5 * 2 + 60, 3 * 1.555 * 8 / Math.hypot(1, 8) + 5 * 4);
        between(network, "before opening any recloser R on phase P", "for every breaker F, the smallest ground fault current through F beyond R",
                0.99 * ground, 1.01 * ground, "A", "  op opens r\n");
    }

    private static final String GROUNDS =
            """
            switch s from s-1 to s-2, phases ABC
            load mill at s-2, phases ABC, 300 kW, 12 customers
            """;

    /** 100 MVA are 4630 A. A set of 9.2 kA for 250 ms stands 4.6 kA for the second that the breaker takes; one of 9.3 kA stands 4650 A. */
    @Test
    void whatAGroundStands() {
        String rules = "rule stands\n  before putting the ground end on with any ground G on phase P\n"
                + "  require the available fault current at G on P is at most the short-time withstand of G\n  says \"x\"\n  because \"x\"\n";
        String kind = "kind set is a protective ground\n  breaks nothing\n  makes nothing\n  rating short-time %s kA for 250 ms\n";
        String steps = "  op opens s\n  op applies G to the load-side line of s on A, ground end first\n";
        String temporary = "temporary\n  set G for each phase of s";
        assertEquals(Map.of(), Small.roots(judge(GROUNDS, kind.formatted("9.3"), temporary, rules, steps)));
        assertEquals(Map.of("stands", 2), Small.roots(judge(GROUNDS, kind.formatted("9.2"), temporary, rules, steps)));
    }
}
