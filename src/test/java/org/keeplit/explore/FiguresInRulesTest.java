package org.keeplit.explore;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import org.junit.jupiter.api.Test;
import org.keeplit.verdict.Judgement;

/**
 * Rules over amperes and volts, on figures that can be worked out by hand: 300 kW and 100 kvar at 12.47 kV are 14.64 A on each
 * phase, 30 kW and 10 kvar at 7.2 kV on phase A are 4.39 A more.
 */
class FiguresInRulesTest {
    private static String rule(String condition) {
        return """
                rule figure
                  always for any recloser D, %s
                  says "{the current through D on A}"
                  because "Test."
                """
                .formatted(condition);
    }

    private static Map<String, Integer> roots(String condition, String steps) {
        return Small.roots(Small.judge(rule(condition), steps));
    }

    private static final String NOTHING = "  op does \"a\"\n";

    @Test
    void currentIsWhatTheLoadsBeyondDraw() {
        assertEquals(Map.of(), roots("the current through D on B is at most 14.8 A", NOTHING));
        assertEquals(Map.of(), roots("the current through D on B is at least 14.6 A", NOTHING));
        assertEquals(Map.of(), roots("the current through D on A is at least 18.9 A", NOTHING));
        assertEquals(Map.of(), roots("the current through D on A is at most 19.2 A", NOTHING));
    }

    @Test
    void theSentenceGivesTheFigure() {
        Judgement judged = Small.judge(rule("the current through D on A is at most 10 A"), NOTHING);
        String sentence = judged.outcome().findings().get(0).sentence();
        assertTrue(sentence.matches("19\\.[01][0-9]? A"), sentence);
        String why = judged.outcome().findings().get(0).why().text();
        assertTrue(why.contains("beside 10 A"), why);
    }

    @Test
    void residualIsWhatThePhasesDoNotCancel() {
        assertEquals(Map.of(), roots("the residual current through D is at least 4.3 A", NOTHING));
        assertEquals(Map.of(), roots("the residual current through D is at most 4.6 A", NOTHING));
        // With a low-impedance jumper over the coil of phase B most of B's current leaves the unit: residual rises.
        String jumper = "  op installs J around r on B, line to line\n";
        assertEquals(Map.of("figure", 2), roots("the residual current through D is at most 10 A", jumper));
    }

    @Test
    void aJumperOverACoilTakesItsShareByImpedance() {
        String condition =
                """
                rule share
                  always for any bypass-jumper J, the current through J on B is below 13 A
                  says "share"
                  because "Test."
                """;
        assertEquals(
                Map.of("share", 2), Small.roots(Small.judge(condition, "  op installs J around r on B, line to line\n")));
    }

    @Test
    void voltageFallsToNothingBehindAnOpenPhase() {
        String condition =
                """
                rule volts
                  always for any load L, the voltage at L on A is at least 95 % of the nominal voltage of L
                  says "volts"
                  because "Test."
                """;
        assertEquals(Map.of("volts", 1), Small.roots(Small.judge(condition, "  op opens gang\n")));
        assertEquals(Map.of(), Small.roots(Small.judge(condition, NOTHING)));
    }

    @Test
    void faultCurrentIsThatOfTheSourceAndTheLine() {
        // 100 MVA at 12.47 kV is 4630 A at the bus; two kilometres of line leave less than half of it.
        String condition =
                """
                rule fault
                  at the start for every load L, the fault current at L on A is %s
                  says "fault"
                  because "Test."
                """;
        assertEquals(Map.of(), Small.roots(Small.judge(condition.formatted("at most 4.63 kA"), NOTHING)));
        assertEquals(Map.of(), Small.roots(Small.judge(condition.formatted("at least 1 kA"), NOTHING)));
    }

    /** A limit that the network does not state leaves the rule undecided, and the explanation says what is missing. */
    @Test
    void whatIsNotStatedIsNamed() {
        String condition =
                """
                rule limit
                  always for any load L, the voltage at L on A is at least the lower voltage limit of L
                  says "{the lower voltage limit of L}"
                  because "Test."
                """;
        Judgement judged = Small.judge(condition, NOTHING);
        assertEquals(Map.of("limit", 0), Small.roots(judged));
        assertEquals("not stated", judged.outcome().findings().get(0).sentence());
        String why = judged.outcome().findings().get(0).why().toString();
        assertTrue(why.contains("the lower voltage limit of the node of mill is not stated"), why);
    }
}
