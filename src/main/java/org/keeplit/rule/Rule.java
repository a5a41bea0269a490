package org.keeplit.rule;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableSet;
import java.util.Optional;
import org.keeplit.condition.Condition;
import org.keeplit.condition.Moment;
import org.keeplit.text.Span;

/**
 * One rule.
 *
 * @param name its name, unique in its rulebook
 * @param form when it is judged
 * @param triggers for a rule that is about moments these; they bind the same variables. None for a {@link Form#BETWEEN} that
 *     begins with the start
 * @param until for {@link Form#BETWEEN} the moments that end the stretch, none for the end of the procedure; for
 *     {@link Form#EVENTUALLY} those that must come, if moments must
 * @param binders the variables that the whole rule ranges over, besides those of the triggers
 * @param scope for {@link Form#WHILE} the condition under which it is judged
 * @param body what is required; for {@link Form#EVENTUALLY} what must become so, if no moment must come
 * @param unless what excuses
 * @param evenIf the events in spite of which it is judged; it is left alone in states in which another has happened
 * @param severity how much it weighs
 * @param says the sentence on what went wrong
 * @param because why it matters
 * @param citation where the requirement comes from; empty means common practice, no source
 * @param span where it is declared
 */
public record Rule(
        String name,
        Form form,
        ImmutableList<Trigger> triggers,
        ImmutableList<Moment> until,
        ImmutableList<Condition.Binder> binders,
        Optional<Condition> scope,
        Condition body,
        Optional<Condition> unless,
        ImmutableSet<String> evenIf,
        Severity severity,
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
        /** In every state from a moment on until another. */
        BETWEEN,
        /** In every state in which the procedure ends, once a moment came up. */
        EVENTUALLY,
        /** In the starting state. */
        AT_START,
        /** In every state in which the procedure ends. */
        AT_END
    }

    /** How much a rule weighs. */
    public enum Severity {
        /** Breaking it breaks the procedure. */
        STOP,
        /** Breaking it is told, and counts under a strict check. */
        CAUTION,
        /** Breaking it is told. */
        ADVICE;

        /** {@return the word that rules use for it} */
        public String word() {
            return name().toLowerCase(java.util.Locale.ROOT);
        }
    }
}
