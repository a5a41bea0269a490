package org.keeplit.program;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Where each field lies in the packed state. What no act of the run can change takes no room: it is a constant
 * that {@link #value} still answers for.
 *
 * <p>The bits of the {@link Orders} come first, from the lowest bit of word 0; then the fields.
 */
public final class Layout {
    /** How many bits the orders take at the head of the state. */
    private final int controlBits;

    private final List<Field> fields;
    private final Map<FieldKey, Field> byKey;
    private final Map<FieldKey, Integer> constants;
    private final int words;

    private Layout(int controlBits, List<Field> fields, Map<FieldKey, Integer> constants, int words) {
        this.controlBits = controlBits;
        this.fields = List.copyOf(fields);
        this.constants = Map.copyOf(constants);
        this.words = words;
        this.byKey = new HashMap<>();
        for (Field field : fields) {
            byKey.put(field.key(), field);
        }
    }

    /** {@return how many longs a state takes} */
    public int words() {
        return words;
    }

    /** {@return how many bits of them are used} */
    public int bits() {
        return controlBits + fields.stream().mapToInt(Field::width).sum();
    }

    /** {@return the fields in the order of the state} */
    public List<Field> fields() {
        return fields;
    }

    /** {@return the field of a key, or nothing if the run cannot change it} @param key the key */
    public Optional<Field> field(FieldKey key) {
        return Optional.ofNullable(byKey.get(key));
    }

    /**
     * The value of a key in a state, constants included.
     *
     * @param state the packed state
     * @param key the key
     * @return its value; 0 if the run knows nothing of it
     */
    public int value(long[] state, FieldKey key) {
        Field field = byKey.get(key);
        return field == null ? constants.getOrDefault(key, 0) : field.get(state);
    }

    /** {@return the constant value of a key that no act changes; 0 if the run knows nothing of it} @param key the key */
    public int constant(FieldKey key) {
        return constants.getOrDefault(key, 0);
    }

    /** {@return a fresh state with every field at its initial value and nothing done} */
    public long[] initial() {
        long[] state = new long[words];
        for (Field field : fields) {
            field.set(state, field.initial());
        }
        return state;
    }

    /** {@return a copy of a state with nothing done, as far as the orders know} @param state the packed state */
    public long[] withoutOrders(long[] state) {
        long[] next = state.clone();
        for (int bit = 0; bit < controlBits; bit += 64) {
            int left = Math.min(64, controlBits - bit);
            next[bit / 64] &= left == 64 ? 0 : -1L << left;
        }
        return next;
    }

    /**
     * This layout with more fields behind its own, which stay where they are.
     *
     * @param more for each new field how many values it has and which it has at the start
     * @return the longer layout
     */
    public Layout extended(Map<FieldKey, int[]> more) {
        List<Field> all = new ArrayList<>(fields);
        Field last = fields.isEmpty() ? null : fields.get(fields.size() - 1);
        BitSpace space = new BitSpace(last == null ? controlBits : last.word() * 64 + last.shift() + last.width());
        more.forEach((key, range) -> all.add(field(key, range[0], range[1], space)));
        return new Layout(controlBits, all, constants, words(space));
    }

    private static Field field(FieldKey key, int size, int initial, BitSpace space) {
        BitSpace.Bits bits = space.take(size);
        return new Field(key, size, initial, bits.word(), bits.shift(), bits.width());
    }

    /** {@return how many longs hold what was given away; one at least} */
    private static int words(BitSpace space) {
        return Math.max(1, (space.next() + 63) / 64);
    }

    /** Collects fields and lays them out. */
    static final class Builder {
        private final Map<FieldKey, int[]> wanted = new LinkedHashMap<>();
        private final Map<FieldKey, Integer> initial = new LinkedHashMap<>();

        /** States a value that holds at the start. */
        void initial(FieldKey key, int value) {
            initial.put(key, value);
        }

        /** Asks for room for values below {@code size}. */
        void changes(FieldKey key, int size) {
            int[] now = wanted.computeIfAbsent(key, k -> new int[] {2});
            now[0] = Math.max(now[0], size);
        }

        int initialOf(FieldKey key) {
            return initial.getOrDefault(key, 0);
        }

        /** Lays the fields out behind the bits of the orders. */
        Layout build(int controlBits) {
            List<Field> fields = new ArrayList<>();
            BitSpace space = new BitSpace(controlBits);
            wanted.forEach((key, values) -> {
                int start = initialOf(key);
                fields.add(field(key, Math.max(values[0], start + 1), start, space));
            });
            Map<FieldKey, Integer> constants = new HashMap<>(initial);
            constants.keySet().removeAll(wanted.keySet());
            return new Layout(controlBits, fields, constants, words(space));
        }
    }
}
