package org.keeplit.explore;

import org.keeplit.electric.Analysis;

/** The analyses of the positions of contacts met so far, by those bits of the state that decide them. */
final class Positions {
    /** How many are kept before all are forgotten. */
    private static final int KEPT = 1 << 15;

    private final long[] masks;
    private long[] keys;
    private Analysis[] analyses = new Analysis[256];
    private int size;

    /** @param masks for each word of the state the bits that decide where a contact stands */
    Positions(long[] masks) {
        this.masks = masks;
        this.keys = new long[256 * masks.length];
    }

    /** {@return the analysis of a state's position, or null if it was not kept} */
    Analysis find(long[] state) {
        return analyses[slot(state)];
    }

    /** Keeps the analysis of a position that is not there yet. */
    void put(long[] state, Analysis analysis) {
        if (size >= KEPT) {
            keys = new long[256 * masks.length];
            analyses = new Analysis[256];
            size = 0;
        } else if (size >= analyses.length / 2) {
            grow();
        }
        int slot = slot(state);
        for (int i = 0; i < masks.length; i++) {
            keys[slot * masks.length + i] = state[i] & masks[i];
        }
        analyses[slot] = analysis;
        size++;
    }

    private int slot(long[] state) {
        long hash = 0;
        for (int i = 0; i < masks.length; i++) {
            hash = (hash ^ state[i] & masks[i]) * 0x9E3779B97F4A7C15L;
            hash ^= hash >>> 29;
        }
        int slot = (int) (hash ^ hash >>> 32) & analyses.length - 1;
        while (analyses[slot] != null && !holds(slot, state)) {
            slot = slot + 1 & analyses.length - 1;
        }
        return slot;
    }

    private boolean holds(int slot, long[] state) {
        for (int i = 0; i < masks.length; i++) {
            if (keys[slot * masks.length + i] != (state[i] & masks[i])) {
                return false;
            }
        }
        return true;
    }

    private void grow() {
        long[] oldKeys = keys;
        Analysis[] old = analyses;
        keys = new long[oldKeys.length * 2];
        analyses = new Analysis[old.length * 2];
        long[] key = new long[masks.length];
        for (int i = 0; i < old.length; i++) {
            if (old[i] != null) {
                System.arraycopy(oldKeys, i * masks.length, key, 0, masks.length);
                int slot = slot(key);
                System.arraycopy(key, 0, keys, slot * masks.length, masks.length);
                analyses[slot] = old[i];
            }
        }
    }
}
