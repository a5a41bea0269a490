package org.keeplit.language;

import com.google.common.collect.ImmutableMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.keeplit.network.Connection;
import org.keeplit.network.LoadModel;
import org.keeplit.network.Phases;
import org.keeplit.text.Span;
import org.keeplit.unit.Quantity;

/** What the attributes of one element say, while they are read. */
final class Attributes {
    /** The element's name. */
    final String element;
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
    /** The name after {@code spacing}, or null. */
    Lexeme spacing;
    /** The line section along which a load is spread, or null. */
    Lexeme along;
    /** Who depends on a load, or null. */
    Lexeme critical;

    Connection connection;
    Connection secondary;
    /** The windings of a transformer by the phases on which they start, or null. */
    Phases windings;
    /** The clock number, or less than 0 if it was not said. */
    int clock = -1;

    /** Whether the secondary of a transformer has a centre tap. */
    boolean centreTapped;

    int customers;
    boolean motor;
    LoadModel model = LoadModel.POWER;

    Attributes(String element) {
        this.element = element;
    }

    /** Notes that an attribute is said. @throws Misread if it was said before */
    void once(String attribute, Span span) {
        if (!seen.add(attribute)) {
            throw new Misread(Code.DUPLICATE.at(span, "“" + attribute + "” is said twice for " + element));
        }
    }

    /** Moves past the word of an attribute. @return whether it stands here */
    boolean starts(Cursor cursor, String attribute) {
        Span here = cursor.here();
        if (!cursor.take(attribute)) {
            return false;
        }
        once(attribute, here);
        return true;
    }

    /** Reads a word and the name after it. @return whether that word stands here */
    boolean name(Cursor cursor, String attribute) {
        if (!starts(cursor, attribute)) {
            return false;
        }
        Lexeme next = cursor.next("a name");
        if (!next.isName()) {
            throw new Misread(Code.RESERVED.at(next.span(), "“" + next.getText() + "” cannot be a name"));
        }
        word = next;
        return true;
    }

    /** Reads how phases are joined. @return whether that stands here */
    boolean joined(Cursor cursor) {
        Span here = cursor.here();
        for (Connection one : Connection.values()) {
            if (cursor.take(one.phrase().split(" "))) {
                once("connection", here);
                connection = one;
                return true;
            }
        }
        if (cursor.sees(0, "wye")) {
            throw new Misread(Code.UNKNOWN_ATTRIBUTE
                    .at(here, "“wye” alone does not say whether its neutral is grounded")
                    .help("write grounded wye or ungrounded wye"));
        }
        return false;
    }

    ImmutableMap<String, Quantity> figures() {
        return ImmutableMap.copyOf(figures);
    }

    ImmutableMap<String, String> settings() {
        return ImmutableMap.copyOf(settings);
    }

    /** {@return whether an attribute was said} */
    boolean says(String attribute) {
        boolean inParts = attribute.equals("impedance") && figures.containsKey("resistance")
                && figures.containsKey("reactance");
        return inParts || seen.contains(attribute) || figures.containsKey(attribute);
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

    Optional<String> along() {
        return Optional.ofNullable(along).map(Lexeme::value);
    }

    Optional<String> critical() {
        return Optional.ofNullable(critical).map(Lexeme::value);
    }

    /** {@return how its phases are joined; loads are in grounded wye unless they say otherwise} */
    Connection connection() {
        return connection == null ? Connection.GROUNDED_WYE : connection;
    }
}
