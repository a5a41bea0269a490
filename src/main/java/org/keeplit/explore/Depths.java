package org.keeplit.explore;

import java.util.Arrays;

/**
 * How long the shortest way to each state is. Breadth first this never goes back, so that it is enough to know with which state each length
 * begins; once it does, because something came by itself on the way or something was broken, it is kept for each state.
 */
final class Depths {
    private int[] begins = new int[64];
    private int lengths;
    private int size;
    private PackedNumbers plain;

    /** Adds the next state's. */
    void append(int depth) {
        if (plain == null && depth < lengths - 1) {
            keepPlain();
        }
        if (plain != null) {
            plain.append(depth);
        } else {
            if (depth >= begins.length) {
                begins = Arrays.copyOf(begins, depth * 2);
            }
            while (lengths <= depth) {
                begins[lengths++] = size;
            }
        }
        size++;
    }

    private void keepPlain() {
        PackedNumbers all = new PackedNumbers(8);
        for (int i = 0; i < size; i++) {
            all.append(get(i));
        }
        plain = all;
        begins = null;
    }

    int get(int number) {
        if (plain != null) {
            return (int) plain.get(number);
        }
        // The last of the lengths that begin here or before: several begin at one state where a length has none.
        int low = 0;
        int high = lengths - 1;
        while (low < high) {
            int middle = low + high + 1 >>> 1;
            if (begins[middle] <= number) {
                low = middle;
            } else {
                high = middle - 1;
            }
        }
        return low;
    }

    /** Notes that a state is nearer than was known. */
    void set(int number, int depth) {
        if (plain == null) {
            keepPlain();
        }
        plain.set(number, depth);
    }

    long bytes() {
        return plain == null ? 4L * begins.length : plain.bytes();
    }
}
