package org.keeplit.network;

import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;

/**
 * A set of conductors, always in the order A, B, C, N.
 *
 * @param mask bit {@code i} is set when the conductor with ordinal {@code i} is in the set
 */
public record Phases(int mask) implements Iterable<Conductor> {
    /** No conductor. */
    public static final Phases NONE = new Phases(0);
    /** The three phases. */
    public static final Phases ABC = new Phases(0b111);
    /** The neutral alone. */
    public static final Phases N = new Phases(0b1000);

    /** {@return the set of one conductor} @param conductor the conductor */
    public static Phases of(Conductor conductor) {
        return new Phases(1 << conductor.ordinal());
    }

    /**
     * Reads a set such as {@code A}, {@code BC}, {@code CA}, {@code ABC} or {@code ABCN}.
     *
     * @param text the written form
     * @return the set, or empty if a letter is not a conductor or stands twice
     */
    public static Optional<Phases> parse(String text) {
        int mask = 0;
        for (char letter : text.toCharArray()) {
            int at = "ABCN".indexOf(letter);
            if (at < 0 || (mask & 1 << at) != 0) {
                return Optional.empty();
            }
            mask |= 1 << at;
        }
        return mask == 0 ? Optional.empty() : Optional.of(new Phases(mask));
    }

    /** {@return whether the conductor is in the set} @param conductor the conductor */
    public boolean contains(Conductor conductor) {
        return (mask & 1 << conductor.ordinal()) != 0;
    }

    /** {@return whether all of another set is in this one} @param other the other set */
    public boolean containsAll(Phases other) {
        return (other.mask & ~mask) == 0;
    }

    /** {@return the conductors that are in both} @param other the other set */
    public Phases and(Phases other) {
        return new Phases(mask & other.mask);
    }

    /** {@return the conductors that are in either} @param other the other set */
    public Phases or(Phases other) {
        return new Phases(mask | other.mask);
    }

    /** {@return how many conductors are in the set} */
    public int size() {
        return Integer.bitCount(mask);
    }

    /** {@return whether no conductor is in the set} */
    public boolean isEmpty() {
        return mask == 0;
    }

    /** {@return the conductors in order} */
    public List<Conductor> list() {
        List<Conductor> all = new ArrayList<>(4);
        for (Conductor conductor : Conductor.values()) {
            if (contains(conductor)) {
                all.add(conductor);
            }
        }
        return all;
    }

    @Override
    public Iterator<Conductor> iterator() {
        return list().iterator();
    }

    /** {@return the written form, such as {@code AB}} */
    @Override
    public String toString() {
        StringBuilder text = new StringBuilder();
        for (Conductor conductor : this) {
            text.append(conductor);
        }
        return text.toString();
    }
}
