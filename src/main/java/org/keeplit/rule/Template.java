package org.keeplit.rule;

import com.google.common.collect.ImmutableList;
import org.keeplit.condition.Condition;
import org.keeplit.condition.Figure;

/**
 * A sentence with gaps.
 *
 * @param parts literal texts and gaps in order
 */
public record Template(ImmutableList<Part> parts) {
    /** A piece of a template. */
    public sealed interface Part {}

    /**
     * Words as they are.
     *
     * @param text the words
     */
    public record Text(String text) implements Part {}

    /**
     * A gap that is filled from the binding and the state.
     *
     * @param attribute what is asked of the variable: empty for its name, or {@code customers},
     *     {@code opening duty}, {@code closing duty}, {@code site}, {@code critical}
     * @param variable the variable
     */
    public record Gap(String attribute, String variable) implements Part {}

    /**
     * A gap that is filled with a figure of the state or of a nameplate.
     *
     * @param figure the figure
     */
    public record FigureGap(Figure figure) implements Part {}

    /**
     * A gap that tells whether something is so.
     *
     * @param condition what
     */
    public record ConditionGap(Condition condition) implements Part {}
}
