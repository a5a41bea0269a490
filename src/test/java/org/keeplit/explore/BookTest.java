package org.keeplit.explore;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.keeplit.condition.Truth;
import org.keeplit.outcome.Finding;
import org.keeplit.outcome.Outcome;
import org.keeplit.outcome.RuleResult;
import org.keeplit.outcome.Why;
import org.keeplit.verdict.Judgement;
import org.keeplit.verdict.Style;
import org.keeplit.verdict.TextReport;

/** Rulebooks with weights, scopes, parameters, definitions and rules that others override. */
class BookTest {
    private static final String ENDS = "\n  says \"x\"\n  because \"Test.\"\n";
    private static final String OPEN = "  op opens gang\n";

    private static Map<String, Integer> roots(String rules, String steps) {
        return Small.roots(Small.judge(rules, steps));
    }

    private static String clause(String clause) {
        return "rule r-1\n  before opening any switching device D\n  require D is tagged\n  " + clause + ENDS;
    }

    /** Something that is asked and kept: cautions alone prove nothing. */
    private static final String HELD = "rule kept-alive\n  always some source S is energized" + ENDS;

    @Test
    void a_caution_is_told_and_breaks_nothing() {
        Judgement judged = Small.judge(
                clause("severity caution") + clause("severity advice").replace("r-1", "r-2") + HELD, OPEN);
        assertEquals(Judgement.Status.HOLDS, judged.status());
        assertTrue(judged.isCautioned());
        assertEquals(
                List.of("r-1", "r-2"),
                judged.outcome().notes().stream().map(Finding::name).toList());
        assertEquals(RuleResult.Verdict.BROKEN, judged.outcome().rules().get(0).verdict());
        String told = new TextReport(Style.PLAIN).tell(List.of(judged));
        assertTrue(told.contains("caution: x (r-1"), told);
        assertTrue(told.contains("0 undecided, 1 caution, 1 piece of advice\n"), told);
    }

    @Test
    void a_variant_may_show_a_caution() {
        String stop = clause("severity caution") + "rule r-2\n  always every switching device D is closed\n"
                + "  severity caution" + ENDS + HELD;
        List<Judgement> all = Small.judgeAll(
                stop, "", OPEN, "\nvariant V of P\n  proved on pole\n  must fail on r-1\n");
        assertEquals(
                List.of(Judgement.Status.HOLDS, Judgement.Status.FAILS_AS_STATED),
                all.stream().map(Judgement::status).toList());
    }

    @Test
    void what_follows_a_caution_is_still_a_root() {
        String closed = "rule r-3\n  always every switching device D is closed" + ENDS;
        assertEquals(Map.of("r-3", 1), roots(clause("severity caution") + closed, OPEN));
        assertFalse(Small.judge(clause("severity stop") + closed, OPEN).isCautioned());
        assertEquals(Map.of("r-1", 1), roots(clause("severity stop") + closed, OPEN));
    }

    @Test
    void a_rule_applies_to_kinds_voltages_and_sites() {
        Map<String, Integer> broken = Map.of("r-1", 1);
        assertEquals(broken, roots(clause("applies to switches"), OPEN));
        assertEquals(Map.of(), roots(clause("applies to reclosers and breakers"), OPEN));
        assertEquals(broken, roots(clause("applies to above 600 V"), OPEN));
        assertEquals(broken, roots(clause("applies to 5 kV to 12.47 kV"), OPEN));
        assertEquals(Map.of(), roots(clause("applies to above 12.47 kV"), OPEN));
        assertEquals(Map.of(), roots(clause("applies to below 12.47 kV"), OPEN));
        assertEquals(broken, roots(clause("applies to at gang and r"), OPEN));
        assertEquals(Map.of(), roots(clause("applies to switches, at r"), OPEN));
    }

