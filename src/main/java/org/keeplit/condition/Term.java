package org.keeplit.condition;

import org.keeplit.network.Side;
import org.keeplit.text.Span;

/** A term names one object. */
public sealed interface Term {
    /** {@return the sort of what it names} */
    Type type();

    /** {@return where it was written} */
    Span span();

    /**
     * An object of the network or of the procedure, by its own name.
     *
     * @param name the name
     * @param type the sort of what it names
     * @param span where it was written
     */
    record Name(String name, Type type, Span span) implements Term {
        @Override
        public String toString() {
            return name;
        }
    }

    /**
     * A parameter of the procedure or a variable that a quantifier binds.
     *
     * @param name the name, beginning with a capital
     * @param type the sort of what it names
     * @param span where it was written
     */
    record Variable(String name, Type type, Span span) implements Term {
        @Override
        public String toString() {
            return name;
        }
    }

    /**
     * The line node on one side of a device, a regulator or a line section, outside its leads.
     *
     * @param of the branch element
     * @param side which side
     * @param span where it was written
     */
    record LineOf(Term of, Side side, Span span) implements Term {
        @Override
        public Type type() {
            return Type.POINT;
        }

        @Override
        public String toString() {
            return "the " + side.word() + "-side line of " + of;
        }
    }

    /**
     * The bushing on one side of a device with leads.
     *
     * @param of the device
     * @param side which side
     * @param span where it was written
     */
    record BushingOf(Term of, Side side, Span span) implements Term {
        @Override
        public Type type() {
            return Type.POINT;
        }

        @Override
        public String toString() {
            return "the " + side.word() + " bushing of " + of;
        }
    }

    /**
     * The lead itself on one side of a device with leads.
     *
     * @param of the device
     * @param side which side
     * @param span where it was written
     */
    record LeadOf(Term of, Side side, Span span) implements Term {
        @Override
        public Type type() {
            return Type.POINT;
        }

        @Override
        public String toString() {
            return "the " + side.word() + " lead of " + of;
        }
    }

    /**
     * The node of a load, a capacitor, a generator or a source.
     *
     * @param of the element
     * @param span where it was written
     */
    record NodeOf(Term of, Span span) implements Term {
        @Override
        public Type type() {
            return Type.POINT;
        }

        @Override
        public String toString() {
            return "the node of " + of;
        }
    }

    /**
     * The structure where a device, a regulator or a temporary conductor stands.
     *
     * @param of the device or the regulator
     * @param span where it was written
     */
    record SiteOf(Term of, Span span) implements Term {
        @Override
        public Type type() {
            return Type.SITE;
        }

        @Override
        public String toString() {
            return "the site of " + of;
        }
    }
}
