package org.keeplit.plain;

import org.keeplit.procedure.Block;

/**
 * What tells one break from another.
 *
 * @param sort {@code rule}, or the word for what else went wrong
 * @param rulebook the rulebook of the rule; empty for what is no rule
 * @param name the rule's name; empty for what is no rule
 * @param step the label of the step, or its sentence, and the line where it is written; empty where it is at no step
 */
public record PlainPlace(String sort, String rulebook, String name, String step) implements Comparable<PlainPlace> {
    static PlainPlace of(String sort, Block.Step step) {
        return new PlainPlace(sort, "", "", words(step));
    }

    static String words(Block.Step step) {
        return step == null ? "" : step.label().orElse(step.sentence()) + ":" + step.span().line();
    }

    @Override
    public int compareTo(PlainPlace other) {
        return toString().compareTo(other.toString());
    }
}
