package org.keeplit.condition;

import com.google.common.collect.ImmutableList;
import java.util.Optional;
import org.keeplit.text.Span;

/**
 * A moment that a condition asks about: an act of one kind, of things that are known where it is asked.
 *
 * @param act the kind of moment
 * @param participants what takes part, one for each that the kind has
 * @param phase on which phase; any if none is said
 * @param by who acts; anybody if nobody is said
 * @param words constants that narrow the moment, such as a mode and its value
 * @param span where it was written
 */
public record Moment(
        ActKind act,
        ImmutableList<Participant> participants,
        Optional<PhaseTerm> phase,
        Optional<Participant> by,
        ImmutableList<String> words,
        Span span) {

    /** What takes part. */
    public sealed interface Participant {}

    /**
     * One thing.
     *
     * @param term its name
     */
    public record The(Term term) implements Participant {}

    /**
     * Any thing of a sort.
     *
     * @param noun the sort and kinds
     */
    public record Any(Noun noun) implements Participant {}
}
