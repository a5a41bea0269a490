package org.keeplit.explore;

import java.util.Arrays;

/** Gives each long that it meets a number, from 0 on in the order of meeting. */
final class Numbering {
    private long[] keys = new long[16];
    private int[] table = new int[32];
    private int size;

    /** {@return the number of a key, or -1 if it was not met} */
    int find(long key) {
        int slot = Spread.slot(Spread.hash(key), table.length);
        while (true) {
            int number = table[slot] - 1;
            if (number < 0 || keys[number] == key) {
                return number;
            }
            slot = slot + 1 == table.length ? 0 : slot + 1;
        }
    }

    /** Gives a key that was not met its number; {@return it}. */
    int add(long key) {
        if (size >= keys.length) {
            keys = Arrays.copyOf(keys, size + (size >> 1));
        }
        if (size * 3L >= table.length * 2L) {
            table = new int[table.length + (table.length >> 1)];
            for (int number = 0; number < size; number++) {
                put(keys[number], number);
            }
        }
        keys[size] = key;
        put(key, size);
        return size++;
    }

    private void put(long key, int number) {
        int slot = Spread.slot(Spread.hash(key), table.length);
        while (table[slot] != 0) {
            slot = slot + 1 == table.length ? 0 : slot + 1;
        }
        table[slot] = number + 1;
    }

    long key(int number) {
        return keys[number];
    }

    long bytes() {
        return 8L * keys.length + 4L * table.length;
    }
}
