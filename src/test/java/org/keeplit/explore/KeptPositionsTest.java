package org.keeplit.explore;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Where contacts stand as they stood before, rules that read nothing else are not judged again; all others are. */
class KeptPositionsTest {
    /** As many rules that read every contact and nothing else as make it worth it. */
    private static String ofPosition() {
        StringBuilder rules = new StringBuilder();
        int number = 0;
        for (String place : List.of("source-side line of D", "load-side line of D", "source bushing of D")) {
            for (char phase : "ABC".toCharArray()) {
                rules.append("rule p-%d%n  always for every recloser D, the %s is not dead on %s%n  says \"x\"%n  because \"Test.\"%n"
                        .formatted(number++, place, phase));
            }
        }
        assertTrue(number >= Search.RULES, "too few rules for it");
        return rules.toString();
    }

    private static Map<String, Integer> roots(String rule, String steps) {
        String own = "rule r-1\n  " + rule + "\n  says \"x\"\n  because \"Test.\"\n";
        return Small.roots(Small.judge(ofPosition() + own, Small.lines(steps)));
    }

    @Test
    void what_reads_more_is_judged_again_where_contacts_stand_as_they_stood() {
        String rule = "always for every switch D, D is closed or D is not tagged";
        String first = "op opens gang; op closes gang";
        assertEquals(Map.of(), roots(rule, first + "; op opens gang"));
        assertEquals(Map.of("r-1", 4), roots(rule, first + "; op tags gang; op opens gang"));
    }

    @Test
    void what_is_broken_is_found_in_a_position_that_was_not_there_before() {
        String rule = "always every load L is supplied";
        assertEquals(Map.of("r-1", 3), roots(rule, "op tags gang; op takes the tag off gang; op opens gang"));
        Map<String, Integer> all = roots(rule, "op tags gang; op opens feeder; op closes feeder");
        assertEquals(Set.of(2), Set.copyOf(all.values()));
        assertEquals(10, all.size(), all.toString());
    }
}
