package org.keeplit.plain;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;

/** Draws from a source of chance, so that a number stands for everything that is made from it. */
final class Draw {
    private final Random random;

    Draw(Random random) {
        this.random = random;
    }

    Draw(long seed) {
        this(new Random(seed));
    }

    int below(int bound) {
        return random.nextInt(bound);
    }

    /** {@return a number between two, both included} */
    int between(int least, int most) {
        return least + random.nextInt(most - least + 1);
    }

    /** {@return true so many times in a hundred} */
    boolean chance(int percent) {
        return random.nextInt(100) < percent;
    }

    @SafeVarargs
    @SuppressWarnings("varargs")
    final <T> T one(T... of) {
        return of[random.nextInt(of.length)];
    }

    <T> T one(List<T> of) {
        return of.get(random.nextInt(of.size()));
    }

    <T> List<T> shuffled(List<T> of) {
        List<T> all = new ArrayList<>(of);
        Collections.shuffle(all, random);
        return all;
    }

    <T> List<T> some(List<T> of, int most) {
        return shuffled(of).subList(0, Math.min(of.size(), random.nextInt(most + 1)));
    }
}
