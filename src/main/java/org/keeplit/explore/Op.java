package org.keeplit.explore;

import java.util.List;
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

    /** An event takes its place among those that happened, the highest number first. @param places their fields, the last free */
    record Happen(List<Field> places, int number) implements Op {
        @Override
        public void apply(long[] state) {
            int carried = number + 1;
            for (Field place : places) {
                int there = place.get(state);
                if (there < carried) {
                    place.set(state, carried);
                    carried = there;
                }
            }
        }

        @Override
        public Field field() {
            return places.get(0);
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
