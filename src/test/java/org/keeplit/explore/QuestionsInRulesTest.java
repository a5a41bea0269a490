package org.keeplit.explore;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/**
 * The same questions in rules. A rule that is kept in one state is judged again in the next only if something that it reads has
 * changed, so each is kept for a while first, and then broken by one act.
 */
class QuestionsInRulesTest {
    private static Map<String, Integer> roots(String network, String rule, String header, String steps) {
        String named = "rule r-1\n  " + rule + "\n  says \"x\"\n  because \"Test.\"\n";
        return Small.roots(Small.judge(network, named, header, Small.lines(steps), "", 0));
    }

    private static Map<String, Integer> roots(String rule, String steps) {
        return roots(QuestionsTest.NETWORK, rule, "", steps);
    }

    /** Kept from the record on through acts that change nothing of it, broken by the last act. @param acts how many there are up to it */
    private static void lost(String network, int acts, String question, String before, String after) {
        String rule = "while \"go\" is recorded\n  require " + question;
        String kept = before + (before.isEmpty() ? "" : "; ") + "op records \"go\"; mate does \"a\"; mate tags gang";
        assertEquals(Map.of(), roots(network, rule, "", kept), question);
        assertEquals(Map.of("r-1", acts), roots(network, rule, "", kept + "; " + after), question);
    }

    private static void lost(int acts, String question, String before, String after) {
        lost(QuestionsTest.NETWORK, acts, question, before, after);
    }

    @Test
    void a_rule_that_is_kept_is_judged_again_where_what_it_reads_changes() {
        String around = "op installs J around r on A, line to line";
        String ground = "op opens gang; op applies G to the load-side line of gang on A, ground end first";
        String off = "op removes G on A, line end first";
        String recloser = "for every recloser D, D is ";
        String behind = "for every switch D, the load-side line of D is ";
        lost(4, recloser + "closed on A", "", "op opens r on A");
        lost(4, "for every bypass-jumper J, J is not in use on A", "", "op puts the first clamp of J on the source-side line of r on A");
        lost(6, "for every regulator V, V is at neutral on A", "op sets v to manual on A; op runs v to neutral on A", "op sets v to automatic on A");
        lost(6, recloser + "bypassed on A", around, "op takes the first clamp of J off on A");
        lost(6, recloser + "looped on A", around, "op takes the second clamp of J off on A");
        lost(6, "for every recloser D, D has opening duty parallel break on A", around, "op takes the first clamp of J off on A");
        lost(4, "for every switch D, D has closing duty nothing", "", "op opens gang");
        lost(4, "for every recloser D, some breaker F feeds the site of D", "", "op opens feeder");
        lost(5, "for every regulator V, V is isolated", "op opens gang", "op closes gang");
        lost(7, behind + "grounded on A", ground, off);
        lost(7, behind + "tied to a ground on A", ground, off);
        lost(5, behind + "not short-circuited on A", "", "op applies G to the load-side line of gang on A, ground end first");
        lost(5, behind + "dead on A", "op opens gang", "op closes gang");
        lost(4, "every load L is supplied", "", "op opens feeder");
        lost(5, "no hold H is out", "mate asks op for H", "op issues H to mate");
    }

    /** What is open may be closed from elsewhere as long as its remote control is on. */
    @Test
    void a_device_that_may_be_closed_by_remote_still_feeds() {
        String network = QuestionsTest.NETWORK.replace("breaker feeder", "electronic-recloser feeder").replace("pickup 480 A", "ganged, pickup 480 A");
        String feeds = "for every recloser D, some electronic-recloser F feeds the site of D";
        lost(network, 5, feeds, "op opens feeder", "op puts feeder to local");
    }

    @Test
    void what_is_said_of_such_as_are_so_says_nothing_of_others() {
        String rule = "while \"go\" is recorded\n  require ";
        String mill = "op opens gang; op records \"go\"";
        String lane = "op opens r on A; op records \"go\"";
        assertEquals(Map.of(), roots(rule + "every load L that is critical is supplied", mill));
        assertEquals(Map.of("r-1", 2), roots(rule + "every load L that is critical is supplied", lane));
        assertEquals(Map.of(), roots(rule + "every load L that is not critical is not supplied", mill));
        assertEquals(Map.of(), roots(rule + "some load L that is critical is supplied", mill));
        assertEquals(Map.of("r-1", 2), roots(rule + "some load L that is not critical is supplied", mill));
        assertEquals(Map.of(), roots(rule + "no load L that is not critical is supplied", mill));
        assertEquals(Map.of("r-1", 2), roots(rule + "no load L that is critical is supplied", mill));
        // What decides who is meant may itself change.
        String tagged = "every switching device D that is tagged is open";
        assertEquals(Map.of(), roots("always " + tagged, "op opens gang; op tags gang"));
        assertEquals(Map.of("r-1", 1), roots("always " + tagged, "op tags gang; op opens gang"));
        assertEquals(Map.of("r-1", 1), roots("always no switching device D that is tagged is closed", "op tags gang"));
        assertEquals(Map.of(), roots("at the end some switching device D that is tagged is open", "op opens gang; op tags gang"));
        assertEquals(Map.of("r-1", 2), roots("at the end some switching device D that is tagged is open", "op opens feeder; op tags gang"));
    }

