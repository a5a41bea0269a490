package org.keeplit.rule;

import com.google.common.collect.ImmutableList;
import java.util.Optional;
import org.keeplit.condition.Condition;
import org.keeplit.text.Span;

/**
 * One rule.
 *
 * @param name its name, unique in its rulebook
 * @param form when it is judged
 * @param triggers for {@link Form#BEFORE} and {@link Form#AFTER} the moments; they bind the same variables
 * @param binders the variables that the whole rule ranges over, besides those of the triggers
 * @param scope for {@link Form#WHILE} the condition under which it is judged
 * @param body what is required
 * @param unless what excuses
 * @param says the sentence on what went wrong
 * @param because why it matters
 * @param citation where the requirement comes from; empty means common practice, no source
 * @param span where it is declared
 */
public record Rule(
        String name,
        Form form,
        ImmutableList<Trigger> triggers,
        ImmutableList<Condition.Binder> binders,
        Optional<Condition> scope,
        Condition body,
        Optional<Condition> unless,
        Template says,
        String because,
        Optional<String> citation,
        Span span) {

    /** When a rule is judged. */
    public enum Form {
        /** In every state, half-done ones included. */
        ALWAYS,
        /** In every state in which its scope holds. */
        WHILE,
        /** In the state that an act is about to leave. */
        BEFORE,
        /** In the settled state after an act. */
        AFTER,
        /** In the starting state. */
        AT_START,
        /** In every state in which the procedure ends. */
        AT_END
    }
}
