package org.keeplit.explore;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.keeplit.outcome.TraceStep;
import org.keeplit.text.ProblemPrinter;
import org.keeplit.text.Problems;
import org.keeplit.verdict.Judgement;

/**
 * What trips by itself, on figures that can be worked out by hand: behind r 300 kW and 100 kvar at 12.47 kV are 14.64 A on each
 * phase, and 30 kW and 10 kvar at 7.2 kV on phase A are 4.39 A more, which is the residual. The textbook case (a unit with its
 * ground trip in service opens the phases that are not yet jumpered) is common practice, no source.
 */
class TripsTest {
    private static final String SUPPLIED =
            """
            rule supplied
              always every load L is supplied
              says "{L}, {customers of L}, loses supply"
              because "Test."
            """;

    private static final String JUMPER = "  op installs J around r on B, line to line\n";

    /** The pole with its recloser written anew. */
    private static String network(String recloser) {
        return Small.network()
                .replace("recloser r from s-2 to s-3, phases ABC, single-phase units, coil 100 A", recloser);
    }

    private static Judgement judge(String recloser, String header, String steps) {
        return judge(recloser, SUPPLIED, header, steps);
    }

    private static Judgement judge(String recloser, String rule, String header, String steps) {
        Problems problems = new Problems();
        List<Judgement> all = Small.judge(network(recloser), rule, header, steps, "", problems);
        assertEquals("", ProblemPrinter.print(problems.sorted()));
        return all.get(0);
    }

    private static String rule(String head) {
        return "rule asked\n  " + head + "\n  says \"x\"\n  because \"Test.\"\n";
    }

    private static Map<String, Integer> roots(String recloser, String header, String steps) {
        return Small.roots(judge(recloser, header, steps));
    }

    private static final String GANGED = "recloser r from s-2 to s-3, phases ABC, ganged, coil 50 A, ";

    @Test
    void jumperingOnePhaseTripsAGangedUnitWithItsGroundTripLive() {
        Judgement judged = judge(GANGED + "ground pickup 10 A", "", JUMPER);
        assertEquals(Map.of("supplied", 3), Small.roots(judged));
        TraceStep trip = judged.outcome().findings().get(0).trace().get(2);
        assertTrue(trip.byItself());
        assertEquals("r", trip.actor());
        assertTrue(trip.text().startsWith("trips by itself, on the residual current: anything from 4."), trip.text());
        assertTrue(trip.text().endsWith("pickup 10 A"), trip.text());
        // Phase B is jumpered and keeps its supply; A and C lose it.
        assertEquals(
                List.of("mill AC", "lane A"),
                trip.lost().stream().map(l -> l.load() + " " + l.phases()).toList());
    }

    @Test
    void blockedItDoesNotTrip() {
        String blocked = "starts with\n  given ground trip of r is blocked\n";
        assertEquals(Map.of(), roots(GANGED + "ground pickup 10 A", blocked, JUMPER));
    }

    @Test
    void aPickupOutOfReachOfAnyShareDoesNotTrip() {
        // All of B gone leaves A and C: 14.64 A and 4.39 A more, 19.03 A between them and 14.64 A at 120 degrees.
        assertEquals(Map.of(), roots(GANGED + "ground pickup 22 A", "", JUMPER));
        assertEquals(Map.of("supplied", 3), roots(GANGED + "ground pickup 16 A", "", JUMPER));
    }

    @Test
    void aSharedTripMayComeOrNot() {
        // Nothing forces it, so the second jumper goes on too, and only what may come is found.
        Judgement judged = judge(GANGED + "ground pickup 10 A", "", JUMPER + "  op installs J around r on C, line to line\n");
        assertTrue(judged.outcome().endings() > 0);
        assertEquals(Map.of("supplied", 3), Small.roots(judged));
    }

