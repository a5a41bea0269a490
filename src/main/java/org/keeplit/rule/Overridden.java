package org.keeplit.rule;

import org.keeplit.text.Span;

/**
 * A rule of an extended rulebook that no longer counts as it stands there.
 *
 * @param rule the rule's name
 * @param rulebook the rulebook that it comes from
 * @param by the rulebook that overrides it
 * @param replaced whether another rule stands for it; otherwise it is dropped
 * @param because the reason
 * @param span where it is overridden
 */
public record Overridden(
        String rule, String rulebook, String by, boolean replaced, String because, Span span) {}
