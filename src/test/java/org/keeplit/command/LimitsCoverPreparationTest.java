package org.keeplit.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTimeout;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A few lines may come to more steps, or more bindings of a rule, than any computer holds: the limits hold before the search begins, too. */
class LimitsCoverPreparationTest {
    private static final Duration LONG = Duration.ofSeconds(60);

    @TempDir
    Path folder;

    private Spur spur;

    @BeforeEach
    void begin() throws IOException {
        spur = new Spur(folder, 12);
    }

    private static String undecided(String... arguments) {
        return assertTimeout(LONG, () -> {
            Told.Ran ran = Told.run(arguments);
            assertEquals(4, ran.code(), () -> ran.out() + ran.err());
            assertEquals("", ran.err());
            return ran.out().lines().filter(line -> line.startsWith("undecided")).collect(Collectors.joining("\n"));
        });
    }

    @Test
    void threeNestedRepeatsRanPastTheLimitOfTime() throws IOException {
        Path file = spur.procedure("P-1", "supply", """
                  repeat 100 times
                    repeat 100 times
                      repeat 100 times
                        west records "reading"
                      end
                    end
                  end
                """);
        assertEquals(
                "undecided  P-1  on spur: more than 1024 MiB, as it comes to 1,000,000 steps; nothing is claimed",
                undecided("check", "--max-seconds", "5", file.toString()));
        assertEquals(
                "undecided  P-1  on spur: more than 100 MiB, as it comes to 1,000,000 steps; nothing is claimed",
                undecided("check", "--max-memory", "100", file.toString()));
    }

    @Test
    void twoNestedRepeatsThatFitIntoMemoryEndAtTheLimitOfTime() throws IOException {
        Path file = spur.procedure("P-1", "supply", """
                  repeat 100 times
                    repeat 100 times
                      repeat 20 times
                        west records "reading"
                      end
                    end
                  end
                """);
        assertEquals(
                "undecided  P-1  on spur: longer than 0 s; nothing is claimed",
                undecided("check", "--max-seconds", "0", file.toString()));
        assertEquals(
                "undecided  P-1  on spur: longer than 2 s; nothing is claimed",
                undecided("check", "--max-seconds", "2", file.toString()));
    }

    @Test
    void aCallDoubledOverTwentyFiveLevelsRanPastTheLimitOfTime() throws IOException {
        for (int i = 0; i < 25; i++) {
            spur.called("P-" + i, i == 0 ? "  west records \"reading\"\n" : ("  call P-" + (i - 1) + "\n").repeat(2));
        }
        spur.procedure("P-25", "supply", "  call P-24\n  call P-24\n");
        assertEquals(
                "undecided  P-25  on spur: more than 1024 MiB, as it comes to 33,554,432 steps; nothing is claimed",
                undecided("check", "--max-seconds", "5", folder.toString()));
    }

    @Test
    void aQuantifierFourteenTimesOverRanPastTheLimitOfTime() throws IOException {
        StringBuilder always = new StringBuilder();
        for (int i = 0; i < 14; i++) {
            always.append("for every switching device D").append(i).append(", ");
        }
        spur.rules("fold", always + "D0 is closed");
        Path file = spur.procedure("P-1", "fold", "  west blocks reclosing of feeder\n");
        String told = undecided("check", "--max-seconds", "3", file.toString());
        assertEquals("undecided  P-1  on spur: longer than 3 s; nothing is claimed", told);
    }

    @Test
    void whatIsTooLargeTakesNothingFromTheOthers() throws IOException {
        Path large = spur.procedure("P-1", "supply", "  repeat 100 times\n  repeat 100 times\n  repeat 100 times\n  west records \"x\"\n  end\n  end\n  end\n");
        Path small = spur.procedure("P-2", "supply", "  west opens gang-1\n");
        Told.Ran ran = Told.run("check", large.toString(), small.toString());
        assertEquals(4, ran.code(), ran.out() + ran.err());
        assertTrue(ran.out().contains("holds      P-2"), ran::out);
        Told.Ran slips = Told.run("slips", large.toString(), small.toString());
        assertEquals(4, slips.code(), slips.out() + slips.err());
        assertTrue(slips.err().contains("P-1 on spur was not worked out: more than 1024 MiB, as it comes to 1,000,000 steps [too-large]"), slips::err);
        assertTrue(slips.out().contains("P-2"), slips::out);
    }
}