    @Test
    void singlePhaseUnitsTripEachByItself() {
        String low = "recloser r from s-2 to s-3, phases ABC, single-phase units, coil 50 A, minimum trip 12 A";
        Judgement judged = judge(low, rule("always every recloser D is closed on B"), OPEN, "  op closes gang\n");
        assertEquals(Map.of("asked", 2), Small.roots(judged));
        String trip = judged.outcome().findings().get(0).trace().get(1).text();
        assertTrue(trip.startsWith("trips by itself on phase B: 14.6"), trip);
    }

    private static final String OPEN = "starts with\n  given gang is open\n";

    @Test
    void whatReclosesIsHeldOrLockedOut() {
        String low = "recloser r from s-2 to s-3, phases ABC, ganged, coil 50 A, pickup 12 A";
        // It must trip; then it may hold again, and that is found at the end: closing, trip, reclosing.
        Judgement judged = judge(low, rule("at the end every recloser D is open"), OPEN, "  op closes gang\n");
        assertEquals(Map.of("asked", 3), Small.roots(judged));
        String blocked = OPEN + "  given reclosing of r is blocked\n";
        judged = judge(low, rule("at the end every recloser D is open"), blocked, "  op closes gang\n");
        assertEquals(Map.of(), Small.roots(judged));
        assertEquals(2, judged.outcome().states());
    }

    @Test
    void withinToleranceBothAreExplored() {
        // 19.03 A beside 18 A: less than a tenth above, so it may stay in.
        String near = "recloser r from s-2 to s-3, phases ABC, ganged, coil 50 A, pickup 18 A";
        String blocked = OPEN + "  given reclosing of r is blocked\n";
        Judgement judged = judge(near, rule("at the end every recloser D is closed"), blocked, "  op closes gang\n");
        assertEquals(Map.of("asked", 2), Small.roots(judged));
        assertEquals(2, judged.outcome().endings());
        // With a closer pickup it must go.
        judged = judge(near + ", pickup tolerance 2 %", rule("at the end every recloser D is closed"), blocked, "  op closes gang\n");
        assertEquals(1, judged.outcome().endings());
    }

    private static final String LOOP = "recloser r from s-2 to s-3, phases ABC, ganged, coil 50 A\n"
            + "source other at o-0, phases ABC, supply grid, fault level 100 MVA\n"
            + "loop-tie loop from o-0 to s-4, phases ABC, open";

    @Test
    void aLoopSchemeClosesOnLossOfSupplyUnlessItIsOut() {
        String rule = rule("always every loop-tie D is open");
        // Opening r takes s-4 dead; the loop closes and feeds it from the other side.
        Judgement judged = judge(LOOP, rule, "", "  op opens r\n");
        assertEquals(Map.of("asked", 2), Small.roots(judged));
        assertEquals(
                "closes by itself, because one of its sides lost supply",
                judged.outcome().findings().get(0).trace().get(1).text());
        assertEquals(Map.of(), Small.roots(judge(LOOP, rule, "starts with\n  given scheme of loop is off\n", "  op opens r\n")));
    }

    @Test
    void aControlMaySwitchItsBankAtAnyTime() {
        String bank = "recloser r from s-2 to s-3, phases ABC, ganged, coil 50 A\n"
                + "controlled-capacitor-switch cs from s-3 to k-1, phases ABC\n"
                + "capacitor bank at k-1, phases ABC, 300 kvar, grounded wye";
        String rule = rule("always every controlled-capacitor-switch D is closed");
        assertEquals(Map.of("asked", 2), Small.roots(judge(bank, rule, "", "  op does \"nothing\"\n")));
        String manual = "starts with\n  given control of cs is manual\n";
        assertEquals(Map.of(), Small.roots(judge(bank, rule, manual, "  op does \"nothing\"\n")));
    }

    @Test
    void aStartThatIsNotAtRestIsAMistake() {
        Problems problems = new Problems();
        Small.judge(network(GANGED + "ground pickup 4 A"), SUPPLIED, "", JUMPER, "", problems);
        String said = ProblemPrinter.print(problems.sorted());
        assertTrue(said.contains("at the start r trips by itself, on the residual current: 4."), said);
        assertTrue(said.contains("[not-at-rest]"), said);
    }
}
