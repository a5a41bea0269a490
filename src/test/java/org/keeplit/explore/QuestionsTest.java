package org.keeplit.explore;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.keeplit.condition.Truth;
import org.keeplit.verdict.Judgement;

/** Single questions at the end of a few steps, as a writer puts them: each true, false or not known, as one can see on the pole. */
class QuestionsTest {
    /** The small pole with a regulator before its mill, a clinic on the lane and a capacitor bank. */
    static final String NETWORK = Small.network()
                    .replace("load mill at s-5", "regulator v from s-5 to s-6, phases ABC, rating 219 A\nload mill at s-6")
                    .replace("9 customers", "9 customers, critical \"a clinic\"")
            + "capacitor bank-1 at s-3, phases ABC, grounded wye, 300 kvar\n";

    static final String RULE =
            """
            rule something
              at the start some load L is supplied
              says "all dark"
              because "Test."
            """;

    private static boolean ends(String network, String steps, String condition) {
        Judgement judged = Small.judge(network, RULE, "", steps, "\nends with\n  " + condition + "\n", 0);
        List<String> roots = List.copyOf(Small.roots(judged).keySet());
        assertEquals(roots.isEmpty() ? List.of() : List.of("ending"), roots, condition);
        return roots.isEmpty();
    }

    /** Asks a question and its denial after some steps: of what is not known neither can be shown. */
    private static void after(String steps, Truth truth, String... conditions) {
        after(NETWORK, steps, truth, conditions);
    }

    static void after(String network, String steps, Truth truth, String... conditions) {
        String some = Small.lines(steps.isEmpty() ? "op does \"nothing\"" : steps);
        for (String condition : conditions) {
            String denied = condition.contains(" is ")
                    ? condition.replaceFirst(" is ", " is not ")
                    : condition.contains(" has been ") || condition.contains(" has counted ")
                            ? condition.replaceFirst(" has ", " has not ")
                            : condition.replaceFirst(" has ", " does not have ")
                                    .replaceFirst(" covers ", " does not cover ")
                                    .replaceFirst(" stands ", " does not stand ")
                                    .replaceFirst(" feeds ", " does not feed ");
            assertEquals(truth == Truth.TRUE, ends(network, some, condition), condition);
            assertEquals(truth == Truth.FALSE, ends(network, some, denied), denied);
        }
    }

    @Test
    void poles_and_settings() {
        after("", Truth.TRUE, "r is closed on A", "gang is closed", "reclosing of r is on on B");
        after("", Truth.FALSE, "r is open on A", "gang is open", "reclosing of r is blocked on B");
        after("op opens r on A", Truth.TRUE, "r is open on A", "r is closed on B");
        after("op opens r on A", Truth.FALSE, "r is closed on A", "r is open on B");
        after("op blocks reclosing of r on B", Truth.TRUE, "reclosing of r is blocked on B", "reclosing of r is on on A");
    }

    @Test
    void leads_are_on_if_both_ends_are() {
        after("", Truth.TRUE, "the source lead of r is attached on A");
        after("", Truth.FALSE, "the source lead of r is off on A");
        for (String end : List.of("line", "bushing")) {
            String off = "op opens r on A; op takes off the load lead of r at the " + end + " end on A";
            after(off, Truth.TRUE, "the load lead of r is off on A", "the load lead of r is attached on B", "the source lead of r is attached on A");
            after(off, Truth.FALSE, "the load lead of r is attached on A", "the load lead of r is off on B");
        }
    }

    @Test
    void jumpers_are_in_use_at_one_end_and_installed_at_both() {
        after("", Truth.FALSE, "J is in use on A", "J is installed on A");
        for (String clamp : List.of("first", "second")) {
            String one = "op puts the " + clamp + " clamp of J on the source-side line of r on A";
            after(one, Truth.TRUE, "J is in use on A");
            after(one, Truth.FALSE, "J is installed on A", "J is in use on B", "J is clamped to the source-side line of r");
            String all = "op puts the " + clamp + " clamp of J on the source-side line of r";
            after(all, Truth.TRUE, "J is clamped to the source-side line of r");
            after(all, Truth.FALSE, "J is clamped to the load-side line of r");
        }
        String both = "op installs J around r on A, line to line";
        after(both, Truth.TRUE, "J is installed on A", "J is in use on A");
        after(both, Truth.FALSE, "J is installed on B");
    }

