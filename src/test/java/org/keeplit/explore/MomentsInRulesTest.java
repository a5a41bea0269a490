package org.keeplit.explore;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Map;
import org.junit.jupiter.api.Test;

/** Which acts bring a rule up: each sort of moment, with the objects, phases and people that it binds. */
class MomentsInRulesTest {
    private static Map<String, Integer> roots(String rule, String steps) {
        String named = "rule r-1\n  " + rule + "\n  says \"x\"\n  because \"Test.\"\n";
        return Small.roots(Small.judge(QuestionsTest.NETWORK, named, "", Small.lines(steps), "", 0));
    }

    /** A rule that asks for what is never so is broken by the act that brings it up, and only there. */
    private static void up(int act, String moment, String steps) {
        assertEquals(Map.of("r-1", act), roots("before " + moment + "\n  require \"never\" is recorded", steps), moment);
        assertEquals(Map.of("r-1", act), roots("after " + moment + "\n  require \"never\" is recorded", steps), moment);
    }

    private static void not(String moment, String steps) {
        assertEquals(Map.of(), roots("before " + moment + "\n  require \"never\" is recorded", steps), moment);
    }

    @Test
    void poles_open_and_close() {
        up(2, "opening any switching device D on phase P", "op does \"a\"; op opens gang");
        up(2, "closing any switching device D", "op opens gang; op closes gang");
        not("closing any switching device D", "op opens gang");
        not("opening any switching device D", "op tags gang");
        // Of the kind that is said, and such as the rule narrows it to.
        up(2, "opening any breaker D", "op opens gang; op opens feeder");
        not("opening any breaker D", "op opens gang; op opens r");
        up(3, "opening any switch D", "op opens r on A; op opens r on B; op opens gang");
        up(1, "opening any switching device D by any person W", "mate opens gang");
    }

    @Test
    void what_is_asked_of_the_phase_and_the_person_is_of_those_of_the_act() {
        String rule = "before opening any switching device D on phase P by any person W\n  require all of\n    P is not phase B\n    W is on the source side\n  end";
        assertEquals(Map.of(), roots(rule, "op opens r on A"));
        assertEquals(Map.of("r-1", 2), roots(rule, "op opens r on A; op opens r on B"));
        assertEquals(Map.of("r-1", 2), roots(rule, "op opens r on A; mate opens r on C"));
        String other = "before opening any switching device D\n  require for every switching device E that is the same as D, E is tagged";
        assertEquals(Map.of(), roots(other, "op tags gang; op opens gang"));
        assertEquals(Map.of("r-1", 3), roots(other, "op tags gang; op opens gang; op opens feeder"));
    }

    @Test
    void contacts_break_and_make_whatever_they_belong_to() {
        up(1, "breaking any contact K on phase P", "op opens gang");
        up(1, "making any contact K on phase P", "op puts the first clamp of J on the source-side line of r on A");
        up(2, "breaking any contact K on phase P", "op does \"a\"; op takes off the load lead of r at the line end on A");
        String clamp = "op puts the first clamp of J on the source-side line of r on A; op takes the first clamp of J off on A";
        up(2, "breaking any contact K on phase P", clamp);
        not("breaking any contact K on phase P", "op puts the first clamp of J on the source-side line of r on A");
    }

    @Test
    void jumpers_grounds_and_leads() {
        String on = "op installs J around r on A, line to line";
        up(1, "clamping any bypass-jumper J on phase P", on);
        up(3, "unclamping any jumper J", on + "; op removes J on A");
        not("unclamping any jumper J", on);
        not("clamping any jumper J", "op opens gang");
        String ground = "op opens gang; op applies G to the load-side line of gang on A, ground end first";
        String off = "; op removes G on A, line end first";
        up(3, "grounding any point X on phase P", ground);
        up(2, "putting the ground end on with any ground-set G", ground);
        up(4, "ungrounding any point X", ground + off);
        up(5, "taking the ground end off with any ground G on phase P", ground + off);
        String lead = "op opens r on A; op takes off the load lead of r at the line end on A";
        up(2, "lifting a lead of any recloser D on phase P", lead);
        up(3, "landing a lead of any recloser D", lead + "; op puts on the load lead of r at the line end on A");
        not("landing a lead of any switching device D", lead);
    }

