package org.keeplit.outcome;

import org.keeplit.text.Span;

/**
 * An act of a way that was looked for: a way back, or a plan.
 *
 * @param actor who does it
 * @param text the act in words
 * @param step the name of the step of the procedure that it is taken from, or that it takes back
 * @param span where that step stands
 */
public record ChosenAct(String actor, String text, String step, Span span) {}