    @Test
    void people_are_up_or_on_the_ground() {
        after("", Truth.TRUE, "op is on the ground", "mate is on the ground");
        after("", Truth.FALSE, "op is aloft at r");
        after("op goes aloft at r", Truth.TRUE, "op is aloft at r", "mate is on the ground");
        after("op goes aloft at r", Truth.FALSE, "op is on the ground", "mate is aloft at r", "op is aloft at gang");
        after("op goes aloft at r; op comes down", Truth.TRUE, "op is on the ground");
        after("op goes aloft at r; op comes down; op goes aloft at gang", Truth.FALSE, "op is aloft at r");
        after("op goes aloft at r; op comes down; op goes aloft at gang", Truth.TRUE, "op is aloft at gang");
    }

    @Test
    void a_hold_is_asked_for_out_in_force_and_released() {
        String[] steps = {"mate asks op for H", "op issues H to mate", "mate repeats H", "op confirms H", "mate releases H"};
        String[][] so = {{"asked for"}, {"out"}, {"out"}, {"out", "in force"}, {"released"}};
        for (int i = 0; i < steps.length; i++) {
            String done = String.join("; ", List.of(steps).subList(0, i + 1));
            for (String question : List.of("asked for", "out", "in force", "released")) {
                after(done, Truth.of(List.of(so[i]).contains(question)), "H is " + question);
            }
        }
        after("", Truth.FALSE, "H is asked for", "H is out", "H is in force", "H is released");
    }

    @Test
    void papers_and_people_are_what_their_lines_say() {
        after("", Truth.TRUE, "H covers r", "H is held at feeder", "H is held at r", "H is held by op");
        after("", Truth.FALSE, "H covers gang", "H is held at gang", "H is held by mate");
        after("", Truth.TRUE, "op is in charge", "op is on the source side", "mate is on the load side");
        after("", Truth.FALSE, "mate is in charge", "op is on the load side", "op is at control", "op is the observer",
                "op is a ground hand", "op is qualified", "op is qualified for \"stick work\"");
    }

    @Test
    void tags_records_and_counters_keep_what_was_done() {
        after("", Truth.FALSE, "gang is tagged", "\"sheet\" is recorded");
        after("op tags gang", Truth.TRUE, "gang is tagged");
        after("op tags gang; op takes the tag off gang", Truth.FALSE, "gang is tagged");
        after("op records \"sheet\"", Truth.TRUE, "\"sheet\" is recorded");
        after("op opens r on A", Truth.TRUE, "r has counted 1 on A");
        after("op opens r on A", Truth.FALSE, "r has counted 1 on B", "r has counted 2 on A");
    }

    @Test
    void proofs_are_of_what_was_looked_at() {
        String open = "op opens r on A; op proves r open on A";
        after(open, Truth.TRUE, "r is proved open on A");
        after(open, Truth.FALSE, "r is proved open on B", "r is proved closed on A", "r is proved closed on B");
        after(open + "; op closes r on A", Truth.FALSE, "r is proved open on A");
        after("op proves r closed on B", Truth.TRUE, "r is proved closed on B");
        String carries = "op installs J around r on A, line to line; op proves J carries current on A";
        after(carries, Truth.TRUE, "J is proved to carry current on A");
        after(carries, Truth.FALSE, "J is proved to carry current on B");
        String dead = "op opens gang; op tests the load-side line of gang dead on A";
        after(dead, Truth.TRUE, "the load-side line of gang is proved dead on A");
        after(dead, Truth.FALSE, "the load-side line of gang is proved dead on B");
    }

    /** A tap that follows its control may stand anywhere: that it is at neutral is not known, and neither is that it is not. */
    @Test
    void a_tap_is_at_neutral_or_not_known() {
        after("", Truth.UNKNOWN, "v is at neutral on A");
        String run = "op sets v to manual; op runs v to neutral";
        after(run, Truth.TRUE, "v is at neutral on A");
        after(run, Truth.FALSE, "v is proved at neutral on A");
        after(run + "; op proves v at neutral on A", Truth.TRUE, "v is proved at neutral on A");
        after(run + "; op proves v at neutral on A", Truth.FALSE, "v is proved at neutral on B");
        after(run + "; op sets v to automatic", Truth.UNKNOWN, "v is at neutral on A");
        // Who proves it goes on only if it is so; running once more makes the proof doubtful.
        after("op sets v to manual", Truth.UNKNOWN, "v is at neutral on A");
        after("op sets v to manual; op proves v at neutral on A", Truth.TRUE, "v is at neutral on A");
        after(run + "; op proves v at neutral on A; op runs v to neutral on A", Truth.FALSE, "v is proved at neutral on A");
        after(run + "; op proves v at neutral on A; op runs v to neutral on B", Truth.TRUE, "v is proved at neutral on A");
    }

