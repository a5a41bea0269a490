package org.keeplit.language;

import com.google.common.collect.ImmutableMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.keeplit.network.Connection;
import org.keeplit.network.Phases;
import org.keeplit.text.Span;
import org.keeplit.unit.Quantity;

/** What the attributes of one element say, while they are read. */
final class Attributes {
    /** What was said so far, by name. */
    final Set<String> seen = new LinkedHashSet<>();

    final Map<String, Quantity> figures = new LinkedHashMap<>();
    final Map<String, String> settings = new LinkedHashMap<>();
    Phases phases;
    /** The phases on which a device was said to be open, if any were named, and where. */
    Phases open = Phases.NONE;

    Span openSpan;
    boolean openEverywhere;
    /** Whether the poles move together, or null if it was not said. */
    Boolean ganged;
    /** The name after {@code supply}, {@code at} or {@code conductor}, or null. */
    Lexeme word;
    /** Who depends on a load, or null. */
    Lexeme critical;

    Connection connection;
    Connection secondary;
    /** The clock number, or less than 0 if it was not said. */
    int clock = -1;

    int customers;
    boolean motor;

    ImmutableMap<String, Quantity> figures() {
        return ImmutableMap.copyOf(figures);
    }

    ImmutableMap<String, String> settings() {
        return ImmutableMap.copyOf(settings);
    }

    /** {@return whether an attribute was said} */
    boolean says(String attribute) {
        return seen.contains(attribute) || figures.containsKey(attribute);
    }

    /** {@return the phases on which a device is closed} */
    Phases closed() {
        return new Phases(phases.mask() & ~(openEverywhere ? phases : open).mask());
    }

    /** {@return where a device was said to be open on phases that it does not have} */
    Optional<Span> openOutside() {
        return open.isEmpty() || phases.containsAll(open) ? Optional.empty() : Optional.of(openSpan);
    }

    Optional<String> word() {
        return Optional.ofNullable(word).map(Lexeme::value);
    }

    Optional<String> critical() {
        return Optional.ofNullable(critical).map(Lexeme::value);
    }

    /** {@return how its phases are joined; loads are in grounded wye unless they say otherwise} */
    Connection connection() {
        return connection == null ? Connection.GROUNDED_WYE : connection;
    }
}
