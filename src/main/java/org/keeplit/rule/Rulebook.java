package org.keeplit.rule;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import org.keeplit.text.Span;
import org.keeplit.unit.Quantity;

/**
 * A rulebook, with what it takes over from those that it extends.
 *
 * @param name its name
 * @param revision its revision
 * @param title its title, perhaps empty
 * @param extended the names of the rulebooks that it extends, at whatever remove
 * @param parameters the figures that whoever keeps it may set, with the values that they have here
 * @param usual for each parameter that is set otherwise than the book says, what the book says
 * @param definitions the conditions that it names
 * @param chances the events that it names
 * @param rules its rules: those of extended rulebooks first, then its own, in the order of the files
 * @param overridden the rules of extended rulebooks that it replaces or drops
 * @param span where it is declared
 */
public record Rulebook(
        String name,
        String revision,
        String title,
        ImmutableList<String> extended,
        ImmutableMap<String, Quantity> parameters,
        ImmutableMap<String, Quantity> usual,
        ImmutableList<Definition> definitions,
        ImmutableList<Chance> chances,
        ImmutableList<Rule> rules,
        ImmutableList<Overridden> overridden,
        Span span) {}