    @Test
    void a_wait_counts_from_its_minutes_up() {
        String waited = "op opens feeder; op waits 5 min with bank-1 dead";
        after(waited, Truth.TRUE, "bank-1 has been dead for 5 min", "bank-1 has been dead for 4 min");
        after(waited, Truth.FALSE, "bank-1 has been dead for 6 min");
        after("", Truth.FALSE, "bank-1 has been dead for 1 min");
    }

    @Test
    void voltage_ends_at_what_is_open() {
        after("", Truth.TRUE, "mill is energized", "mill is alive", "mill is supplied");
        after("", Truth.FALSE, "mill is dead");
        after("op opens gang", Truth.FALSE, "mill is energized", "mill is alive", "mill is supplied");
        after("op opens gang", Truth.TRUE, "mill is dead", "lane is supplied", "v is isolated");
        after("op opens gang", Truth.FALSE, "gang is isolated", "r is isolated");
        after("op opens r on B", Truth.FALSE, "mill is supplied", "v is isolated");
        after("op opens r on B", Truth.TRUE, "mill is energized on A", "lane is supplied");
        after("op opens r on A", Truth.FALSE, "lane is supplied");
        after("", Truth.TRUE, "lane is critical");
        after("", Truth.FALSE, "mill is critical", "mill has a planned outage");
    }

    @Test
    void what_a_device_is_and_where_it_stands() {
        after("", Truth.TRUE, "r has trips", "r has single-phase units", "gang has ganged", "feeder has ground-trip", "r stands at the site of r");
        after("", Truth.FALSE, "gang has trips", "r has ganged", "gang has single-phase units", "gang has ground-trip", "r stands at the site of gang");
        after("", Truth.TRUE, "feeder feeds the site of r", "r is the same as r");
        after("", Truth.FALSE, "gang feeds the site of r", "r is the same as gang");
        // A device without the setting cannot act in that way.
        after("", Truth.TRUE, "reclosing of feeder is on");
    }

    @Test
    void ways_around_and_what_a_move_would_be() {
        after("", Truth.FALSE, "r is bypassed on A", "r is looped on A");
        String around = "op installs J around r on A, line to line";
        after(around, Truth.TRUE, "r is bypassed on A", "r is looped on A", "r has opening duty parallel break on A");
        after(around, Truth.FALSE, "r is bypassed on B", "r is looped on B", "r has opening duty load break on A");
        after(around + "; op opens r on A", Truth.TRUE, "r has closing duty parallel make on A", "r has opening duty nothing on A");
        after(around + "; op opens r on A", Truth.FALSE, "r has closing duty energizing load on A");
        after("op opens gang", Truth.TRUE, "gang has closing duty energizing load", "gang has opening duty nothing");
    }

    /** A test is for the ground that follows at once: what the tester does next makes it doubtful, what others do does not. */
    @Test
    void a_test_for_dead_grows_stale_unless_the_ground_is_on() {
        String tested = "op opens gang; op tests the load-side line of gang dead on A";
        String[] dead = {"the load-side line of gang is proved dead on A"};
        after(tested, Truth.TRUE, dead);
        for (String moves : List.of("opens r on C", "goes aloft at r", "installs J around r on C, line to line", "closes gang")) {
            after(tested + "; op " + moves, Truth.FALSE, dead);
            after(tested + "; mate " + moves, Truth.of(!moves.equals("closes gang")), dead);
        }
        after(tested + "; op tags gang", Truth.TRUE, dead);
        after(tested + "; op does \"a\"", Truth.TRUE, dead);
        after(tested + "; op applies G to the load-side line of gang on B, ground end first", Truth.TRUE, dead);
        String grounded = tested + "; op applies G to the load-side line of gang on A, ground end first";
        after(grounded + "; op goes aloft at r; op opens r on C", Truth.TRUE, dead);
        after(grounded + "; op removes G on A, line end first; op opens r on C", Truth.FALSE, dead);
        String both = "op opens r; op takes off the load lead of r at the bushing end on B; op tests the load-side line of gang dead on A";
        after(both, Truth.TRUE, dead);
        after(both + "; op takes off the load lead of r at the bushing end on C", Truth.FALSE, dead);
        String waits = "op opens feeder; op tests the load-side line of gang dead on A; ";
        after(waits + "op waits 5 min with bank-1 dead", Truth.FALSE, dead);
        after(waits + "mate waits 5 min with bank-1 dead", Truth.TRUE, dead);
    }