    @Test
    void what_is_so_in_any_case_is_counted_with_what_changes() {
        assertEquals(Map.of(), roots("at the start exactly one load L is critical", "op tags gang"));
        assertEquals(Map.of(), roots("at the start at least one load L is critical", "op tags gang"));
        assertEquals(Map.of("r-1", 0), roots("at the start at least two loads L are critical", "op tags gang"));
        assertEquals(Map.of(), roots("at the start at most one load L is critical", "op tags gang"));
        // The breaker and the recloser never move here: two are closed in any case.
        assertEquals(Map.of(), roots("always at least three switching devices D are closed on A", "op tags gang"));
        assertEquals(Map.of("r-1", 1), roots("always at least three switching devices D are closed on A", "op opens gang"));
        assertEquals(Map.of(), roots("always at least two switching devices D are closed on A", "op opens gang"));
        assertEquals(Map.of("r-1", 0), roots("always at most two switching devices D are closed on A", "op opens gang"));
        assertEquals(Map.of(), roots("at the end exactly two switching devices D are closed on A", "op opens gang"));
        assertEquals(Map.of("r-1", 1), roots("always no switching device D that is tagged is closed on A", "op tags gang"));
        assertEquals(Map.of("r-1", 2), roots("always at most one switching device D that is tagged is closed on A", "op tags gang; op tags r"));
    }

    /** Of a range “to” takes both its ends in, “above” and “below” leave them out: 12.47 kV is the voltage here. */
    @Test
    void a_voltage_class_takes_its_bounds_in_or_leaves_them_out() {
        String rule = "always every load L is supplied\n  applies to ";
        for (String range : List.of("5 kV to 35 kV", "12.47 kV to 35 kV", "5 kV to 12.47 kV", "above 5 kV", "below 35 kV")) {
            assertEquals(Map.of("r-1", 1), roots(rule + range, "op opens feeder"), range);
        }
        for (String range : List.of("13 kV to 35 kV", "5 kV to 12 kV", "above 12.47 kV", "below 12.47 kV")) {
            assertEquals(Map.of(), roots(rule + range, "op opens feeder"), range);
        }
    }

    @Test
    void what_a_device_does_not_have_counts_as_blocked() {
        assertEquals(Map.of(), roots("always for every switching device D that is tagged, reclosing of D is blocked", "op tags gang"));
        assertEquals(Map.of("r-1", 1), roots("always for every switching device D that is tagged, reclosing of D is on", "op tags gang"));
    }

    /** What nothing moves is as it was given; what is given at the start is as good as done. */
    @Test
    void what_is_given_at_the_start_is_so() {
        String start = "starts with\n  given J is installed on A\n  given gang is open\n  given reclosing of r is blocked on B\n";
        for (String so : List.of("every bypass-jumper J is installed on A", "every bypass-jumper J is not in use on B", "every switch D is open",
                "for every recloser D, reclosing of D is blocked on B", "for every recloser D, D is bypassed on A", "every person W is on the ground")) {
            assertEquals(Map.of(), roots(QuestionsTest.NETWORK, "at the start " + so, start, "mate does \"a\""), so);
        }
        for (String so : List.of("every bypass-jumper J is not installed on A", "every bypass-jumper J is in use on B", "every switch D is closed",
                "for every recloser D, reclosing of D is on on B", "for every recloser D, D is bypassed on B", "some hold H is out")) {
            assertEquals(Map.of("r-1", 0), roots(QuestionsTest.NETWORK, "at the start " + so, start, "mate does \"a\""), so);
        }
    }

    /** Closing beside a regulator that may stand off neutral parallels what is not equal. */
    @Test
    void closing_beside_a_regulator_is_equal_only_at_neutral() {
        String network = QuestionsTest.NETWORK + "switch besides from s-5 to s-6, phases ABC, open, at v\n";
        String rule = "while \"go\" is recorded\n  require for every switch D that is open, D has closing duty %s";
        String neutral = "op sets v to manual; op runs v to neutral; op records \"go\"";
        String any = "op does \"a\"; op records \"go\"";
        assertEquals(Map.of(), roots(network, rule.formatted("unequal parallel"), "", any));
        assertEquals(Map.of("r-1", 2), roots(network, rule.formatted("parallel make"), "", any));
        assertEquals(Map.of(), roots(network, rule.formatted("parallel make"), "", neutral));
        assertEquals(1, roots(network, rule.formatted("unequal parallel"), "", neutral).size());
    }
}
