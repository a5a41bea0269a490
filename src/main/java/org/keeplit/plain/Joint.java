package org.keeplit.plain;

import org.keeplit.network.Conductor;
import org.keeplit.network.Kind;

/**
 * What may join two places.
 *
 * @param a one place
 * @param b the other
 * @param fact the fact that says whether it does; null if it always does
 * @param value the value of the fact at which it does
 * @param part pole, lead, clamp, ground, line or regulator
 * @param owner what it belongs to
 * @param phase its phase
 * @param site where it is
 * @param kind the kind of its owner; null for lines
 */
record Joint(
        String a, String b, String fact, int value, Part part, String owner, Conductor phase, String site, Kind kind) {
    enum Part {
        POLE,
        LEAD,
        CLAMP,
        GROUND,
        LINE,
        REGULATOR
    }

    /** Short, as it names a contact: a kind written out in full would be thousands of letters for each. */
    @Override
    public String toString() {
        return part + " " + owner + " " + phase + " " + a + " " + b;
    }

    /** {@return whether it makes and breaks} */
    boolean isContact() {
        return fact != null;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Joint that
                && a.equals(that.a)
                && b.equals(that.b)
                && owner.equals(that.owner)
                && String.valueOf(fact).equals(String.valueOf(that.fact))
                && value == that.value;
    }

    @Override
    public int hashCode() {
        return a.hashCode() * 31 + b.hashCode() + value;
    }
}
