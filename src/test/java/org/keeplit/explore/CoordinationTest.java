package org.keeplit.explore;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.keeplit.text.ProblemPrinter;
import org.keeplit.text.Problems;
import org.keeplit.verdict.Judgement;

/**
 * Which of several devices trips first. Behind both are 14.64 A on each phase once the switch is closed, see {@link TripsTest}; each must trip on
 * that, or on a fault beyond both.
 */
class CoordinationTest {
    private static final String CLOSE = "  op closes gang\n";
    private static final String OPEN = "starts with\n  given gang is open\n  given reclosing of feeder is blocked\n  given reclosing of r is blocked\n";

    private static Map<String, Integer> roots(String coordination, String tolerance, String rules, String steps) {
        String network = Small.network()
                        .replace("pickup 480 A, ground pickup 240 A", "ganged, pickup 12 A")
                        .replace("single-phase units, coil 100 A", "ganged, pickup 12 A" + tolerance)
                + coordination;
        Problems problems = new Problems();
        List<Judgement> all = Small.judge(network, rules, OPEN, steps, "", problems);
        assertEquals("", ProblemPrinter.print(problems.sorted()));
        return Small.roots(all.get(0));
    }

    private static String never(String device) {
        return "rule asked\n  always every " + device + " D is closed\n  says \"x\"\n  because \"Test.\"\n";
    }

    @Test
    void withoutCoordinationEitherMayBeFirst() {
        assertEquals(Map.of("asked", 2), roots("", "", never("breaker"), CLOSE));
        assertEquals(Map.of("asked", 2), roots("", "", never("recloser"), CLOSE));
    }

    @Test
    void withItTheOneFurtherOutIs() {
        assertEquals(Map.of(), roots("coordination r before feeder\n", "", never("breaker"), CLOSE));
        assertEquals(Map.of("asked", 2), roots("coordination r before feeder\n", "", never("recloser"), CLOSE));
    }

    @Test
    void oneThatMayNotTripHoldsNobodyBack() {
        // The 19.03 A of phase A lie within 60 % of 12 A: the recloser may stay closed, and then the breaker trips.
        Map<String, Integer> roots =
                roots("coordination r before feeder\n", ", pickup tolerance 60 %", never("breaker"), CLOSE);
        assertEquals(Map.of("asked", 2), roots);
    }

    @Test
    void onAFaultTheOneFurtherOutClearsUnlessItFails() {
        String fault = "event tree\n  any line section M\n  then M has a lasting fault\n  says \"x\"\n";
        String fails = "event stuck\n  any recloser D\n  then D fails to trip\n  says \"x\"\n";
        String rule = "rule asked\n  always every breaker D is closed\n  even if tree, stuck\n  says \"x\"\n  because \"Test.\"\n";
        String steps = "  op does \"waits\"\n";
        // A fault before both trips the breaker whatever anybody does, and is told apart; so the jumper makes the difference.
        String jumper = "  op installs J around r on all phases, line to line\n";
        assertEquals(Map.of(), found("coordination r before feeder\n", fault + rule.replace(", stuck", ""), steps, 1));
        assertTrue(found("coordination r before feeder\n", fault + rule.replace(", stuck", ""), jumper, 1).containsKey("asked"));
        assertTrue(found("", fault + rule.replace(", stuck", ""), steps, 1).isEmpty(), "broken by the event alone");
        assertEquals(Map.of(), found("coordination r before feeder\n", fault + fails + rule, steps, 2));
    }

    private static Map<String, Integer> found(String coordination, String rules, String steps, int events) {
        return Small.roots(Small.judge(Small.network() + coordination, rules, "", steps, "", events));
    }
}
