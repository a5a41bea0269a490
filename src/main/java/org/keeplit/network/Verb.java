package org.keeplit.network;

import com.google.common.collect.ImmutableList;
import org.keeplit.text.Span;

/**
 * A step that people do to a kind of equipment.
 *
 * @param one the form that follows one person
 * @param several the form that follows several
 * @param effects what it does to one unit, in this order
 * @param span where it is declared
 */
public record Verb(Form one, Form several, ImmutableList<Effect> effects, Span span) {
    /**
     * A verb's words around its object, such as {@code puts … in non-reclose}.
     *
     * @param before the words before the object, at least one
     * @param after the words after the object, perhaps none
     */
    public record Form(ImmutableList<String> before, ImmutableList<String> after) {
        /**
         * {@return the words with the object named}
         *
         * @param object its name
         */
        public String with(String object) {
            String head = String.join(" ", before) + " " + object;
            return after.isEmpty() ? head : head + " " + String.join(" ", after);
        }
    }
}
