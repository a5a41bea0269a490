package org.keeplit.explore;

import java.util.Arrays;

/**
 * For each state the one from which it was first reached. Breadth first these never go back, so that steps written as zeros and states
 * written as ones say it in two bits each; once one goes back, because something came by itself on the way or something was broken,
 * they are kept as they are.
 */
final class Parents {
    /** How many states between two whose places are kept. */
    private static final int EVERY = 256;

    private long[] steps = new long[16];
    private int[] places = new int[16];
    private int at;
    private int last;
    private int size;
    /** One more than the number of the state, where one went back. */
    private PackedNumbers plain;

    /** Adds the next state's. @param parent -1 for the start */
    void append(int parent) {
        if (plain == null && (parent < last || at > Integer.MAX_VALUE - 64 - (parent - last))) {
            if (size > 0 || parent >= 0) {
                keepPlain();
            }
        }
        if (plain != null) {
            plain.append(parent + 1L);
            size++;
            return;
        }
        if (size % EVERY == 0) {
            if (size / EVERY >= places.length) {
                places = Arrays.copyOf(places, places.length * 2);
            }
            places[size / EVERY] = at;
        }
        at += Math.max(0, parent - last);
        last = Math.max(0, parent);
        if (at >>> 6 >= steps.length) {
            steps = Arrays.copyOf(steps, Math.max(steps.length + (steps.length >> 1), (at >>> 6) + 1));
        }
        steps[at >>> 6] |= 1L << at;
        at++;
        size++;
    }

    private void keepPlain() {
        PackedNumbers all = new PackedNumbers(32 - Integer.numberOfLeadingZeros(size + 1));
        for (int i = 0; i < size; i++) {
            all.append(get(i) + 1L);
        }
        plain = all;
        steps = null;
        places = null;
    }

    /** {@return the state from which a state was first reached; -1 for the start} */
    int get(int number) {
        if (plain != null) {
            return (int) plain.get(number) - 1;
        }
        if (number == 0) {
            return -1;
        }
        int wanted = number % EVERY;
        int place = places[number / EVERY];
        int word = place >>> 6;
        long left = steps[word] & -1L << place;
        while (Long.bitCount(left) <= wanted) {
            wanted -= Long.bitCount(left);
            left = steps[++word];
        }
        for (; wanted > 0; wanted--) {
            left &= left - 1;
        }
        return (word << 6) + Long.numberOfTrailingZeros(left) - number;
    }

    /** Notes another state from which one was reached. */
    void set(int number, int parent) {
        if (plain == null) {
            keepPlain();
        }
        plain.set(number, parent + 1L);
    }

    long bytes() {
        return plain != null ? plain.bytes() : 8L * steps.length + 4L * places.length;
    }
}
