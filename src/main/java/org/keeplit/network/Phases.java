package org.keeplit.network;

import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;

/**
 * A set of conductors, always in the order A, B, C, N, X1, X3.
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
    /** The two legs of a centre-tapped secondary. */
    public static final Phases LEGS = new Phases(0b110000);
    /** Everything that may have a voltage of its own: phases and legs. */
    public static final Phases LIVE = new Phases(0b110111);

    /**
     * {@return the set of one conductor}
     *
     * @param conductor the conductor
     */
    public static Phases of(Conductor conductor) {
        return new Phases(1 << conductor.ordinal());
    }

    /**
     * Reads a set such as {@code A}, {@code BC}, {@code CA}, {@code ABC}, {@code ABCN} or {@code X1X3}.
     *
     * @param text the written form
     * @return the set, or empty if something is not a conductor or stands twice
     */
    public static Optional<Phases> parse(String text) {
        int mask = 0;
        for (int from = 0; from < text.length(); ) {
            Conductor next = at(text, from);
            if (next == null || (mask & 1 << next.ordinal()) != 0) {
                return Optional.empty();
            }
            mask |= 1 << next.ordinal();
            from += next.name().length();
        }
        return mask == 0 ? Optional.empty() : Optional.of(new Phases(mask));
    }

    private static Conductor at(String text, int from) {
        for (Conductor conductor : Conductor.values()) {
            if (text.startsWith(conductor.name(), from)) {
                return conductor;
            }
        }
        return null;
    }

    /**
     * {@return whether the conductor is in the set}
     *
     * @param conductor the conductor
     */
    public boolean contains(Conductor conductor) {
        return (mask & 1 << conductor.ordinal()) != 0;
    }

    /**
     * {@return whether all of another set is in this one}
     *
     * @param other the other set
     */
    public boolean containsAll(Phases other) {
        return (other.mask & ~mask) == 0;
    }

    /**
     * {@return the conductors that are in both}
     *
     * @param other the other set
     */
    public Phases and(Phases other) {
        return new Phases(mask & other.mask);
    }

    /**
     * {@return the conductors that are in either}
     *
     * @param other the other set
     */
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
        List<Conductor> all = new ArrayList<>(6);
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
