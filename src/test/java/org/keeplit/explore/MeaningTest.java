package org.keeplit.explore;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import org.junit.jupiter.api.Test;
import org.keeplit.outcome.Finding;
import org.keeplit.outcome.RuleResult;
import org.keeplit.verdict.Judgement;

/** The exact meaning of DEVELOPERS.md, point by point, on procedures small enough to count by hand. */
class MeaningTest {
    private static final String NO_RULE =
            """
            rule light-at-first
              at the start some load L is supplied
              says "all dark"
              because "Test."
            """;

    private static final String SUPPLIED =
            """
            rule supplied
              always every load L is supplied
              says "{L} is dark"
              because "Test."
            """;

    private static final String NOT_OPENED =
            """
            rule not-opened
              before opening any switching device D on phase P
              require D is tagged
              says "{D} opens on {P} with no tag"
              because "Test."
            """;

    private static Map<String, Integer> roots(String rules, String steps) {
        return Small.roots(Small.judge(rules, steps));
    }

    private static int states(String steps) {
        return Small.judge(NO_RULE, steps).outcome().states();
    }

    @Test
    void acts_in_line_give_one_state_more_than_acts() {
        assertEquals(4, states("  op does \"a\"\n  op does \"b\"\n  op does \"c\"\n"));
    }

    @Test
    void any_order_permutes_whole_steps() {
        // Two parts of two acts each: 1 + (1 inside either, 2 ways) + ... = {}, a1, b1, a12, b12, a12b1, b12a1, all.
        String steps =
                """
                  in any order
                    in order
                      op does "a1"
                      op does "a2"
                    end
                    in order
                      op does "b1"
                      op does "b2"
                    end
                  end
                """;
        assertEquals(8, states(steps));
        assertEquals(9, states(steps.replace("in any order", "together")));
        assertEquals(5, states(steps.replace("in any order", "in order")));
    }

    @Test
    void opening_three_units_is_three_acts_in_any_order() {
        assertEquals(8, Small.judge(NOT_OPENED, "  op opens r\n").outcome().states());
        assertEquals(4, Small.judge(NOT_OPENED, "  op opens r, in order\n").outcome().states());
        assertEquals(2, Small.judge(NOT_OPENED, "  op opens gang\n").outcome().states());
    }

    @Test
    void a_jumper_has_two_clamps_and_its_free_end_is_alive() {
        String rule =
                """
                rule dead-jumper
                  always for any bypass-jumper J, for every phase P of J, J is dead on P
                  says "{J} is alive"
                  because "Test."
                """;
        assertEquals(Map.of("dead-jumper", 1), roots(rule, "  op installs J around r on A, line to line\n"));
    }

    @Test
    void what_cannot_be_done_ends_the_path() {
        Judgement judged = Small.judge(NO_RULE, "  op closes gang\n  op opens gang\n");
        assertEquals(Map.of("cannot", 1), Small.roots(judged));
        assertEquals(1, judged.outcome().states());
    }

    @Test
    void a_requirement_ends_the_path_and_a_rule_does_not() {
        assertEquals(
                Map.of("requirement", 1),
                roots(NO_RULE, "  op opens gang\n    requires gang is tagged\n  op closes gang\n"));
        assertEquals(1, states("  op opens gang\n    requires gang is tagged\n  op closes gang\n"));
        Judgement broken = Small.judge(NOT_OPENED, "  op opens gang\n  op closes gang\n");
        assertEquals(Map.of("not-opened", 1), Small.roots(broken));
        assertEquals(3, broken.outcome().states());
    }

    @Test
    void a_look_that_fails_stops_the_crew() {
        assertEquals(Map.of("stop", 1), roots(NO_RULE, "  op checks gang is open\n  op closes gang\n"));
        assertEquals(Map.of("stop", 1), roots(NO_RULE, "  op proves gang open\n"));
    }

    @Test
    void an_expectation_that_fails_lets_the_path_go_on() {
        Judgement judged = Small.judge(NO_RULE, "  op does \"a\"\n    expects gang is open\n  op does \"b\"\n");
        assertEquals(Map.of("expectation", 1), Small.roots(judged));
        assertEquals(3, judged.outcome().states());
    }

    @Test
    void an_end_that_does_not_hold_is_found() {
        assertEquals(
                Map.of("ending", 1),
                Small.roots(Small.judge(NO_RULE, "", "  op does \"a\"\n", "\nends with\n  gang is open\n")));
    }

    @Test
    void a_wait_that_nobody_ends_is_stuck() {
        // The trace shows the act that is waited for, too.
        assertEquals(Map.of("stuck", 2), roots(NO_RULE, "  op does \"a\"\n  op waits until gang is open\n"));
        String ended =
                """
                  together
                    mate waits until gang is open
                    op opens gang
                  end
                """;
        assertEquals(Map.of(), roots(NOT_OPENED.replace("D is tagged", "D is closed on P"), ended));
    }

