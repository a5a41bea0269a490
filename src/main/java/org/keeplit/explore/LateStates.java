package org.keeplit.explore;

import java.util.ArrayDeque;
import java.util.BitSet;
import java.util.HashMap;
import java.util.Map;
import java.util.TreeMap;

/** States that were found before their turn, because something came by itself on the way, and wait for it. */
final class LateStates {
    private final TreeMap<Integer, ArrayDeque<Integer>> byDepth = new TreeMap<>();
    private final Map<Integer, Integer> depths = new HashMap<>();
    private final BitSet waiting = new BitSet();

    /** Notes a state, or a shorter way to it. */
    void add(int number, int depth) {
        waiting.set(number);
        depths.put(number, depth);
        byDepth.computeIfAbsent(depth, d -> new ArrayDeque<>()).add(number);
    }

    /** {@return whether a state waits, so that it is not yet gone on from} */
    boolean isWaiting(int number) {
        return waiting.get(number);
    }

    /** {@return whether a state waits at most as deep} */
    boolean before(int depth) {
        dropOutdated();
        return !byDepth.isEmpty() && byDepth.firstKey() <= depth;
    }

    /** {@return how near the next state is; call {@link #before} first} */
    int depth() {
        return byDepth.firstKey();
    }

    /** {@return the next state, which waits no more; call {@link #before} first} */
    int poll() {
        int number = byDepth.firstEntry().getValue().poll();
        waiting.clear(number);
        depths.remove(number);
        return number;
    }

    private void dropOutdated() {
        while (!byDepth.isEmpty()) {
            ArrayDeque<Integer> first = byDepth.firstEntry().getValue();
            while (!first.isEmpty()
                    && !byDepth.firstKey().equals(depths.get(first.peek()))) {
                first.poll();
            }
            if (!first.isEmpty()) {
                return;
            }
            byDepth.pollFirstEntry();
        }
    }
}
