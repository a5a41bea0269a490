package org.keeplit.explore;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Map;
import org.junit.jupiter.api.Test;
import org.keeplit.outcome.RuleResult;
import org.keeplit.verdict.Judgement;

/** What rules remember, on procedures small enough to count by hand. */
class HistoryTest {
    private static final String ENDS = "\n  says \"x\"\n  because \"Test.\"\n";

    private static Judgement judge(String rule, String steps) {
        return Small.judge("rule r-1\n" + rule.replace(" require ", "\n  require ") + ENDS, steps);
    }

    private static Map<String, Integer> roots(String rule, String steps) {
        return Small.roots(judge(rule, steps));
    }

    private static int states(String rule, String steps) {
        return judge(rule, steps).outcome().states();
    }

    private static RuleResult.Verdict verdict(String rule, String steps) {
        return judge(rule, steps).outcome().rules().get(0).verdict();
    }

    @Test
    void a_stretch_begins_with_the_state_that_its_moment_reaches_and_ends_before_the_one_that_its_end_reaches() {
        String rule = "between tagging any switching device D and untagging D require D is closed";
        assertEquals(Map.of(), roots(rule, "  op tags gang\n  op takes the tag off gang\n  op opens gang\n"));
        assertEquals(Map.of("r-1", 2), roots(rule, "  op opens gang\n  op tags gang\n"));
        assertEquals(Map.of("r-1", 2), roots(rule, "  op tags gang\n  op opens gang\n  op takes the tag off gang\n"));
        assertEquals(RuleResult.Verdict.NOT_EXERCISED, verdict(rule, "  op opens gang\n"));
    }

    @Test
    void a_stretch_may_begin_with_the_start_and_end_with_the_end() {
        String before = "between the start and tagging any switching device require some switching device D is tagged";
        assertEquals(Map.of("r-1", 0), roots(before, "  op tags gang\n"));
        String closed = "between the start and tagging any switching device require every switching device D is closed";
        assertEquals(Map.of(), roots(closed, "  op tags gang\n  op opens gang\n"));
        assertEquals(Map.of("r-1", 1), roots(closed, "  op opens gang\n  op tags gang\n"));
        assertEquals(Map.of("r-1", 1), roots(closed, "  op opens gang\n"));
        String after = "between tagging any switching device D and the end require D is closed";
        assertEquals(Map.of("r-1", 3), roots(after, "  op tags gang\n  op takes the tag off gang\n  op opens gang\n"));
    }

    @Test
    void what_must_come_is_judged_at_the_end_and_each_new_moment_asks_for_it_again() {
        String rule = "after opening any switching device D eventually closing D";
        assertEquals(Map.of(), roots(rule, "  op opens gang\n  op closes gang\n"));
        assertEquals(Map.of("r-1", 1), roots(rule, "  op opens gang\n"));
        assertEquals(Map.of("r-1", 3), roots(rule, "  op opens gang\n  op closes gang\n  op opens gang\n"));
        assertEquals(RuleResult.Verdict.HOLDS, verdict(rule, "  op opens gang\n  op closes gang\n"));
        assertEquals(RuleResult.Verdict.NOT_EXERCISED, verdict(rule, "  op does \"a\"\n"));
    }

    @Test
    void what_must_become_so_is_enough_once_even_if_it_is_so_at_once() {
        String rule = "after opening any switching device D, eventually D is tagged";
        assertEquals(Map.of("r-1", 1), roots(rule, "  op opens gang\n"));
        assertEquals(Map.of(), roots(rule, "  op tags gang\n  op opens gang\n"));
        assertEquals(Map.of(), roots(rule, "  op opens gang\n  op tags gang\n  op takes the tag off gang\n"));
        assertEquals(
                Map.of("r-1", 4),
                roots(rule, "  op tags gang\n  op takes the tag off gang\n  op opens gang\n  op closes gang\n"));
    }

