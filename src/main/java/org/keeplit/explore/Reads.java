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

    Reads(World world) {
        Layout layout = world.program().layout();
        this.bits = new long[layout.words()];
        this.position = new long[layout.words()];
        for (Contact contact : world.electric().cells().kept()) {
            layout.field(contact.key()).ifPresent(field -> add(position, field));
        }
        for (Field field : layout.fields()) {
            if (field.key() instanceof FieldKey.Tap) {
                add(position, field);
            }
        }
    }

    private static void add(long[] bits, Field field) {
        bits[field.word()] |= (1L << field.width()) - 1 << field.shift();
    }

    /** Notes a field. */
    void field(Field field) {
        add(bits, field);
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
        return bits.clone();
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
}
