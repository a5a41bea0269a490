package org.keeplit.outcome;

import com.google.common.collect.ImmutableList;
import java.util.Optional;
import org.keeplit.procedure.Instance;

/**
 * Which steps of a procedure must come before which.
 *
 * @param instance the procedure, where it was tried and from which start
 * @param holds whether it holds as it is; if not, nothing was tried
 * @param cut whether a limit was reached before it was known whether it holds, or it was stopped; then there are no pairs
 * @param parts the steps, and choices as a whole, in the order of the text
 * @param pairs what came of each pair that the text orders, by the earlier and then by the later
 * @param exhaustive whether every order was tried, so that what is called necessary is proved to be
 * @param necessary whether every order that keeps to what is necessary is safe
 * @param asWritten the same for what is necessary and what is so as the text is written
 */
public record OrderTable(
        Instance instance,
        boolean holds,
        boolean cut,
        ImmutableList<Part> parts,
        ImmutableList<Pair> pairs,
        boolean exhaustive,
        Every necessary,
        Every asWritten) {
    /**
     * A table of which nothing is missing.
     *
     * @param instance the procedure, where it was tried and from which start
     * @param holds whether it holds as it is
     * @param parts the steps, in the order of the text
     * @param pairs what came of each pair
     * @param exhaustive whether every order was tried
     * @param necessary whether every order that keeps to what is necessary is safe
     * @param asWritten the same for what is so as the text is written
     */
    public OrderTable(
            Instance instance,
            boolean holds,
            ImmutableList<Part> parts,
            ImmutableList<Pair> pairs,
            boolean exhaustive,
            Every necessary,
            Every asWritten) {
        this(instance, holds, false, parts, pairs, exhaustive, necessary, asWritten);
    }

    /**
     * Two steps of which the text has one before the other.
     *
     * @param before the number of the earlier part
     * @param after the number of the later part
     * @param kind what came of the later before the earlier
     * @param direct of one that goes wrong, whether it does not already follow from two others
     * @param harm what goes wrong, if anything does, in the order that goes wrong after the fewest acts
     */
    public record Pair(int before, int after, Kind kind, boolean direct, Optional<Harm> harm) {}

    /** What came of the later of two steps before the earlier. */
    public enum Kind {
        /** The later can come before the earlier, with what it needs itself and nothing else changed. */
        FREE,
        /** If the later comes before the earlier it goes wrong, unless more than that is changed. */
        AS_WRITTEN,
        /** Every order that was tried with the later before the earlier goes wrong; every order at all, where all were tried. */
        NECESSARY,
        /** Something could not be worked out. */
        UNKNOWN
    }

    /**
     * What came of all orders that keep to what was found.
     *
     * @param answer the answer
     * @param states how many states, or combinations of steps done, were looked at
     * @param exception what goes wrong in an order that is not safe, the shortest way there unless there are too many; then one of which no
     *     step can be left out
     */
    public record Every(Answer answer, int states, Optional<Finding> exception) {}

    /** Whether every order is safe. */
    public enum Answer {
        /** Every one is. */
        SAFE,
        /** One is not. */
        NOT_SAFE,
        /** A limit was reached, or a figure could not be worked out. */
        UNDECIDED
    }

    /**
     * {@return what must come before a part, and does not follow from two others}
     *
     * @param part the part's number
     */
    public ImmutableList<Pair> directBefore(int part) {
        return pairs.stream()
                .filter(p -> p.after() == part && p.direct())
                .collect(ImmutableList.toImmutableList());
    }
}
