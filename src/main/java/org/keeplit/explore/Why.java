package org.keeplit.explore;

import com.google.common.collect.ImmutableList;
import org.keeplit.condition.Truth;

/**
 * A condition with its value and those of its parts.
 *
 * @param text the condition in words, its variables replaced
 * @param truth its value
 * @param parts its parts; for a quantifier only those that decided it
 */
public record Why(String text, Truth truth, ImmutableList<Why> parts) {
    /** Nothing to explain. */
    public static final Why NOTHING = new Why("", Truth.TRUE, ImmutableList.of());
}