    @Test
    void people_papers_and_tags() {
        up(2, "going aloft at any site S by any person W", "op does \"a\"; op goes aloft at r");
        up(2, "coming down by any person W", "op goes aloft at r; op comes down");
        up(1, "tagging any switching device D", "op tags gang");
        up(2, "untagging any switching device D", "op tags gang; op takes the tag off gang");
        up(1, "briefing any person W", "op briefs mate");
        String hold = "mate asks op for H; op issues H to mate; mate repeats H; op confirms H; mate releases H";
        int act = 1;
        for (String moment : new String[] {"asking for", "issuing", "repeating", "confirming", "releasing"}) {
            up(act++, moment + " any hold H", hold);
        }
        not("issuing any clearance H", hold);
        assertEquals(Map.of("r-1", 2), roots("before issuing any hold H\n  require some switch D is tagged", hold));
        assertEquals(Map.of(), roots("before issuing any hold H\n  require H is asked for", hold));
        assertEquals(Map.of("r-1", 2), roots("after issuing any hold H\n  require H is asked for", hold));
    }

    @Test
    void words_work_tests_and_settings() {
        up(2, "doing \"b\"", "op does \"a\"; op does \"b\"");
        not("doing \"c\"", "op does \"a\"; op does \"b\"");
        up(1, "recording \"a\"", "op records \"a\"");
        not("recording \"b\"", "op records \"a\"");
        up(1, "inspecting \"gasket\"", "op inspects \"gasket\", finds \"good\" or \"wet\"");
        up(2, "testing any point X on phase P", "op opens gang; op tests the load-side line of gang dead on A");
        up(1, "working on any point X on phase P", "op works on the load-side line of gang on A: \"taps\"");
        up(2, "setting control of any regulator V to manual", "op opens gang; op sets v to manual on A");
        not("setting control of any regulator V to automatic", "op sets v to manual on A");
        up(1, "setting reclosing of any recloser D to blocked on phase P", "op blocks reclosing of r on A");
        not("setting ground-trip of any recloser D to blocked on phase P", "op blocks reclosing of r on A");
        up(2, "running any regulator V to neutral", "op sets v to manual on A; op runs v to neutral on A");
        String off = "op opens r on A; op takes off the source lead of r at the line end on A; op takes off the load lead of r at the line end on A; op lowers r on A";
        up(4, "lowering any recloser D", off);
        up(5, "raising any recloser D", off + "; op raises r on A");
    }

    /** Which contact breaks is known where it was closed, not where it no longer is: of two places that of the clamp that comes off. */
    @Test
    void a_clamp_comes_off_the_place_that_it_is_on() {
        String steps = "op opens gang; op applies G to the load-side line of gang on %s, ground end first; op removes G on A, line end first";
        String rule = " ungrounding any point X on phase P\n  require P is not phase A";
        for (String moment : new String[] {"before", "after"}) {
            assertEquals(Map.of("r-1", 4), roots(moment + rule, steps.formatted("A")), moment);
            assertEquals(Map.of(), roots(moment + rule.replace("phase A", "phase B"), steps.formatted("A")), moment);
        }
        String pending = "after ungrounding any point X on phase P, eventually \"again\" is recorded";
        assertEquals(Map.of("r-1", 5), roots(pending, steps.formatted("A")));
        assertEquals(Map.of(), roots(pending, steps.formatted("A") + "; op records \"again\""));
    }

    @Test
    void a_voltage_class_narrows_what_a_moment_is_of() {
        String rule = "before opening any switching device D\n  require \"never\" is recorded\n  applies to ";
        assertEquals(Map.of("r-1", 1), roots(rule + "5 kV to 15 kV", "op opens gang"));
        assertEquals(Map.of(), roots(rule + "below 5 kV", "op opens gang"));
    }
}
