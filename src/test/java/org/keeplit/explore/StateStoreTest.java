package org.keeplit.explore;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.LongBuffer;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.ShrinkingMode;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.openjdk.jol.info.GraphLayout;

/** States are found again, exactly and by number, however they are kept. */
class StateStoreTest {
    @Property(tries = 60, seed = "71", shrinking = ShrinkingMode.OFF)
    void keepsWhatItIsGiven(
            @ForAll @IntRange(min = 1, max = 9) int words,
            @ForAll @IntRange(min = 1, max = 12_000) int states,
            @ForAll boolean goesBack,
            @ForAll boolean packed,
            @ForAll long seed) {
        Random random = new Random(seed);
        StateStore store = StateStore.of(words, packed);
        StateStore.Finder other = store.finder();
        Map<LongBuffer, Integer> known = new HashMap<>();
        List<int[]> reached = new ArrayList<>();
        int parent = -1;
        for (int i = 0; i < states; i++) {
            long[] state = state(random, words);
            Integer number = known.get(LongBuffer.wrap(state));
            assertEquals(number == null ? -1 : number, store.find(state));
            assertEquals(number == null ? -1 : number, other.find(state.clone()));
            if (number == null) {
                int edge = random.nextInt(1 + i);
                known.put(LongBuffer.wrap(state), store.add(state, parent, edge));
                assertEquals(known.size() - 1, other.find(state), "what was added since it was looked for");
                reached.add(new int[] {parent, edge});
                boolean back = goesBack && i > states / 2 && random.nextInt(50) == 0;
                int step = random.nextInt(3) == 0 ? random.nextInt(4) : 0;
                parent = back ? random.nextInt(store.size()) : Math.min(store.size() - 1, parent + step);
            } else if (goesBack && number > 0 && random.nextInt(500) == 0) {
                store.reach(number, 0, 7);
                reached.set(number, new int[] {0, 7});
            }
        }
        assertEquals(known.size(), store.size());
        long[] loaded = new long[words];
        known.forEach((state, number) -> {
            store.load(number, loaded);
            assertArrayEquals(state.array(), loaded);
            assertEquals(reached.get(number)[0], store.parent(number));
            assertEquals(reached.get(number)[1], store.edge(number));
        });
    }

    /** {@return a state of which few parts change at once, some of them over all bits} */
    private static long[] state(Random random, int words) {
        long[] state = new long[words];
        for (int i = 0; i < words; i++) {
            state[i] = switch (random.nextInt(4)) {
                case 0 -> random.nextInt(words == 1 ? 9_000 : 12);
                case 1 -> 1L << random.nextInt(64);
                case 2 -> words > 3 && random.nextInt(30) == 0 ? random.nextLong() : -1;
                default -> 0;
            };
        }
        return state;
    }

    @Test
    void statesThatShareTheirPartsTakeFewBytes() {
        StateStore packed = StateStore.of(6, true);
        StateStore flat = StateStore.of(6, false);
        int number = 0;
        for (int a = 0; a < 60; a++) {
            for (int b = 0; b < 60; b++) {
                for (int c = 0; c < 60; c++) {
                    long[] state = {a | 1L << a, b, 5, c | 1L << c, 7, -1L << c};
                    packed.add(state, Math.max(-1, number / 3 - 1), number % 200);
                    flat.add(state, Math.max(-1, number / 3 - 1), number % 200);
                    number++;
                }
            }
        }
        double each = (double) packed.bytes() / number;
        assertTrue(each < 14, "a state takes " + each + " bytes");
        assertTrue((double) flat.bytes() / number > 5 * each, "packing saves too little");
    }

    /** The limit on memory counts what a store says; what it takes is measured by another library (JOL, the JDK's object layout). */
    @ParameterizedTest
    @CsvSource({"1, true", "6, true", "1, false", "6, false"})
    void bytesAreWhatItTakes(int words, boolean packed) {
        StateStore store = StateStore.of(words, packed);
        Random random = new Random(5);
        for (int i = 0; i < 30_000; i++) {
            long[] state = new long[words];
            for (int k = 0; k < words; k++) {
                state[k] = random.nextInt(k == 0 ? 100_000 : 40);
            }
            if (store.find(state) < 0) {
                store.add(state, Math.max(-1, store.size() / 3 - 1), i % 200);
                // Once parents go back they are kept in another way.
                if (store.size() == 15_000) {
                    double taken = GraphLayout.parseInstance(store).totalSize();
                    assertEquals(1, store.bytes() / taken, 0.02, "before any goes back");
                    store.reach(9, 3, 1);
                }
            }
        }
        assertEquals(1, store.bytes() / (double) GraphLayout.parseInstance(store).totalSize(), 0.02);
    }
}