    @Test
    void grounds_join_what_they_hang_on_to_the_earth() {
        String ground = "op opens gang; op applies G to the load-side line of gang on A, ground end first";
        after(ground, Truth.TRUE, "the load-side line of gang is grounded on A", "the load-side line of gang is tied to a ground on A", "G is installed on A");
        after(ground, Truth.FALSE, "the load-side line of gang is grounded on B", "the source-side line of gang is grounded on A",
                "the load-side line of gang is grounded on every phase there on A", "the load-side line of gang is short-circuited on A");
        // Through a regulator it is tied, which nobody may rely on.
        after(ground, Truth.TRUE, "mill is tied to a ground on A");
        after(ground, Truth.FALSE, "mill is grounded on A", "mill is tied to a ground on B");
        after("op opens gang; op applies G to the load-side line of gang, ground end first", Truth.TRUE,
                "the load-side line of gang is grounded on every phase there on A");
        after("op opens gang; op applies G to the load-side line of gang, ground end first; op removes G on B, line end first", Truth.FALSE,
                "the load-side line of gang is grounded on every phase there on A");
    }

    @Test
    void proofs_are_gone_once_what_they_were_of_moves() {
        String carries = "op installs J around r on A, line to line; op proves J carries current on A";
        after(carries + "; op removes J on A", Truth.FALSE, "J is proved to carry current on A");
        after(carries + "; op installs J around r on B, line to line", Truth.TRUE, "J is proved to carry current on A");
        String phased = "op installs J around r on A, line to line; op opens r on A; op proves r in phase on A";
        after(phased, Truth.TRUE, "r is proved in phase on A");
        after(phased + "; op closes r on A", Truth.FALSE, "r is proved in phase on A");
        after(phased + "; op opens r on B", Truth.TRUE, "r is proved in phase on A");
        after(phased + "; op takes off the load lead of r at the line end on A", Truth.FALSE, "r is proved in phase on A");
        after(phased + "; op takes off the load lead of r at the line end on B", Truth.TRUE, "r is proved in phase on A");
        String through = "op proves r carries current on A";
        after(through, Truth.TRUE, "r is proved to carry current on A");
        after(through + "; op opens r on A", Truth.FALSE, "r is proved to carry current on A");
        after(through + "; op opens r on B", Truth.TRUE, "r is proved to carry current on A");
        String open = "op opens r on A; op proves r open on A";
        after(open + "; op takes off the load lead of r at the line end on A", Truth.TRUE, "r is proved open on A");
        String waited = "op opens feeder; op waits 5 min with bank-1 dead; ";
        after(waited + "op closes feeder", Truth.FALSE, "bank-1 has been dead for 5 min");
        after(waited + "op closes feeder; op opens feeder", Truth.FALSE, "bank-1 has been dead for 5 min");
    }

    @Test
    void what_was_found_is_one_of_what_may_be() {
        String looked = "op inspects \"gasket\", finds \"good\" or \"wet\"";
        after("", Truth.FALSE, "\"gasket\" is found \"wet\"");
        after(looked, Truth.UNKNOWN, "\"gasket\" is found \"good\"", "\"gasket\" is found \"wet\"");
    }

    @Test
    void units_are_on_the_pole_on_the_ground_or_in_the_shop() {
        String off = "op opens r; op takes off the source lead of r at the line end; op takes off the load lead of r at the line end";
        after("", Truth.TRUE, "r is on the pole on A");
        after("", Truth.FALSE, "r is on the ground on A");
        after(off + "; op lowers r on A", Truth.TRUE, "r is on the ground on A", "r is on the pole on B");
        after(off + "; op lowers r on A", Truth.FALSE, "r is on the pole on A", "r is in the shop on A");
        after(off + "; op takes r to the shop on A", Truth.TRUE, "r is in the shop on A");
        after(off + "; op lowers r on A; op raises r on A", Truth.TRUE, "r is on the pole on A");
    }
}