    @Test
    void a_whole_book_applies_to_what_it_says_and_leaves_rules_on_people_alone() {
        String people = "rule r-2\n  always for any person W, W is in charge" + ENDS;
        assertEquals(
                Map.of("r-2", 0), roots("applies to reclosers\n" + clause("severity stop") + people, OPEN));
    }

    @Test
    void counts_are_of_what_is_so() {
        String steps = "  op opens r, in order\n";
        for (var entry : Map.of("at most one", 2, "at most 2", 3, "at least one", 0, "exactly 3", 0).entrySet()) {
            String rule = "rule r-1\n  always for any recloser D, for " + entry.getKey()
                    + " phases P of D, D is open on P" + ENDS;
            assertEquals(Map.of("r-1", entry.getValue()), roots(rule, steps), entry.getKey());
        }
    }

    @Test
    void a_definition_means_what_it_says_with_what_is_put_in() {
        String rules =
                """
                define any switching device D is at rest on any phase P: D is open on P or D is tagged
                define any switching device D is quiet: for every phase Q of D, D is at rest on Q
                rule r-1
                  always for any recloser R, R is not quiet
                """
                        + "  says \"{whether R is quiet}\"\n  because \"x\"\n";
        Judgement judged = Small.judge(rules, "  op opens r, in order\n");
        assertEquals(Map.of("r-1", 3), Small.roots(judged));
        assertEquals("r is quiet", judged.outcome().findings().get(0).sentence());
    }

    @Test
    void a_book_that_extends_overrides_with_a_reason_and_sets_figures() {
        String books = clause("severity stop") + "parameter wait 5 min\n"
                + "rule r-2\n  always every capacitor bank K has been dead for wait" + ENDS
                + "rulebook over revision 1\nextends test-rules with wait 3 min\n"
                + "override rule r-1 because \"our switches lock\"\n"
                + "rule r-3\n  before opening any switching device D\n  require D is open" + ENDS;
        Judgement judged = Small.judge(books, "keeps over", OPEN, "");
        assertEquals(Map.of("r-1", 1), Small.roots(Small.judge(books, OPEN)));
        assertEquals(Map.of("r-3", 1), Small.roots(judged));
        assertEquals(180, judged.procedure().keeps().get(0).parameters().get("wait").si());
        String told = new TextReport(Style.PLAIN).tell(List.of(judged));
        assertTrue(told.contains("dropped by over: r-1 of test-rules, because our switches lock\n"), told);
    }

    @Test
    void a_full_explanation_shows_every_part_with_its_witness_and_the_way() {
        String rule = "rule r-1\n  always for any load L, one of\n    L is supplied\n    for every recloser D, D is tagged\n  end"
                + ENDS;
        Outcome outcome = Small.explained(rule, "  op opens r on A\n").outcome();
        Why example = outcome.rules().get(0).example().orElseThrow();
        assertEquals(Truth.TRUE, example.truth());
        Why supplied = example.parts().get(0).parts().get(0);
        assertEquals(List.of("bus", "feeder", "l-1", "r", "l-2", "gang"), supplied.path());
        Why tagged = example.parts().get(0).parts().get(1);
        assertEquals(Truth.FALSE, tagged.truth());
        assertEquals("D = r", tagged.parts().get(0).witness());
        Why broken = outcome.findings().get(0).tree();
        assertEquals(Truth.FALSE, broken.truth());
        assertTrue(broken.parts().get(0).parts().get(0).path().isEmpty());
    }

    @Test
    void a_full_explanation_names_the_bypass_and_the_figures() {
        String rule = "rule r-1\n  before opening any recloser D on phase P\n  require D is bypassed on P and the current"
                + " through D on P is at most 1 A" + ENDS;
        Outcome outcome = Small.explained(
                        rule, "  op installs J around r on A, line to line\n  op opens r on A\n")
                .outcome();
        Why tree = outcome.findings().get(0).tree();
        Why both = tree.parts().get(0);
        assertEquals(List.of("J"), both.parts().get(0).path());
        assertEquals("1 A", both.parts().get(1).figures().get(0).limit());
    }

