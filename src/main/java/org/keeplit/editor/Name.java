package org.keeplit.editor;

import org.keeplit.text.Span;

/**
 * A place where something is named.
 *
 * @param sort what sort of thing
 * @param scope where the name counts: a network, a procedure, a rule; empty for names that count everywhere
 * @param text the name
 * @param span where
 * @param declares whether it is declared there
 */
record Name(Sort sort, String scope, String text, Span span, boolean declares) {
    /** What has names. */
    enum Sort {
        EQUIPMENT,
        NETWORK,
        RULEBOOK,
        PROCEDURE,
        RULE,
        EVENT,
        KIND,
        CONDUCTOR,
        SPACING,
        ELEMENT,
        NODE,
        LABEL,
        PERSON,
        VARIABLE
    }

    /** {@return whether it means the same thing as another} */
    boolean isSame(Name other) {
        return sort == other.sort && scope.equals(other.scope) && text.equals(other.text);
    }
}
