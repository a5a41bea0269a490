package org.keeplit.program;

import com.google.common.collect.ImmutableList;
import org.keeplit.procedure.Block;

/** The orders in which acts may come, as a tree. */
sealed interface Plan {
    /**
     * One act, or one of several outcomes of it.
     *
     * @param number the leaf's number, from 0
     * @param acts the outcomes, at least one
     */
    record Leaf(int number, ImmutableList<Act> acts) implements Plan {}

    /**
     * Parts that follow one another in some order.
     *
     * @param order how
     * @param parts the parts
     * @param step the number of the step that this is the whole of, or -1
     */
    record Node(Block.Order order, ImmutableList<Plan> parts, int step) implements Plan {}

    /**
     * One of two ways, by what an inspection found.
     *
     * @param item the inspection
     * @param outcome the number of the outcome, from 0, that leads to {@code then}
     */
    record Choice(FieldKey.Found item, int outcome, Plan then, Plan otherwise) implements Plan {}

    /** One of two ways, as the crew likes. @param body the one @param skip the other */
    record Either(Plan body, Plan skip) implements Plan {}

    /**
     * Whole parts in any order that lets some come before others.
     *
     * @param parts the parts
     * @param after for each part the parts that must be done before it begins, by number
     */
    record Partial(ImmutableList<Plan> parts, ImmutableList<ImmutableList<Integer>> after) implements Plan {}
}
