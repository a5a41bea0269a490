package org.keeplit.insight;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.keeplit.Keeplit;
import org.keeplit.outcome.Limits;
import org.keeplit.outcome.OrderTable;
import org.keeplit.outcome.Watcher;
import org.keeplit.text.Problems;
import org.keeplit.verdict.Judgement;

/** What must come before what, against a check of every order that there is. */
class OrderingTest {
    private static OrderTable table(String steps) {
        return Keeplit.order(OnePole.ganged(steps), Limits.USUAL, Watcher.NOBODY, new Problems()).get(0);
    }

    private static boolean holds(List<String> lines) {
        List<Judgement> all =
                Keeplit.check(OnePole.ganged(String.join("\n", lines) + "\n"), Limits.USUAL, Watcher.NOBODY, new Problems());
        return all.get(0).status() == Judgement.Status.HOLDS;
    }

    /** Each procedure's steps, separated by semicolons; all hold as they are. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "op closes bridge; op opens main; op closes main; op opens bridge",
                "op closes bridge; op checks bridge is closed; op opens main; op checks mill is supplied; op does \"waves\"",
                "op closes bridge; op opens main; op does \"waves\"; op closes main; op checks main is closed; op opens bridge",
            })
    void arrowsAreThoseOfEveryOrder(String text) {
        List<String> lines = new ArrayList<>(List.of(text.split("; ")));
        for (int i = 0; i < lines.size(); i++) {
            lines.set(i, "  s-" + i + ": " + lines.get(i));
        }
        OrderTable table = table(String.join("\n", lines) + "\n");
        assertTrue(table.holds());
        int n = lines.size();
        boolean[][] exists = new boolean[n][n];
        boolean every = true;
        for (List<Integer> order : orders(n)) {
            boolean holds = holds(order.stream().map(lines::get).toList());
            boolean obeys = true;
            for (OrderTable.Pair pair : table.pairs()) {
                boolean swapped = order.indexOf(pair.after()) < order.indexOf(pair.before());
                exists[pair.before()][pair.after()] |= holds && swapped;
                obeys &= !(swapped && pair.kind() == OrderTable.Kind.NECESSARY);
            }
            every &= holds || !obeys;
        }
        assertEquals(n * (n - 1) / 2, table.pairs().size());
        for (OrderTable.Pair pair : table.pairs()) {
            assertEquals(
                    exists[pair.before()][pair.after()], pair.kind() != OrderTable.Kind.NECESSARY, pair::toString);
            assertEquals(pair.kind() != OrderTable.Kind.FREE, pair.harm().isPresent());
        }
        assertEquals(every ? OrderTable.Answer.SAFE : OrderTable.Answer.NOT_SAFE, table.necessary().answer());
    }

    private static List<List<Integer>> orders(int n) {
        List<List<Integer>> all = new ArrayList<>(List.of(List.of()));
        for (int length = 0; length < n; length++) {
            List<List<Integer>> longer = new ArrayList<>();
            for (List<Integer> order : all) {
                IntStream.range(0, n).filter(i -> !order.contains(i)).forEach(i -> {
                    List<Integer> next = new ArrayList<>(order);
                    next.add(i);
                    longer.add(next);
                });
            }
            all = longer;
        }
        return all;
    }

    @Test
    void whyTheBypassComesFirst() {
        OrderTable table = table("  bypass: op closes bridge\n  open: op opens main\n");
        OrderTable.Pair pair = table.directBefore(1).get(0);
        assertEquals(OrderTable.Kind.NECESSARY, pair.kind());
        assertEquals("mill loses supply", pair.harm().orElseThrow().sentence());
        assertEquals("open", pair.harm().orElseThrow().step());
    }

    @Test
    void whatGoesWrongOnlyWithNothingElseChangedIsToldApart() {
        // Looking before the bridge opens again goes wrong only while the main is still open, which is not said of all orders.
        OrderTable table = table(
                "  bypass: op closes bridge\n  open: op opens main\n  close: op closes main\n  back: op opens bridge\n"
                        + "  look: op checks bridge is open\n");
        OrderTable.Pair pair = table.pairs().stream()
                .filter(p -> p.before() == 0 && p.after() == 4)
                .findFirst()
                .orElseThrow();
        assertEquals(OrderTable.Kind.FREE, pair.kind(), "the bridge is open before all");
        OrderTable.Pair back = table.pairs().stream()
                .filter(p -> p.before() == 3 && p.after() == 4)
                .findFirst()
                .orElseThrow();
        assertEquals(OrderTable.Kind.AS_WRITTEN, back.kind(), "just before it is not, and then the crew would stop");
        assertEquals("stop", back.harm().orElseThrow().name());
    }

    @Test
    void whatDoesNotHoldIsNotTakenApart() {
        OrderTable table = table("  open: op opens main\n");
        assertEquals(false, table.holds());
        assertEquals(List.of(), table.pairs());
    }

    @Test
    void whatWasStoppedSaysNothing() {
        OrderTable table = Keeplit.order(OnePole.ganged("  op closes bridge\n  op opens main\n"), Limits.USUAL, (states, open) -> false, new Problems()).get(0);
        assertTrue(table.cut());
        assertEquals(List.of(), table.pairs());
        assertEquals(OrderTable.Answer.UNDECIDED, table.asWritten().answer());
    }
}
