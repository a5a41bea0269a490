package org.keeplit.explore;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.keeplit.outcome.TraceStep;
import org.keeplit.verdict.Judgement;

/**
 * What may happen by chance, on procedures small enough to count by hand. A mark (the reclosing of r blocked, or gang open) comes with
 * an event, so that a rule can ask for what is so once it has happened.
 */
class EventsInRulesTest {
    private static final String LAST = "\n  says \"x\"\n  because \"Test.\"\n";
    private static final String MARKED = "while for every recloser D, reclosing of D is blocked on A\n  require ";

    private static Judgement judge(String event, String rule, String steps, String tail) {
        return judge(event, rule, steps, tail, 1);
    }

    private static Judgement judge(String event, String rule, String steps, String tail, int most) {
        String rules = "event chance\n  " + event + "\n  says \"by chance\"\n" + rule;
        return Small.judge(Small.network(), rules, "", steps, tail, most);
    }

    private static Map<String, Integer> roots(String event, String rule, String... steps) {
        String some = "  " + String.join("\n  ", steps) + "\n";
        return Small.roots(judge(event, "rule r-1\n  " + rule + "\n  even if chance" + LAST, some, ""));
    }

    private static final String SUPPLIED = "always every load L is supplied";
    private static final String[] AROUND = {"op installs J around r on B, line to line", "op opens r on B"};

    @Test
    void either_clamp_of_a_jumper_comes_off_once_it_is_installed() {
        String event = "any bypass-jumper J and any phase P of J\n  when J is %s on P\n  then J comes off on P";
        assertEquals(Map.of("r-1", 4), roots(event.formatted("installed"), SUPPLIED, AROUND));
        // A jumper whose one clamp is off is no longer installed: it never comes off before, and the load is not lost there.
        assertEquals(Map.of(), roots(event.formatted("not in use"), SUPPLIED, AROUND));
        // On both ends: which one came off can be told by where it still hangs.
        String hangs = "while for every recloser D, D is open on B\n  require for every bypass-jumper J, J is in use on B";
        assertEquals(Map.of(), roots(event.formatted("installed"), hangs, AROUND));
        String lost = "while for every recloser D, D is open on B\n  require for every bypass-jumper J, J is installed on B";
        assertEquals(Map.of("r-1", 4), roots(event.formatted("installed"), lost, AROUND));
    }

    @Test
    void a_rule_that_does_not_name_the_event_is_excused_and_what_the_writer_states_is_not_asked() {
        String event = "any switch D\n  when D is tagged\n  then D opens";
        String named = "rule named\n  while for every switch D, D is tagged\n  require some load L is supplied\n  even if chance" + LAST;
        String other = "rule other\n  " + SUPPLIED + LAST;
        Judgement excused = judge(event, named + other, "  op tags gang\n  op does \"a\"\n    expects gang is closed\n", "\nends with\n  gang is closed\n");
        assertEquals(Map.of(), Small.roots(excused));
        // Nothing at the start, one act, the tag; from there on with the switch open, too.
        assertEquals(5, excused.outcome().states());
        Judgement told = judge(event, named + other + "  even if chance\n", "  op tags gang\n", "");
        assertEquals(Map.of("other", 2), Small.roots(told));
    }

    @Test
    void what_an_event_breaks_by_itself_at_the_start_is_no_fault_of_the_steps() {
        assertEquals(Map.of(), roots("any switch D\n  then D opens", SUPPLIED, "op tags gang"));
        // What it breaks only after a step is.
        assertEquals(
                Map.of("r-1", 2),
                roots("any switch D\n  then D opens", "while for every switch D, D is tagged\n  require every load L is supplied", "op tags gang"));
    }

    @Test
    void a_device_moves_by_units_or_ganged() {
        String all = "while for every recloser D, reclosing of D is blocked\n  require for every recloser D, D is %s";
        String block = "op blocks reclosing of r";
        assertEquals(Map.of("r-1", 4), roots("any recloser D\n  then D opens", all.formatted("closed"), block));
        assertEquals(Map.of("r-1", 4), roots("any recloser D\n  then D opens on A", all.formatted("closed on A"), block));
        assertEquals(Map.of(), roots("any recloser D\n  then D opens on A", all.formatted("closed on B"), block));
        assertEquals(Map.of(), roots("any recloser D\n  then D opens on A", all.formatted("closed on C"), block));
        assertEquals(Map.of("r-1", 4), roots("any recloser D\n  then D opens", all.formatted("closed on C"), block));
        // One that is open already does not open, one that is ganged opens as a whole.
        String tagged = "while for every switch D, D is tagged\n  require for every switch D, D is %s on C";
        assertEquals(Map.of("r-1", 2), roots("any switch D\n  then D opens on A", tagged.formatted("closed"), "op tags gang"));
        assertEquals(
                Map.of("r-1", 3),
                roots("any switch D\n  then D closes on A", tagged.formatted("open"), "op opens gang", "op tags gang"));
        assertEquals(Map.of(), roots("any switch D\n  then D trips", tagged.formatted("closed"), "op tags gang"));
    }

