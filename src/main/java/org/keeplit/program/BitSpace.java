package org.keeplit.program;

/** Gives away the bits of a packed state, from a bit on. What is given lies in one long. */
final class BitSpace {
    private int next;

    /** Begins. @param first the first bit that is free, counted over all longs */
    BitSpace(int first) {
        this.next = first;
    }

    /** Some bits of a state. @param word which long @param shift from which bit @param width how many */
    record Bits(int word, int shift, int width) {
        int get(long[] state) {
            return (int) (state[word] >>> shift & (1L << width) - 1);
        }

        void set(long[] state, int value) {
            long mask = (1L << width) - 1 << shift;
            state[word] = state[word] & ~mask | (long) value << shift;
        }
    }

    /** {@return room for so many values} @param values how many; 1 takes a bit, too */
    Bits take(int values) {
        int width = 32 - Integer.numberOfLeadingZeros(Math.max(1, values - 1));
        if (next % 64 + width > 64) {
            next += 64 - next % 64;
        }
        Bits bits = new Bits(next / 64, next % 64, width);
        next += width;
        return bits;
    }

    /** {@return the first bit that is free} */
    int next() {
        return next;
    }

    /** Goes on from another bit, so that what is given from there on shares bits with what was given before. */
    void goTo(int bit) {
        next = bit;
    }
}
