package org.keeplit.condition;

import java.util.Optional;
import org.keeplit.text.Span;
import org.keeplit.unit.Dimension;
import org.keeplit.unit.Quantity;

/** A figure that a condition compares. */
public sealed interface Figure {
    /** {@return what it measures} */
    Dimension dimension();

    /** {@return where it was written} */
    Span span();

    /**
     * A figure of the state, such as the current through a jumper.
     *
     * @param measure what is measured
     * @param of of what
     * @param beyond the object that a few measures name after {@code beyond}
     * @param phase on which phase
     * @param span where it was written
     */
    record Measured(Measure measure, Term of, Optional<Term> beyond, PhaseTerm phase, Span span) implements Figure {
        @Override
        public Dimension dimension() {
            return measure.dimension();
        }

        @Override
        public String toString() {
            return measure.words() + " " + of + beyond.map(b -> " beyond " + b).orElse("");
        }
    }

    /**
     * A figure that stands for an object in the network or for its kind, such as {@code continuous rating}.
     *
     * @param name the figure's name
     * @param dimension what sort of quantity it is
     * @param of of what
     * @param span where it was written
     */
    record Rated(String name, Dimension dimension, Term of, Span span) implements Figure {
        @Override
        public String toString() {
            return "the " + name + " of " + of;
        }
    }

    /**
     * A figure as written.
     *
     * @param quantity the quantity
     * @param span where it was written
     */
    record Given(Quantity quantity, Span span) implements Figure {
        @Override
        public Dimension dimension() {
            return quantity.dimension();
        }

        @Override
        public String toString() {
            return quantity.toString();
        }
    }

    /**
     * A parameter of a rulebook, with the value that it has here.
     *
     * @param name its name
     * @param quantity its value
     * @param span where it was written
     */
    record Setting(String name, Quantity quantity, Span span) implements Figure {
        @Override
        public Dimension dimension() {
            return quantity.dimension();
        }

        @Override
        public String toString() {
            return "the " + name + " of " + quantity;
        }
    }

    /**
     * A part of another figure.
     *
     * @param factor how many times it
     * @param figure the other figure
     * @param span where it was written
     */
    record Part(double factor, Figure figure, Span span) implements Figure {
        @Override
        public Dimension dimension() {
            return figure.dimension();
        }

        @Override
        public String toString() {
            return Quantity.number(factor * 100) + " % of " + figure;
        }
    }
}