    @Test
    void what_trips_may_close_again_by_itself_and_what_opens_does_not() {
        // Two ways on from a trip: it stays out, or it recloses; one from opening.
        String watched = "rule r-1\n  while for every switch D, D is tagged\n  require some load L is supplied\n  even if chance" + LAST;
        String event = "any recloser D\n  when for every switch E, E is tagged\n  then D %s on A";
        int opened = judge(event.formatted("opens"), watched, "  op tags gang\n", "").outcome().states();
        int tripped = judge(event.formatted("trips"), watched, "  op tags gang\n", "").outcome().states();
        assertEquals(3, opened);
        assertEquals(4, tripped);
        String blocked = "  op blocks reclosing of r on A\n  op tags gang\n";
        assertEquals(
                judge(event.formatted("opens"), watched, blocked, "").outcome().states(),
                judge(event.formatted("trips"), watched, blocked, "").outcome().states());
    }

    @Test
    void a_setting_becomes_another_value_where_the_device_has_it() {
        String rule = "while for every switch D, D is tagged\n  require for every recloser D, reclosing of D is on on B";
        assertEquals(Map.of("r-1", 2), roots("any recloser D\n  then reclosing of D becomes blocked", rule, "op tags gang"));
        assertEquals(Map.of("r-1", 2), roots("any recloser D\n  then reclosing of D becomes blocked on B", rule, "op tags gang"));
        assertEquals(Map.of(), roots("any recloser D\n  then reclosing of D becomes blocked on A", rule, "op tags gang"));
        assertEquals(Map.of(), roots("any switch D\n  then reclosing of D becomes blocked", rule, "op tags gang"));
    }

    /** The mark comes with the event, while somebody has still something to do. */
    @Test
    void who_has_left_does_nothing_any_more() {
        String event = "any person W that is on the %s side and any recloser D\n  when \"two\" is not recorded\n"
                + "  then reclosing of D becomes blocked on A";
        String rule = MARKED + "\"two\" is not recorded";
        String[] steps = {"op records \"one\"", "mate records \"two\""};
        String mate = event.formatted("load");
        assertEquals(Map.of("r-1", 3), roots(mate, rule, steps));
        assertEquals(Map.of(), roots(mate + "\n  then W leaves", rule, steps));
        assertEquals(Map.of(), roots(mate + "\n  then W is out of reach", rule, steps));
        // The other one had done all of theirs: it goes on without them.
        assertEquals(Map.of("r-1", 3), roots(event.formatted("source") + "\n  then W leaves", rule, steps));
    }

    @Test
    void with_somebody_out_of_reach_nothing_is_said_of_holds() {
        String event = "any person W that is on the %s side and any recloser D\n  when no hold H is out\n"
                + "  then reclosing of D becomes blocked on A";
        String rule = MARKED + "no hold H is out";
        // One asks, and the other issues; whoever is out of reach, nothing is issued.
        String[] steps = {"mate asks op for H", "op issues H to mate"};
        for (String side : List.of("source", "load")) {
            assertEquals(Map.of("r-1", 3), roots(event.formatted(side), rule, steps));
            assertEquals(Map.of(), roots(event.formatted(side) + "\n  then W is out of reach", rule, steps));
        }
        // What is no word, the one who is in reach still does.
        String record = MARKED + "\"two\" is not recorded";
        String before = event.replace("no hold H is out", "\"two\" is not recorded");
        assertEquals(
                Map.of("r-1", 2),
                roots(before.formatted("load") + "\n  then W is out of reach", record, "op records \"two\""));
    }

    /** Whoever it is, the same happens: it is one event, and may happen where what it asks is so of anybody. */
    @Test
    void what_is_the_same_for_several_is_asked_of_each() {
        String rule = "while for every switch D, D is tagged\n  require for every %s D, D is closed on A";
        String opens = "any person W and any switch D\n  when W is on the %s side\n  then D opens";
        for (String side : List.of("source", "load")) {
            assertEquals(Map.of("r-1", 2), roots(opens.formatted(side), rule.formatted("switch"), "op tags gang"));
        }
        // A ganged switch opens as a whole, whichever phase is named.
        String ganged = "any switch D and any phase P of D\n  when P is phase %s\n  then D opens on P";
        for (String phase : List.of("A", "B", "C")) {
            assertEquals(Map.of("r-1", 2), roots(ganged.formatted(phase), rule.formatted("switch"), "op tags gang"));
        }
        String nobody = "any person W and any switch D\n  when W is at control\n  then D opens";
        assertEquals(Map.of(), roots(nobody, rule.formatted("switch"), "op tags gang"));
    }

