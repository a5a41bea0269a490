package org.keeplit.condition;

import com.google.common.collect.ImmutableSet;

/**
 * What a quantifier or a parameter ranges over: a sort, perhaps narrowed to some kinds of equipment.
 *
 * @param type the sort
 * @param kinds the names of the kinds that count; empty for all
 * @param words how it was written, such as {@code recloser}
 */
public record Noun(Type type, ImmutableSet<String> kinds, String words) {
    /**
     * {@return a noun for a whole sort}
     *
     * @param type the sort
     * @param words how it was written
     */
    public static Noun all(Type type, String words) {
        return new Noun(type, ImmutableSet.of(), words);
    }
}
