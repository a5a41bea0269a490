package org.keeplit.explore;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** The table "Possible" of DEVELOPERS.md, row by row: what can be done ends well, what cannot ends the path where it stands. */
class PossibleTest {
    private static Map<String, Integer> roots(String steps) {
        return Small.roots(Small.judge(QuestionsTest.NETWORK, QuestionsTest.RULE, "", Small.lines(steps), "", 0));
    }

    private static void can(String... steps) {
        for (String some : steps) {
            assertEquals(Map.of(), roots(some), some);
        }
    }

    /** The last act cannot be done; all before it can. @param acts how many acts there are, that one included */
    private static void cannot(int acts, String steps) {
        assertEquals(Map.of("cannot", acts), roots(steps), steps);
    }

    @Test
    void a_pole_opens_if_it_is_closed_and_closes_if_it_is_open() {
        can("op opens gang; op closes gang; op opens gang", "op opens r on A; op opens r on B");
        cannot(1, "op closes gang");
        cannot(2, "op opens gang; op opens gang");
        cannot(2, "op opens r on A; op opens r on A");
        cannot(1, "op closes r on B");
    }

    @Test
    void a_lead_end_comes_off_if_it_is_on_and_goes_on_if_it_is_off() {
        String off = "op opens r on A; op takes off the load lead of r at the line end on A";
        can(off + "; op puts on the load lead of r at the line end on A");
        can(off + "; op takes off the load lead of r at the bushing end on A");
        cannot(3, off + "; op takes off the load lead of r at the line end on A");
        cannot(1, "op puts on the load lead of r at the line end on A");
        cannot(1, "op puts on the load lead of r at the bushing end on A");
    }

    @Test
    void a_lead_goes_on_its_line_only_with_the_unit_on_the_pole() {
        String off = "op opens r on A; op takes off the source lead of r at the line end on A; op takes off the load lead of r at the line end on A; op lowers r on A";
        can(off, off + "; op takes off the load lead of r at the bushing end on A; op puts on the load lead of r at the bushing end on A");
        cannot(5, off + "; op puts on the load lead of r at the line end on A");
        can(off + "; op raises r on A; op puts on the load lead of r at the line end on A");
    }

    @Test
    void a_unit_is_carried_if_no_lead_of_it_is_on_at_both_ends() {
        String free = "op opens r on A; op takes off the source lead of r at the line end on A; op takes off the load lead of r at the bushing end on A";
        can(free + "; op lowers r on A", free + "; op takes r to the shop on A");
        cannot(1, "op lowers r on A");
        cannot(3, "op opens r on A; op takes off the source lead of r at the line end on A; op lowers r on A");
        cannot(3, "op opens r on A; op takes off the load lead of r at the line end on A; op lowers r on A");
        cannot(4, free + "; op raises r on A");
        cannot(5, free + "; op lowers r on A; op lowers r on A");
        // The leads of another unit do not hold it.
        cannot(4, free + "; op lowers r on B");
    }

    @Test
    void clamps_and_grounds_go_on_if_off_and_come_off_if_on() {
        String on = "op installs J around r on A, line to line";
        can(on + "; op removes J on A", on + "; op installs J around r on B, line to line");
        cannot(3, on + "; op puts the first clamp of J on the source-side line of r on A");
        cannot(1, "op takes the second clamp of J off on A");
        cannot(3, on + "; op takes the second clamp of J off on B");
        String ground = "op opens gang; op applies G to the load-side line of gang on A, ground end first";
        can(ground + "; op removes G on A, line end first");
        cannot(2, "op opens gang; op removes G on A, line end first");
        cannot(4, ground + "; op applies G to the load-side line of gang on A, ground end first");
    }

    @Test
    void people_go_up_where_they_are_not_and_come_down_from_where_they_are() {
        can("op goes aloft at r; op comes down; op goes aloft at r", "op goes aloft at r; op goes aloft at gang", "op goes aloft at r; mate goes aloft at r");
        cannot(1, "op comes down");
        cannot(2, "op goes aloft at r; op goes aloft at r");
        cannot(2, "op goes aloft at r; mate comes down");
    }

    @Test
    void a_hold_goes_its_way_step_by_step() {
        List<String> all = List.of("mate asks op for H", "op issues H to mate", "mate repeats H", "op confirms H", "mate releases H");
        // From each place on the way these may come next: what was not asked for may be issued, what is out may be released.
        List<List<Integer>> next = List.of(List.of(0, 1), List.of(1), List.of(2, 4), List.of(3, 4), List.of(4), List.of(0));
        for (int done = 0; done <= all.size(); done++) {
            for (int then = 0; then < all.size(); then++) {
                String steps = String.join("; ", all.subList(0, done)) + (done == 0 ? "" : "; ") + all.get(then);
                if (next.get(done).contains(then)) {
                    can(steps);
                } else {
                    cannot(done + 1, steps);
                }
            }
        }
    }

    @Test
    void a_regulator_runs_to_neutral_by_hand_and_with_its_control_power() {
        can("op sets v to manual on A; op runs v to neutral on A; op runs v to neutral on A");
        cannot(1, "op runs v to neutral on A");
        cannot(3, "op sets v to manual on A; op opens the control power of v on A; op runs v to neutral on A");
    }

    /** Whoever looks, proves or tests and finds otherwise stops: nothing is changed by it. */
    @Test
    void who_finds_otherwise_stops() {
        can("op opens gang; op tests the load-side line of gang dead on A", "op proves r closed on A", "op proves r carries current on A");
        for (String look : List.of("tests the load-side line of gang dead on A", "proves gang open", "checks gang is tagged", "proves J carries current on A")) {
            assertEquals(Map.of("stop", 2), roots("op does \"a\"; op " + look), look);
        }
    }

    @Test
    void a_tag_goes_on_if_none_hangs_and_comes_off_if_one_does() {
        can("op tags gang; op takes the tag off gang; op tags gang");
        cannot(2, "op tags gang; op tags gang");
        cannot(1, "op takes the tag off gang");
    }

    @Test
    void what_changes_nothing_can_always_be_done() {
        can("op does \"a\"; op does \"a\"", "op records \"a\"; op records \"a\"", "op blocks reclosing of r; op blocks reclosing of r",
                "op briefs mate; op briefs mate");
    }
}