    @Test
    void rules_that_nothing_here_can_bring_up_or_break_are_remarked_on() {
        String rules = "rule r-1\n  always every regulator V is at neutral" + ENDS
                + "rule r-2\n  always for any recloser D, D has leads" + ENDS;
        List<RuleResult> results = Small.judge(rules, OPEN).outcome().rules();
        assertEquals(
                "nothing in this network and procedure can bring it up",
                results.get(0).remark().orElseThrow().sentence());
        assertEquals(
                "nothing in this network and procedure can break it",
                results.get(1).remark().orElseThrow().sentence());
    }

    private static List<String> contradictions(String one, String other) {
        return Small.judge("rule r-1\n  " + one + ENDS + "rule r-2\n  " + other + ENDS, OPEN)
                .outcome()
                .contradictions();
    }

    @Test
    void rules_that_exclude_one_another_are_told_and_others_are_not() {
        String open = "always for any switch D, D is open";
        assertEquals(List.of("r-1 and r-2, for example for D = gang"), contradictions(open, "always for any switch E, E is closed"));
        assertEquals(
                List.of("r-1 and r-2, for example for D = gang"),
                contradictions(open, "never D is open with any switch D"));
        assertEquals(List.of(), contradictions(open, "always for any switch E, E is tagged"));
        assertEquals(List.of(), contradictions(open, "always for any switch E, E is closed\n  unless E is open"));
        assertEquals(
                List.of(),
                contradictions(open, "while any person W is aloft at any site S\n  require every switch E is closed"));
        String dead = "always for any load L, the node of L is dead";
        assertEquals(1, contradictions(dead, "always for any load L, the node of L is not dead").size());
        // Dead and energized exclude one another, too, but that is not seen by the conditions alone.
        assertEquals(List.of(), contradictions(dead, "always for any load L, the node of L is energized"));
    }

    private static void exclude(boolean so, String one, String other) {
        String rules = "rule r-1\n  always for any switch D, " + one + ENDS + "rule r-2\n  always for any switch E, " + other.replace("D ", "E ") + ENDS;
        int found = Small.judge(rules, "  op tags gang\n" + OPEN).outcome().contradictions().size();
        assertEquals(so ? 1 : 0, found, one + " | " + other);
    }

    /** Two rules of one thing: told if no value of what it may be keeps both, whichever way it is said. */
    @Test
    void what_excludes_one_another_is_found_behind_and_or_not_and_counts() {
        String moves = "one of\n    D is open\n    D is tagged\n  end";
        exclude(true, moves, "all of\n    D is closed\n    D is not tagged\n  end");
        exclude(false, moves, "D is closed");
        exclude(false, moves, "D is not tagged");
        exclude(true, "all of\n    D is open\n    D is tagged\n  end", "D is closed");
        exclude(true, "all of\n    D is open\n    D is tagged\n  end", "D is not tagged");
        exclude(false, "all of\n    D is open\n    D is tagged\n  end", "D is tagged");
        exclude(true, "D is open", "D is not open");
        exclude(false, "D is open", "D is open");
    }

    @Test
    void what_excludes_one_another_is_found_by_ranges_and_by_more_than_two_values() {
        String steps = "  mate asks op for H\n  op issues H to mate\n  mate repeats H\n  op confirms H\n  mate releases H\n";
        String[] papers = {"out", "in force", "asked for", "released"};
        // Of each two: is out takes in being in force, all others exclude one another.
        for (int i = 0; i < papers.length; i++) {
            for (int k = 0; k < i; k++) {
                String rules = "rule r-1\n  always for any hold H, H is " + papers[i] + ENDS + "rule r-2\n  always for any hold H, H is " + papers[k] + ENDS;
                int found = Small.judge(rules, steps).outcome().contradictions().size();
                assertEquals(i == 1 && k == 0 ? 0 : 1, found, papers[i] + " and " + papers[k]);
            }
        }
    }
}