    @Test
    void an_event_happens_once_and_one_in_all_unless_more_are_asked_for() {
        String event = "any switching device D\n  when D is tagged\n  then D opens";
        String rule = "while for every switch D, D is tagged\n  require at most one switching device D is open on A";
        assertEquals(Map.of(), roots(event, rule, "op tags gang", "op tags r"));
        assertEquals(Map.of("r-1", 4), roots(event, rule, "op tags gang", "op tags r", "op opens feeder"));
    }

    @Test
    void of_two_events_each_happens_once() {
        String event = "any switching device D\n  when D is tagged\n  then D opens";
        String rule = "rule r-1\n  while for every switch D, D is tagged\n  require at most one switching device D is open on A\n  even if chance" + LAST;
        String steps = "  op tags gang\n  op tags r\n";
        assertEquals(Map.of(), Small.roots(judge(event, rule, steps, "", 1)));
        assertEquals(Map.of("r-1", 4), Small.roots(judge(event, rule, steps, "", 2)));
    }

    @Test
    void an_event_that_no_rule_names_never_comes() {
        String rule = "rule r-1\n  while for every switch D, D is tagged\n  require some load L is supplied\n  even if chance" + LAST;
        String other = "event other\n  any switch D\n  then D opens\n  says \"other\"\n";
        String event = "any recloser D\n  then D opens on A";
        assertEquals(4, judge(event, rule, "  op tags gang\n", "").outcome().states());
        assertEquals(4, judge(event, other + rule, "  op tags gang\n", "").outcome().states());
        assertEquals(6, judge(event, other + rule.replace("even if chance", "even if chance, other"), "  op tags gang\n", "").outcome().states());
    }

    /** What opens by chance stays open, even where the same device may reclose after a trip. */
    @Test
    void only_what_trips_recloses() {
        String other = "event other\n  any recloser D\n  then D trips on A\n  says \"it trips\"\n";
        String rule = "rule r-1\n  while for every recloser D, reclosing of D is blocked on B\n  require for every recloser D, D is open on A\n  even if chance, other" + LAST;
        String event = "any recloser D\n  when for every switch E, E is tagged\n  then D %s on A\n  then reclosing of D becomes blocked on B";
        assertEquals(Map.of(), Small.roots(judge(event.formatted("opens"), other + rule, "  op tags gang\n", "")));
        assertEquals(Map.of("r-1", 3), Small.roots(judge(event.formatted("trips"), other + rule, "  op tags gang\n", "")));
    }

    @Test
    void either_clamp_may_be_the_one_that_comes_off() {
        String event = "any bypass-jumper J and any phase P of J\n  when J is installed on P\n  then J comes off on P";
        String open = "while for every recloser D, D is open on B\n  require ";
        // Without its clamp on the source side the free jumper is dead, without the other it is alive and the load is not supplied.
        assertEquals(Map.of("r-1", 4), roots(event, open + "for every bypass-jumper J, J is energized on B", AROUND));
        assertEquals(
                Map.of("r-1", 4),
                roots(event, open + "one of\n    every load L is supplied\n    for every bypass-jumper J, J is dead on B\n  end", AROUND));
    }

    @Test
    void a_test_for_dead_is_stale_after_a_move_by_chance_and_after_nothing_else() {
        String rule = "while \"go\" is recorded\n  require for every switch D, the load-side line of D is proved dead on A";
        String[] steps = {"op opens gang", "op tests the load-side line of gang dead on A", "op records \"go\""};
        assertEquals(Map.of("r-1", 4), roots("any recloser D\n  when \"go\" is recorded\n  then D opens on C", rule, steps));
        assertEquals(Map.of(), roots("any recloser D\n  when \"go\" is recorded\n  then reclosing of D becomes blocked on C", rule, steps));
        assertEquals(Map.of(), roots("any person W\n  when \"go\" is recorded\n  then W leaves", rule, steps));
    }

    @Test
    void the_trace_says_what_happened_to_what() {
        Judgement judged = judge(
                "any recloser D and any phase P of D\n  then D opens on P",
                "rule r-1\n  while for every switch D, D is tagged\n  require for every recloser D, D is closed on C\n  even if chance" + LAST,
                "  op tags gang\n", "");
        List<TraceStep> trace = judged.outcome().findings().get(0).trace();
        assertEquals(List.of("by chance: by chance", "op: tags gang"), trace.stream().map(t -> t.actor() + ": " + t.text()).sorted().toList());
    }
}
