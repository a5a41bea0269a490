package org.keeplit.rule;

import com.google.common.collect.ImmutableList;
import org.keeplit.condition.Condition;
import org.keeplit.text.Span;

/**
 * A condition with a name, such as {@code any person W is covered at any site S}.
 *
 * @param parameters its variables, at least one; the first is the subject
 * @param words for each variable the words that follow it; those of the first begin with {@code is} or {@code has}
 * @param body what it means
 * @param span where it is declared
 */
public record Definition(
        ImmutableList<Condition.Binder> parameters,
        ImmutableList<String> words,
        Condition body,
        Span span) {

    /** {@return the whole of it as one phrase, its variables left out, by which messages call it} */
    public String phrase() {
        return String.join(" … ", words).replaceAll(" … $", "");
    }
}
