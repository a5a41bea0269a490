package org.keeplit.program;

import java.util.Arrays;

/** A state as a key. A buffer of longs would hash by the lower half of each, and much of a state lies in the upper. The array must not change. */
public final class StateKey {
    private final long[] state;
    private final int hash;

    private StateKey(long[] state) {
        this.state = state;
        long all = 0;
        for (long word : state) {
            all = (all ^ word) * 0x9E3779B97F4A7C15L;
            all ^= all >>> 32;
        }
        this.hash = (int) all;
    }

    /** {@return a state as a key} @param state the state, which is not copied */
    public static StateKey of(long[] state) {
        return new StateKey(state);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof StateKey key && hash == key.hash && Arrays.equals(state, key.state);
    }

    @Override
    public int hashCode() {
        return hash;
    }
}
