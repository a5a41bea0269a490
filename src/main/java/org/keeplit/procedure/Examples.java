package org.keeplit.procedure;

import com.google.common.collect.ImmutableList;
import org.keeplit.text.Span;

/**
 * Examples for some rulebooks, with what they have in common already put into each.
 *
 * @param name their name
 * @param title their title, perhaps empty
 * @param rulebooks the names of the rulebooks that they are for
 * @param examples the examples, in the order of the file
 * @param span where they are declared
 */
public record Examples(
        String name, String title, ImmutableList<String> rulebooks, ImmutableList<Example> examples, Span span) {}
