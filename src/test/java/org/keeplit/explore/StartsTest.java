package org.keeplit.explore;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.keeplit.verdict.Judgement;
import org.keeplit.verdict.Style;
import org.keeplit.verdict.TextReport;

/** Procedures that may start in several ways: each is explored, and the report says which a trace belongs to. */
class StartsTest {
    private static final String RULE =
            """
            rule closed
              always every recloser R is closed
              says "x"
              because "Test."
            """;

    private static List<Judgement> judge(String starts) {
        return Small.judgeAll(RULE, "starts with\n" + starts, "  op does \"a\"\n", "");
    }

    @Test
    void each_way_is_a_check_of_its_own() {
        List<Judgement> all = judge("  either given r is closed or given r is open on B and given gang is open\n");
        assertEquals(List.of("r is closed", "r is open on B and gang is open"), all.stream().map(j -> j.instance().start()).toList());
        assertEquals(Map.of(), Small.roots(all.get(0)));
        assertEquals(Map.of("closed", 0), Small.roots(all.get(1)));
        String told = new TextReport(Style.PLAIN).tell(all);
        assertTrue(told.contains("P on pole, starting with r is open on B and gang is open\n"), told);
    }

    @Test
    void several_choices_are_combined() {
        String two = "  either given r is closed or given r is open\n"
                + "  either given gang is closed,\n    or given gang is open\n  feeder is closed\n";
        assertEquals(
                List.of(
                        "r is closed and gang is closed",
                        "r is closed and gang is open",
                        "r is open and gang is closed",
                        "r is open and gang is open"),
                judge(two).stream().map(j -> j.instance().start()).toList());
    }
}
