package org.keeplit.program;

/**
 * One field of the packed state.
 *
 * @param key what it is about
 * @param size how many values it has, at least 2
 * @param initial its value at the start
 * @param word the index of the long that holds it
 * @param shift the lowest bit in that long
 * @param width how many bits it takes
 */
public record Field(FieldKey key, int size, int initial, int word, int shift, int width) {
    /** {@return the field's value in a state} @param state the packed state */
    public int get(long[] state) {
        return (int) (state[word] >>> shift) & (1 << width) - 1;
    }

    /** Sets all bits of the field, to tell which bits of a state it takes. @param bits the bits, word by word */
    public void mark(long[] bits) {
        bits[word] |= (1L << width) - 1 << shift;
    }

    /** Sets the field. @param state the packed state @param value the new value */
    public void set(long[] state, int value) {
        long mask = (1L << width) - 1 << shift;
        state[word] = state[word] & ~mask | (long) value << shift;
    }
}