    @Test
    void a_moment_counts_from_the_state_that_it_reaches_and_no_longer_after_what_makes_it_stale() {
        String rule = "before opening any switching device D require doing \"briefing\" has happened since closing any"
                + " switching device";
        assertEquals(Map.of("r-1", 1), roots(rule, "  op opens gang\n"));
        assertEquals(Map.of(), roots(rule, "  op does \"briefing\"\n  op opens gang\n"));
        String again = "  op does \"briefing\"\n  op opens gang\n  op closes gang\n";
        assertEquals(Map.of("r-1", 4), roots(rule, again + "  op opens gang\n"));
        assertEquals(Map.of(), roots(rule, again + "  op does \"briefing\"\n  op opens gang\n"));
        assertEquals(Map.of("r-1", 2), roots(rule, "  op does \"talk\"\n  op opens gang\n"));
    }

    @Test
    void a_moment_may_name_who_acts_and_on_which_phase() {
        String by = "before closing any switching device D by any person W require opening D by W has happened";
        assertEquals(Map.of(), roots(by, "  op opens gang\n  op closes gang\n"));
        assertEquals(Map.of("r-1", 2), roots(by, "  op opens gang\n  mate closes gang\n"));
        String on = "before closing any switching device D on phase P require opening D on A has not happened since"
                + " tagging D";
        assertEquals(Map.of(), roots(on, "  op opens r on B\n  op closes r on B\n"));
        assertEquals(Map.of("r-1", 2), roots(on, "  op opens r on A\n  op closes r on A\n"));
        assertEquals(Map.of(), roots(on, "  op opens r on A\n  op tags r\n  op closes r on A\n"));
    }

    @Test
    void what_was_so_since_a_moment_was_so_in_every_state_from_the_one_that_it_reaches() {
        String rule = "before untagging any switching device D require since tagging D, D is open";
        assertEquals(Map.of(), roots(rule, "  op opens gang\n  op tags gang\n  op takes the tag off gang\n"));
        assertEquals(
                Map.of("r-1", 4),
                roots(rule, "  op opens gang\n  op tags gang\n  op closes gang\n  op takes the tag off gang\n"));
        assertEquals(
                Map.of("r-1", 5),
                roots(
                        rule,
                        "  op opens gang\n  op tags gang\n  op closes gang\n  op opens gang\n"
                                + "  op takes the tag off gang\n"));
    }

    @Test
    void since_a_moment_that_never_came_is_since_the_start() {
        String rule = "before opening any switching device D require since closing D, for every recloser E, E is closed";
        assertEquals(Map.of(), roots(rule, "  op opens gang\n"));
        assertEquals(Map.of("r-1", 2), roots(rule, "  op opens r on A\n  op opens gang\n"));
    }

    @Test
    void what_is_remembered_tells_states_apart_and_what_can_never_come_does_not() {
        String steps = "  in any order\n    op does \"a\"\n    op does \"b\"\n  end\n  op opens gang\n";
        assertEquals(5, states("before opening any switching device D require D is closed", steps));
        // After both, two states: "b" since "a", or not.
        assertEquals(
                7,
                states(
                        "before opening any switching device D require doing \"b\" has happened since doing \"a\"",
                        steps));
        String never = "before opening any switching device D require doing \"c\" has not happened since doing \"a\"";
        assertEquals(5, states(never, steps));
        Judgement judged = judge(never, steps);
        assertEquals(0, judged.outcome().rules().get(0).memoryBits());
    }

    @Test
    void who_was_briefed_was_named() {
        String rule = "before opening any switching device D by any person W require briefing W has happened since closing"
                + " any switching device";
        assertEquals(Map.of(), roots(rule, "  op briefs mate and op\n  mate opens gang\n"));
        assertEquals(Map.of("r-1", 2), roots(rule, "  op briefs op\n  mate opens gang\n"));
        assertEquals(
                Map.of("r-1", 4), roots(rule, "  op briefs mate\n  mate opens gang\n  op closes gang\n  mate opens gang\n"));
        String by = "before opening any switching device D by any person W require briefing any person by W has happened";
        assertEquals(Map.of("r-1", 2), roots(by, "  op briefs op, mate\n  mate opens gang\n"));
        assertEquals(Map.of(), roots(by, "  op briefs op, mate\n  op opens gang\n"));
    }

