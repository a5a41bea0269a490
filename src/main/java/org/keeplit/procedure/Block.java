package org.keeplit.procedure;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import java.util.Optional;
import org.keeplit.condition.Condition;
import org.keeplit.condition.PhaseTerm;
import org.keeplit.condition.Term;
import org.keeplit.text.Span;

/** A step or a group of steps. */
public sealed interface Block {
    /** {@return where it starts} */
    Span span();

    /**
     * One step.
     *
     * @param label the name that variants and reports use, if given
     * @param actors who acts, at least one
     * @param action what is done
     * @param phases on which phases
     * @param ordered whether the phases go in order A, B, C; otherwise in any order
     * @param asOne the reason why its acts may be taken as one, if the writer says so
     * @param requires what must be true before, and nobody looks
     * @param expects what the writer says will be true after
     * @param records what is written down with it
     * @param cautions what the crew is told
     * @param because why it is done, if said
     * @param sentence the line as it was written
     * @param span where it was written
     */
    record Step(
            Optional<String> label,
            ImmutableList<Term> actors,
            Action action,
            PhaseTerm phases,
            boolean ordered,
            Optional<String> asOne,
            ImmutableList<Condition> requires,
            ImmutableList<Condition> expects,
            ImmutableList<String> records,
            ImmutableList<String> cautions,
            Optional<String> because,
            String sentence,
            Span span)
            implements Block {
        /**
         * {@return a step that no text says, with nothing required, expected or written down}
         *
         * @param label its name, if it has one
         * @param actors who does it
         * @param action what is done
         * @param sentence what it is called
         * @param span where it stands
         */
        public static Step unwritten(
                Optional<String> label, ImmutableList<Term> actors, Action action, String sentence, Span span) {
            return new Step(
                    label,
                    actors,
                    action,
                    PhaseTerm.ALL,
                    true,
                    Optional.empty(),
                    ImmutableList.of(),
                    ImmutableList.of(),
                    ImmutableList.of(),
                    ImmutableList.of(),
                    Optional.empty(),
                    sentence,
                    span);
        }

        /**
         * {@return this step under another label}
         *
         * @param other the label, if any
         */
        public Step withLabel(Optional<String> other) {
            return with(other, phases, requires, expects, records);
        }

        /**
         * {@return this step with other requirements}
         *
         * @param others what it requires
         */
        public Step withRequires(ImmutableList<Condition> others) {
            return with(label, phases, others, expects, records);
        }

        /**
         * {@return this step on other phases}
         *
         * @param other the phases
         */
        public Step withPhases(PhaseTerm other) {
            return with(label, other, requires, expects, records);
        }

        /** {@return this step with nothing required, expected or written down, as if it was left out} */
        public Step silent() {
            return with(label, phases, ImmutableList.of(), ImmutableList.of(), ImmutableList.of());
        }

        private Step with(
                Optional<String> newLabel,
                PhaseTerm newPhases,
                ImmutableList<Condition> newRequires,
                ImmutableList<Condition> newExpects,
                ImmutableList<String> newRecords) {
            return new Step(
                    newLabel,
                    actors,
                    action,
                    newPhases,
                    ordered,
                    asOne,
                    newRequires,
                    newExpects,
                    newRecords,
                    cautions,
                    because,
                    sentence,
                    span);
        }
    }

    /** How the parts of a group follow one another. */
    enum Order {
        /** One after another, as written. */
        IN_ORDER,
        /** One after another, in an order of the crew's choice. */
        ANY_ORDER,
        /** At once; every interleaving of their acts may happen. */
        TOGETHER
    }

    /**
     * A group.
     *
     * @param order how the parts follow one another
     * @param parts the parts
     * @param span where it was written
     */
    record Group(Order order, ImmutableList<Block> parts, Span span) implements Block {}

    /**
     * A stage, done as a whole.
     *
     * @param title its title
     * @param parts its parts, in order
     * @param span where it was written
     */
    record Stage(String title, ImmutableList<Block> parts, Span span) implements Block {}

    /**
     * The same for each phase of an object.
     *
     * @param variable the variable for the phase
     * @param of the object whose phases count
     * @param ordered whether in order A, B, C; otherwise in any order
     * @param parts what is done, in order
     * @param span where it was written
     */
    record ForEachPhase(String variable, Term of, boolean ordered, ImmutableList<Block> parts, Span span)
            implements Block {}

    /**
     * The same over and over.
     *
     * @param times how often at most
     * @param exactly whether exactly so often
     * @param parts what is done, in order
     * @param span where it was written
     */
    record Repeat(int times, boolean exactly, ImmutableList<Block> parts, Span span) implements Block {}

    /**
     * A choice by what an inspection found.
     *
     * @param item the inspected item
     * @param outcome the outcome that leads to {@code then}
     * @param then what is done in that case
     * @param otherwise what is done in any other case
     * @param span where it was written
     */
    record IfFound(
            String item, String outcome, ImmutableList<Block> then, ImmutableList<Block> otherwise, Span span)
            implements Block {}

    /**
     * Another procedure, done here as a whole.
     *
     * @param procedure the other procedure
     * @param arguments its parameters, and its crew where the names differ
     * @param span where it was written
     */
    record Call(Procedure procedure, ImmutableMap<String, Term> arguments, Span span) implements Block {}
}
