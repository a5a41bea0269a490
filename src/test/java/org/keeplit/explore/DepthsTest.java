package org.keeplit.explore;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.ShrinkingMode;
import org.junit.jupiter.api.Test;
import org.openjdk.jol.info.GraphLayout;

/** Lengths of ways are found again, however they come. */
class DepthsTest {
    @Property(tries = 60, seed = "73", shrinking = ShrinkingMode.OFF)
    void keepsWhatItIsGiven(@ForAll long seed, @ForAll boolean goesBack, @ForAll boolean nearer) {
        Random random = new Random(seed);
        Depths depths = new Depths();
        List<Integer> given = new ArrayList<>();
        int depth = 0;
        for (int i = 0; i < 2_000; i++) {
            int step = random.nextInt(60);
            depth += step == 0 ? 1 : step == 1 ? 90 : 0;
            int now = goesBack && i > 1_000 && step == 2 ? random.nextInt(depth + 1) : depth;
            depths.append(now);
            given.add(now);
            if (nearer && i > 500 && step == 3) {
                depths.set(i / 2, given.get(i / 2) / 2);
                given.set(i / 2, given.get(i / 2) / 2);
            }
        }
        for (int i = 0; i < given.size(); i++) {
            assertEquals(given.get(i), depths.get(i), "at " + i);
        }
    }

    /** Measured by another library (JOL, the JDK's object layout), up to the headers of objects. */
    @Test
    void bytesAreWhatItTakes() {
        Depths depths = new Depths();
        for (int i = 0; i < 50_000; i++) {
            depths.append(i / 20);
        }
        assertEquals(GraphLayout.parseInstance(depths).totalSize(), depths.bytes(), 80);
        depths.set(7, 0);
        assertEquals(1, depths.bytes() / (double) GraphLayout.parseInstance(depths).totalSize(), 0.02);
    }
}
