package org.keeplit.rule;

import com.google.common.collect.ImmutableList;
import java.util.Optional;
import org.keeplit.condition.Condition;
import org.keeplit.condition.PhaseTerm;
import org.keeplit.condition.Term;
import org.keeplit.text.Span;

/**
 * Something that may happen at any moment, with nobody doing it: an {@code event} of a rulebook.
 *
 * @param name its name, unique in its rulebook
 * @param binders to what it may happen, each combination by itself
 * @param when what must be so, as far as anybody knows, for it to happen
 * @param effects what happens, all of it at once
 * @param says what happens, in words
 * @param span where it is declared
 */
public record Chance(
        String name,
        ImmutableList<Condition.Binder> binders,
        Optional<Condition> when,
        ImmutableList<Effect> effects,
        Template says,
        Span span) {

    /**
     * One thing that happens.
     *
     * @param kind what
     * @param of to what
     * @param words for a setting its name and the value that it takes
     * @param phase on which phases
     */
    public record Effect(Kind kind, Term of, ImmutableList<String> words, PhaseTerm phase) {}

    /** What can happen by chance. */
    public enum Kind {
        /** A device opens, and what closes again by itself may do so: {@code D trips on P}. */
        TRIPS,
        /** A device opens and stays open. */
        OPENS,
        /** A device closes. */
        CLOSES,
        /** A device does not trip from then on, whatever flows. */
        FAILS,
        /** One end of a jumper or a ground comes off, either of the two. */
        COMES_OFF,
        /** A setting takes a value: {@code reclosing of R becomes on}. */
        BECOMES,
        /** A person leaves the work. */
        LEAVES,
        /** A person cannot be spoken with from then on; what people say of holds and clearances waits. */
        OUT_OF_REACH,
        /** A line section has a fault that is gone once it is dead for a moment. */
        FAULT_PASSES,
        /** A line section has a fault that stays. */
        FAULT_STAYS
    }
}
