package org.keeplit.explore;

import java.util.Arrays;
import org.keeplit.electric.Contact;
import org.keeplit.program.Field;
import org.keeplit.program.FieldKey;
import org.keeplit.program.Layout;

/** Which bits of a state a question reads. Where none of them changed, the answer is the same. */
final class Reads {
    private final long[] position;
    private final long[] bits;

    /** Begins with nothing read. @param position see {@link #positionOf} */
    Reads(long[] position) {
        this.bits = new long[position.length];
        this.position = position;
    }

    /** {@return the bits that say where contacts and taps stand, the same for all questions of a run} */
    static long[] positionOf(World world) {
        Layout layout = world.program().layout();
        long[] position = new long[layout.words()];
        for (Contact contact : world.electric().cells().kept()) {
            layout.field(contact.key()).ifPresent(field -> field.mark(position));
        }
        for (Field field : layout.fields()) {
            if (field.key() instanceof FieldKey.Tap) {
                field.mark(position);
            }
        }
        return position;
    }

    /** Notes a field. */
    void field(Field field) {
        field.mark(bits);
    }

    /** Notes where contacts and taps stand, which decides everything electrical. */
    void position() {
        for (int i = 0; i < bits.length; i++) {
            bits[i] |= position[i];
        }
    }

    /** Notes everything: nothing is known of what is read. */
    void everything() {
        Arrays.fill(bits, -1L);
    }

    /** {@return the bits, word by word} */
    long[] bits() {
        return bits;
    }

    /** {@return whether two states differ in some bits} */
    static boolean differ(long[] one, long[] other, long[] bits) {
        for (int i = 0; i < bits.length; i++) {
            if (((one[i] ^ other[i]) & bits[i]) != 0) {
                return true;
            }
        }
        return false;
    }

    /** {@return whether a set of bits has none that another has not} */
    static boolean within(long[] some, long[] all) {
        for (int i = 0; i < some.length; i++) {
            if ((some[i] & ~all[i]) != 0) {
                return false;
            }
        }
        return true;
    }

    /** {@return whether two sets of bits have one in common} */
    static boolean meet(long[] one, long[] other) {
        for (int i = 0; i < one.length; i++) {
            if ((one[i] & other[i]) != 0) {
                return true;
            }
        }
        return false;
    }
}
