package org.keeplit.condition;

import com.google.common.collect.ImmutableList;
import java.util.Optional;
import org.keeplit.text.Span;

/** A condition on a state, typed and resolved. */
public sealed interface Condition {
    /** {@return where it was written} */
    Span span();

    /**
     * It is not so. Of an atom that is asked of several phases: on none of them.
     *
     * @param body what is not so
     * @param span where it was written
     */
    record Not(Condition body, Span span) implements Condition {}

    /**
     * All are so; none for "always true".
     *
     * @param parts the parts
     * @param span where it was written
     */
    record All(ImmutableList<Condition> parts, Span span) implements Condition {}

    /**
     * At least one is so.
     *
     * @param parts the parts
     * @param span where it was written
     */
    record One(ImmutableList<Condition> parts, Span span) implements Condition {}

    /** How a quantifier counts. */
    enum Quantifier {
        /** All of them. */
        EVERY,
        /** At least one. */
        SOME,
        /** Not a single one. */
        NO
    }

    /**
     * A quantified condition.
     *
     * @param quantifier how it counts
     * @param binder what it ranges over
     * @param body what is asked of each
     * @param span where it was written
     */
    record Quantified(Quantifier quantifier, Binder binder, Condition body, Span span) implements Condition {}

    /**
     * So many of what a binder ranges over, counted.
     *
     * @param least how many at least
     * @param most how many at most; {@link Integer#MAX_VALUE} for any number
     * @param binder what it ranges over
     * @param body what is asked of each
     * @param span where it was written
     */
    record Counted(int least, int most, Binder binder, Condition body, Span span) implements Condition {}

    /**
     * A condition that a rulebook has given a name.
     *
     * @param words for each argument the words that follow it, perhaps empty
     * @param arguments what the definition's variables stand for here
     * @param body the definition, in which only these variables are known
     * @param span where it was written
     */
    record Named(ImmutableList<String> words, ImmutableList<Argument> arguments, Condition body, Span span)
            implements Condition {}

    /**
     * What a variable of a definition stands for: a thing, or for a phase a phase.
     *
     * @param parameter the definition's variable
     * @param term the thing
     * @param phase the phase: one given, or a variable
     */
    record Argument(String parameter, Optional<Term> term, Optional<PhaseTerm> phase) {}

    /**
     * A moment has come up before.
     *
     * @param moments what has happened, any of them
     * @param since counted only after the last of these; counted from the start if none of them came up, or none
     *     is said
     * @param span where it was written
     */
    record Happened(ImmutableList<Moment> moments, ImmutableList<Moment> since, Span span) implements Condition {}

    /**
     * Something was so in every state since a moment: from the state that the last such act reached on, or from
     * the start if none came up.
     *
     * @param since the moments, any of them
     * @param body what was so all the time
     * @param span where it was written
     */
    record Since(ImmutableList<Moment> since, Condition body, Span span) implements Condition {}

    /**
     * One question.
     *
     * @param predicate what is asked
     * @param terms of what
     * @param phase on which phases; {@link PhaseTerm#ALL} asks for all of them (and is ignored where the
     *     predicate is not asked of phases)
     * @param words constants that belong to the question, such as a mode and its value
     * @param span where it was written
     */
    record Atom(
            Predicate predicate,
            ImmutableList<Term> terms,
            PhaseTerm phase,
            ImmutableList<String> words,
            Span span)
            implements Condition {}

    /** How two figures are compared. */
    enum Comparison {
        /** Not more than. */
        AT_MOST("is at most"),
        /** Not less than. */
        AT_LEAST("is at least"),
        /** Less than. */
        BELOW("is below"),
        /** More than. */
        ABOVE("is above");

        private final String words;

        Comparison(String words) {
            this.words = words;
        }

        /** {@return the words between the figures} */
        public String words() {
            return words;
        }

        /** {@return whether the right figure is the most that the left may be, rather than the least} */
        public boolean isUpper() {
            return this == AT_MOST || this == BELOW;
        }
    }

    /**
     * A comparison of two figures of one dimension. It must hold in every load case that the network declares.
     *
     * @param left the figure that is asked about
     * @param comparison how
     * @param right the figure that it is compared with
     * @param span where it was written
     */
    record Compare(Figure left, Comparison comparison, Figure right, Span span) implements Condition {}

    /**
     * What a variable ranges over.
     *
     * @param variable its name
     * @param noun the sort and kinds
     * @param of for phases, the object whose phases are meant
     * @param such a further condition on it, for example that it feeds a structure
     * @param span where it was written
     */
    record Binder(String variable, Noun noun, Optional<Term> of, Optional<Condition> such, Span span) {}
}
