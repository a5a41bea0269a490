package org.keeplit.network;

import com.google.common.collect.ImmutableMap;
import org.keeplit.text.Span;
import org.keeplit.unit.Quantity;

/**
 * One equipment file.
 *
 * @param name its name
 * @param title its title, perhaps empty
 * @param kinds the kinds that it declares, by name
 * @param conductors the conductors that it declares, by name, each with its figures by name
 * @param spacings the spacings that it declares, by name
 * @param span where it is declared
 */
public record Equipment(
        String name,
        String title,
        ImmutableMap<String, Kind> kinds,
        ImmutableMap<String, ImmutableMap<String, Quantity>> conductors,
        ImmutableMap<String, Spacing> spacings,
        Span span) {}
