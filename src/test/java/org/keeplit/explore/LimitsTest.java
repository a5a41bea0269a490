package org.keeplit.explore;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.keeplit.outcome.Limits;
import org.keeplit.outcome.Outcome;
import org.keeplit.outcome.Watcher;

/** What a search says of its size, counted by hand, and where it stops. */
class LimitsTest {
    /** Two acts of one and one of the other, either first: three acts one way and three the other, from the same start to the same end. */
    private static final String STEPS =
            """
              in any order
                in order
                  op tags gang
                  op takes the tag off gang
                end
                mate tags r
              end
            """;

    /** Nine acts in any order: 512 states, so that the clock is looked at now and then. */
    private static final String MANY = "  in any order\n" + "    op does \"a\"\n".repeat(9) + "  end\n";

    private static Outcome outcome(int states, Duration time, long bytes, Watcher watcher) {
        return Small.within(new Limits(states, time, bytes, 0), watcher, MANY);
    }

    private static Optional<String> cut(int states, Duration time, long bytes, Watcher watcher) {
        return outcome(states, time, bytes, watcher).cut();
    }

    @Test
    void sizes_are_as_counted() {
        Outcome outcome = Small.within(Limits.USUAL.with(0), Watcher.NOBODY, STEPS);
        assertEquals(Optional.empty(), outcome.cut());
        assertEquals(6, outcome.states());
        assertEquals(6, outcome.transitions());
        assertEquals(3, outcome.depth());
        assertEquals(1, outcome.endings());
    }

    @Test
    void each_limit_says_that_it_stopped_the_search() {
        Duration hour = Duration.ofHours(1);
        assertEquals(Optional.empty(), cut(512, hour, 1 << 20, Watcher.NOBODY));
        assertEquals(Optional.of("more than 511 states"), cut(511, hour, 1 << 20, Watcher.NOBODY));
        assertEquals(Optional.of("longer than 0 s"), cut(512, Duration.ZERO, 1 << 20, Watcher.NOBODY));
        assertEquals(Optional.of("more than 0 MiB of states"), cut(512, hour, 100, Watcher.NOBODY));
        assertEquals(Optional.of("stopped from outside"), cut(512, hour, 1 << 20, (states, open) -> false));
    }

    /** It is told after each 256 states: the first are those with up to four of nine acts done, and all with five are known by then. */
    @Test
    void the_watcher_is_told_how_far_it_got() {
        List<String> told = new ArrayList<>();
        outcome(512, Duration.ofHours(1), 1 << 20, (states, open) -> told.add(states + " known, " + open + " open"));
        assertEquals(List.of("382 known, 126 open", "512 known, 0 open"), told);
    }
}
