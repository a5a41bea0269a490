package org.keeplit.electric.sparse;

import java.util.Arrays;

/** A set of small integers that lists its members and empties in time proportional to their number. */
final class MarkedSet {
    private final boolean[] marked;
    private int[] members = new int[16];
    private int count;

    MarkedSet(int bound) {
        marked = new boolean[bound];
    }

    /** Adds a member; false if it was there. */
    boolean add(int member) {
        if (marked[member]) {
            return false;
        }
        marked[member] = true;
        if (count == members.length) {
            members = Arrays.copyOf(members, 2 * count);
        }
        members[count++] = member;
        return true;
    }

    int count() {
        return count;
    }

    int member(int index) {
        return members[index];
    }

    void sort() {
        Arrays.sort(members, 0, count);
    }

    void clear() {
        for (int k = 0; k < count; k++) {
            marked[members[k]] = false;
        }
        count = 0;
    }
}