    @Test
    void what_is_remembered_of_one_thing_is_not_of_another() {
        String closed = "between tagging any switching device D and untagging D require D is closed";
        assertEquals(Map.of(), roots(closed, "  op tags feeder\n  op opens gang\n  op takes the tag off feeder\n  op tags r\n"));
        String back = "after opening any switching device D, eventually closing D";
        String both = "  op opens feeder\n  op closes feeder\n  op opens gang\n";
        assertEquals(Map.of(), roots(back, both + "  op closes gang\n"));
        assertEquals(Map.of("r-1", 3), roots(back, both));
        String phase = "after opening any recloser D on phase P, eventually closing D on P";
        assertEquals(Map.of("r-1", 3), roots(phase, "  op opens r on A\n  op opens r on B\n  op closes r on A\n"));
    }

    /** The past may stand anywhere in a condition: what it asks is remembered wherever it stands. */
    @Test
    void the_past_stands_within_other_conditions() {
        String one = "before opening any switching device D require one of\n    doing \"a\" has happened\n    doing \"b\" has happened\n  end";
        assertEquals(Map.of(), roots(one, "  op does \"a\"\n  op opens gang\n"));
        assertEquals(Map.of(), roots(one, "  op does \"b\"\n  op opens gang\n"));
        assertEquals(Map.of("r-1", 1), roots(one, "  op opens gang\n  op does \"a\"\n"));
        String all = one.replace("one of", "all of");
        assertEquals(Map.of("r-1", 2), roots(all, "  op does \"a\"\n  op opens gang\n  op does \"b\"\n"));
        assertEquals(Map.of(), roots(all, "  op does \"b\"\n  op does \"a\"\n  op opens gang\n"));
        String every = "before opening any switching device D require for every person W, briefing W has happened";
        assertEquals(Map.of(), roots(every, "  op briefs mate and op\n  op opens gang\n"));
        assertEquals(Map.of("r-1", 2), roots(every, "  op briefs mate\n  op opens gang\n"));
        String some = "before opening any switching device D require for every person W that is on the load side, briefing W has happened";
        assertEquals(Map.of(), roots(some, "  op briefs mate\n  op opens gang\n"));
        assertEquals(Map.of("r-1", 2), roots(some, "  op briefs op\n  op opens gang\n"));
    }

    @Test
    void the_past_stands_behind_a_name() {
        String named = "define any person W is told: briefing W has happened\nrule r-1\n  before opening any switching device D by any person W\n"
                + "  require W is told" + ENDS;
        assertEquals(Map.of(), Small.roots(Small.judge(named, "  op briefs mate\n  mate opens gang\n")));
        assertEquals(Map.of("r-1", 2), Small.roots(Small.judge(named, "  op briefs mate\n  op opens gang\n")));
    }

    /** What is so since a moment, of something that was so itself since another. */
    @Test
    void the_past_stands_within_the_past() {
        String rule = "before untagging any switching device D require since tagging D, doing \"a\" has happened";
        String untag = "  op takes the tag off gang\n";
        assertEquals(Map.of(), roots(rule, "  op does \"a\"\n  op tags gang\n" + untag));
        assertEquals(Map.of("r-1", 3), roots(rule, "  op tags gang\n  op does \"a\"\n" + untag));
    }

    @Test
    void a_rule_takes_the_bits_of_what_it_remembers() {
        Judgement two = judge("after opening any recloser D on phase P, eventually closing D on P", "  op opens r on A\n  op opens r on B\n  op closes r\n");
        assertEquals(2, two.outcome().rules().get(0).memoryBits());
        Judgement none = judge("before opening any switching device D require D is closed", "  op opens gang\n");
        assertEquals(0, none.outcome().rules().get(0).memoryBits());
    }
}