    @Test
    void what_follows_from_a_break_is_no_root() {
        Judgement judged = Small.judge(NOT_OPENED + SUPPLIED, "  op opens gang\n");
        assertEquals(Map.of("not-opened", 1), Small.roots(judged));
        RuleResult supplied = judged.outcome().rules().get(1);
        assertEquals(RuleResult.Verdict.ONLY_AFTER, supplied.verdict());
        assertEquals("not-opened", supplied.finding().orElseThrow().after().orElseThrow());
    }

    @Test
    void a_rule_that_is_broken_on_another_way_is_a_root_of_its_own() {
        String steps =
                """
                  in any order
                    op tags gang
                    op opens gang
                  end
                """;
        assertEquals(Map.of("not-opened", 1, "supplied", 2), roots(NOT_OPENED + SUPPLIED, steps));
    }

    @Test
    void half_done_states_count() {
        String rule =
                """
                rule all-or-none
                  always for any recloser D, one of
                    D is closed
                    D is not closed
                  end
                  says "r is half open"
                  because "Test."
                """;
        assertEquals(Map.of("all-or-none", 1), roots(rule, "  op opens r\n"));
        assertEquals(
                Map.of(), roots(rule, "  op opens r\n    as one because \"one handle\"\n"));
    }

    @Test
    void a_rule_whose_case_never_came_up_is_not_exercised() {
        Judgement judged = Small.judge(NOT_OPENED, "  op does \"a\"\n");
        assertEquals(RuleResult.Verdict.NOT_EXERCISED, judged.outcome().rules().get(0).verdict());
        assertFalse(judged.notExercised().isEmpty());
    }

    @Test
    void a_choice_follows_what_was_found_and_both_outcomes_are_explored() {
        String steps =
                """
                  op inspects "oil", finds "clean" or "dirty"
                  if "oil" is found "dirty"
                    op opens gang
                  otherwise
                    op does "goes on"
                  end
                """;
        Judgement judged = Small.judge(SUPPLIED, steps);
        assertEquals(Map.of("supplied", 2), Small.roots(judged));
        assertEquals(5, judged.outcome().states());
    }

    @Test
    void repeating_at_most_so_often_may_stop_before_each_time() {
        assertEquals(4, states("  repeat 3 times\n    op does \"turn\"\n  end\n"));
        // 0, 1, 2 turns and gone on after each of 0, 1; after the second turn nothing is left: one common end.
        assertEquals(3, states("  repeat at most 2 times\n    op does \"turn\"\n  end\n"));
    }

    @Test
    void two_phases_that_meet_end_the_path_even_with_no_rule_about_it() {
        String steps = "  op installs J from the source-side line of r on A to the load-side line of r on B\n"
                + "  op does \"b\"\n";
        Judgement judged = Small.judge(NO_RULE, steps);
        assertEquals(Map.of("flash", 2), Small.roots(judged));
        assertEquals(4, judged.outcome().states());
    }

    @Test
    void a_bypass_from_line_to_line_counts_and_one_inboard_of_a_lead_does_not() {
        String rule =
                """
                rule bypassed
                  before opening any recloser D on phase P
                  require D is bypassed on P
                  says "no bypass"
                  because "Test."
                """;
        String inboard = "  op installs J from the source-side line of r on A to the load bushing of r on A\n";
        assertEquals(Map.of(), roots(rule, "  op installs J around r on A, line to line\n  op opens r on A\n"));
        assertEquals(Map.of("bypassed", 3), roots(rule, inboard + "  op opens r on A\n"));
    }

    @Test
    void one_phase_open_above_a_delta_is_backfed_and_not_supplied() {
        String rule =
                """
                rule dead-means-dead
                  always for any recloser D, one of
                    D is closed on A
                    the load-side line of D is dead on A
                  end
                  says "phase A beyond r is open and not dead"
                  because "Test."
                """;
        Judgement judged = Small.judge(rule, "  op opens r on A\n");
        assertEquals(Map.of(), Small.roots(judged), "grounded-wye load: phase A is dead");
        assertTrue(judged.outcome().states() == 2);
    }

    @Test
    void the_story_names_the_loads_and_their_phases() {
        Finding finding =
                Small.judge(SUPPLIED, "  op opens r on A\n").outcome().findings().get(0);
        assertEquals(
                "[Lost[load=mill, customers=12, phases=A, critical=], Lost[load=lane, customers=9, phases=A, critical=]]",
                finding.trace().get(0).lost().toString());
    }
}
