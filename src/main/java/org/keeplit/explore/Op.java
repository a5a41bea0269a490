package org.keeplit.explore;

import org.keeplit.program.Field;

/** One change that an act makes to the packed state. */
sealed interface Op {
    /** Makes it. @param state the state, changed in place */
    void apply(long[] state);

    /** {@return the field that it changes} */
    Field field();

    /** A field takes a value. */
    record Set(Field field, int value) implements Op {
        @Override
        public void apply(long[] state) {
            field.set(state, value);
        }
    }

    /** A counter goes up by an amount, as far as its field reaches. */
    record Add(Field field, int amount) implements Op {
        @Override
        public void apply(long[] state) {
            field.set(state, Math.min(field.size() - 1, field.get(state) + amount));
        }
    }
}
