package org.keeplit.insight;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.keeplit.Keeplit;
import org.keeplit.language.Library;
import org.keeplit.outcome.Limits;
import org.keeplit.outcome.SlipKind;
import org.keeplit.outcome.SlipResult;
import org.keeplit.outcome.SlipTable;
import org.keeplit.outcome.Watcher;
import org.keeplit.text.ProblemPrinter;
import org.keeplit.text.Problems;

/** Slips whose end can be told by hand: a bypass switch around a switch that feeds a mill. */
class SlipsTest {
    private static SlipTable table(String steps) {
        return table("ganged", steps);
    }

    private static SlipTable table(String build, String steps) {
        return tables(OnePole.NETWORK.replace("%BUILD%", build), "", steps, "").get(0);
    }

    /** @param starts lines of {@code starts with} @param expected the problems that must come */
    private static List<SlipTable> tables(String network, String starts, String steps, String expected) {
        Library library = OnePole.read(network, starts, steps, "");
        Problems problems = new Problems();
        library.problems().forEach(problems::add);
        List<SlipTable> tables = Keeplit.slips(library, Limits.USUAL, Watcher.NOBODY, problems);
        String told = ProblemPrinter.print(problems.sorted());
        assertTrue(expected.isEmpty() ? told.isEmpty() : told.contains(expected), told);
        return tables;
    }

    /** {@return the end of each slip, by step and kind} */
    private static Map<String, String> ends(SlipTable table) {
        Map<String, String> all = new TreeMap<>();
        for (SlipResult one : table.slips()) {
            all.put(one.step() + " " + one.kind().word(), one.ending().word());
        }
        return all;
    }

    @Test
    void withoutACheckAForgottenBypassCostsTheMill() {
        SlipTable table = table("  bypass: op closes bridge\n  open: op opens main\n");
        assertTrue(table.holds());
        Map<String, String> ends = ends(table);
        assertEquals("exposed", ends.get("bypass left out"), ends::toString);
        assertEquals("noticed", ends.get("bypass twice"));
        // It is open already.
        assertEquals("noticed", ends.get("bypass wrong way"));
        assertEquals("harmless", ends.get("open left out"));
        assertEquals("exposed", ends.get("open early"));
        // The neighbour feeds the hall.
        assertEquals("exposed", ends.get("open neighbour"));
    }

    @Test
    void theLookThatCatchesItIsFound() {
        SlipTable table = table("  bypass: op closes bridge\n  open: op opens main\n");
        Map<String, String> cures = new TreeMap<>();
        table.slips().forEach(s -> s.cure().ifPresent(c -> cures.put(
                s.step() + " " + s.kind().word(), c.look() + " before " + c.before())));
        assertEquals(
                Map.of("bypass left out", "proves bridge closed on phase ABC before open"), keep(cures, "bypass"));
        // Who opens too early does not wait for anybody's look.
        assertEquals(null, cures.get("open early"));
    }

    private static Map<String, String> keep(Map<String, String> all, String step) {
        Map<String, String> kept = new TreeMap<>(all);
        kept.keySet().removeIf(k -> !k.startsWith(step));
        return kept;
    }

    @Test
    void aCheckCatchesIt() {
        SlipTable table = table("  bypass: op closes bridge\n  look: op checks bridge is closed\n  open: op opens main\n");
        Map<String, String> ends = ends(table);
        assertEquals("caught", ends.get("bypass left out"), ends::toString);
        SlipResult caught = table.slips().get(0);
        assertEquals("look", caught.findings().get(0).step());
        // The look itself is left out: nothing comes of it.
        assertEquals("harmless", ends.get("look left out"));
    }

    @Test
    void whatIsDoneAsOneComesApart() {
        SlipTable table = table(
                "single-phase units",
                """
                  bypass: op closes bridge
                  open: op opens main
                  close: op closes main
                  back: op opens bridge
                    as one because "Test."
                """);
        SlipResult apart = table.slips().stream()
                .filter(s -> s.kind() == SlipKind.APART)
                .findFirst()
                .orElseThrow();
        assertEquals("back", apart.step());
        assertEquals(SlipResult.Ending.HARMLESS, apart.ending());
        assertEquals(1, table.slips().stream().filter(s -> s.kind() == apart.kind()).count());
    }

    @Test
    void slipsAreToldOnlyOfWhatHolds() {
        SlipTable table = table("  open: op opens main\n");
        assertEquals(false, table.holds());
        assertEquals(List.of(), table.slips());
    }

    @Test
    void everyStartHasItsTable() {
        String starts = "  either given bridge is open or given bridge is closed\n";
        List<SlipTable> tables = tables(
                OnePole.NETWORK.replace("%BUILD%", "ganged"), starts, "  look: op checks main is closed\n  open: op opens other\n", "");
        assertEquals(
                List.of("bridge is open", "bridge is closed"),
                tables.stream().map(t -> t.instance().start()).toList());
        assertTrue(tables.get(1).instance().words().endsWith("pole, starting with bridge is closed"));
    }

    @Test
    void aStartThatIsNotAtRestIsToldAsAMistake() {
        String network = OnePole.NETWORK.replace("%BUILD%", "ganged")
                .replace("switch other from s-0", "recloser other from s-0")
                .replace("phases ABC, at pole-2", "phases ABC, single-phase units, coil 5 A, at pole-2")
                .replace("supply grid", "supply grid, fault level 100 MVA, reactance ratio 8");
        assertEquals(List.of(), tables(network, "", "  open: op opens main\n", "not-at-rest"));
    }
}
