package org.keeplit.outcome;

import com.google.common.collect.ImmutableList;
import org.keeplit.condition.Truth;

/**
 * A condition with its value and those of its parts.
 *
 * @param text the condition in words, its variables replaced
 * @param truth its value
 * @param witness for a part of a quantifier the thing that it is about; empty for other parts
 * @param figures for a comparison the figures beside their limits
 * @param path for what is supplied or bypassed the things on the way, from the source or from one side to the other
 * @param parts its parts; in a short explanation of a quantifier only those that decided it
 */
public record Why(
        String text,
        Truth truth,
        String witness,
        ImmutableList<Beside> figures,
        ImmutableList<String> path,
        ImmutableList<Why> parts) {
    /** Nothing to explain. */
    public static final Why NOTHING = new Why("", Truth.TRUE, ImmutableList.of());

    /**
     * A condition with nothing but its parts.
     *
     * @param text the condition in words
     * @param truth its value
     * @param parts its parts
     */
    public Why(String text, Truth truth, ImmutableList<Why> parts) {
        this(text, truth, "", ImmutableList.of(), ImmutableList.of(), parts);
    }

    /**
     * A figure beside the one that it is compared with.
     *
     * @param where on which phase and in which load case; empty where there is only one
     * @param figure the figure, with its unit
     * @param limit the other one
     * @param share how much of what the comparison allows is used up: 1 at the limit, more beyond; not a number where that says nothing
     */
    public record Beside(String where, String figure, String limit, double share) {}

    /**
     * {@return this as a part of a quantifier}
     *
     * @param of the thing that it is about
     */
    public Why about(String of) {
        return new Why(text, truth, of, figures, path, parts);
    }
}
