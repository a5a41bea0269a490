package org.keeplit.insight;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.LongBuffer;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.keeplit.Keeplit;
import org.keeplit.explore.Proving;
import org.keeplit.explore.Stepper;
import org.keeplit.language.Library;
import org.keeplit.outcome.Limits;
import org.keeplit.outcome.RetreatTable;
import org.keeplit.outcome.Watcher;
import org.keeplit.procedure.Instance;
import org.keeplit.procedure.Procedure;
import org.keeplit.program.Act;
import org.keeplit.program.Orders;
import org.keeplit.program.WaysBack;
import org.keeplit.text.Problems;

/** Ways back to normal: what can be told by hand, and their lengths against a search that tries everything. */
class RetreatsTest {
    private static RetreatTable table(Library library) {
        Problems problems = new Problems();
        assertEquals(List.of(), library.problems());
        RetreatTable table = Keeplit.retreat(library, Limits.USUAL, Watcher.NOBODY, problems).get(0);
        assertEquals(List.of(), problems.sorted());
        return table;
    }

    private static List<String> words(RetreatTable.Stop stop) {
        return stop.way().orElseThrow().stream().map(a -> a.actor() + " " + a.text()).toList();
    }

    @Test
    void theSwitchIsClosedBeforeItsBypassOpens() {
        RetreatTable table = table(OnePole.ganged("  bypass: op closes bridge\n  open: op opens main\n"));
        assertTrue(table.holds());
        assertEquals(List.of("bypass", "open"), table.stops().stream().map(s -> s.part().name()).toList());
        assertEquals(List.of("op opens bridge"), words(table.stops().get(0)));
        assertEquals(List.of("op closes main", "op opens bridge"), words(table.stops().get(1)));
        assertEquals(2, table.stops().get(1).atLeast());
        assertEquals(0, table.none());
    }

    @Test
    void goingOnIsTheWayBackWhereThatIsShorter() {
        RetreatTable table = table(OnePole.ganged(
                "  bypass: op closes bridge\n  open: op opens main\n  close: op closes main\n  back: op opens bridge\n"));
        assertEquals(List.of("op opens bridge"), words(table.stops().get(2)));
        assertEquals(List.of(), words(table.stops().get(3)));
    }

    @Test
    void aPointOfNoReturnIsProved() {
        Library library = OnePole.withRule(
                """
                rule no-way-back
                  before closing any switch D on phase P
                  require D is closed on P
                  says "{D} would close again"
                  because "Test."
                """,
                "  bypass: op closes bridge\n  open: op opens main\n");
        RetreatTable table = table(library);
        assertEquals(0, table.stops().get(0).none());
        assertEquals(1, table.stops().get(1).none());
        assertTrue(table.stops().get(1).proved());
        assertEquals(Optional.empty(), table.stops().get(1).way());
        assertEquals(1, table.none());
    }

    @Test
    void anOutageIsWhatTheFeedingDeviceTakes() {
        RetreatTable table = table(OnePole.ganged("  bypass: op closes bridge\n"));
        // Nobody goes up anywhere in it, so there is no place that is fed.
        assertEquals(Set.of(), table.outage().orElseThrow().devices());
        assertEquals(0, table.outage().orElseThrow().customers());
    }

    /** Where everything can be tried, no way is shorter than the one that is found. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "  bypass: op closes bridge\n  open: op opens main\n",
                "  bypass: op closes bridge\n  look: op proves bridge closed on all phases\n  open: op opens main\n"
                        + "  opened: op proves main open on all phases\n",
                "  other: op does \"waves\"\n  bypass: op closes bridge\n  open: op opens main\n  close: op closes main\n"
            })
    void noWayIsShorter(String steps) {
        Library library = OnePole.ganged(steps);
        RetreatTable table = table(library);
        Procedure procedure = library.givenProcedures().get(0);
        Instance one = Instance.of(procedure, library.networks()).get(0);
        List<Integer> lengths = Proving.using(one.procedure(), one.network(), one.proof(), new Problems(), prepared ->
                        Stepper.with(Proving.with(prepared, WaysBack.of(prepared.program())), stepper -> {
                            List<Integer> all = new ArrayList<>();
                            long[] state = stepper.start();
                            while (!stepper.isOver(state)) {
                                state = stepper.attempt(state, stepper.moves(state).get(0)).states().get(0);
                                all.add(shortest(stepper, stepper.withoutOrders(state)));
                            }
                            return all;
                        }))
                .orElseThrow();
        // Each of these steps is one act or three in any order; the way back counts from its last.
        List<Integer> told = table.stops().stream().map(s -> s.way().orElseThrow().size()).toList();
        assertTrue(lengths.containsAll(told), lengths + " against " + told);
        assertEquals(lengths.get(lengths.size() - 1), told.get(told.size() - 1));
    }

    private static int shortest(Stepper stepper, long[] from) {
        Normal goal = new Normal(stepper);
        Set<LongBuffer> met = new HashSet<>();
        List<long[]> level = List.of(from);
        met.add(LongBuffer.wrap(from));
        for (int length = 0; !level.isEmpty(); length++) {
            if (level.stream().anyMatch(goal::isReached)) {
                return length;
            }
            List<long[]> next = new ArrayList<>();
            for (long[] state : level) {
                for (Act act : stepper.program().acts()) {
                    Stepper.Tried tried = stepper.attempt(state, Orders.Move.atWill(act));
                    if (tried.isSafe()) {
                        tried.states().stream().filter(s -> met.add(LongBuffer.wrap(s))).forEach(next::add);
                    }
                }
            }
            level = next;
        }
        throw new AssertionError("no way back");
    }
}
