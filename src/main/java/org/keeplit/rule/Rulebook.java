package org.keeplit.rule;

import com.google.common.collect.ImmutableList;
import org.keeplit.text.Span;

/**
 * A rulebook.
 *
 * @param name its name
 * @param revision its revision
 * @param title its title, perhaps empty
 * @param rules its rules, in the order of the file
 * @param span where it is declared
 */
public record Rulebook(String name, String revision, String title, ImmutableList<Rule> rules, Span span) {}
