package org.keeplit.language;

import com.google.common.collect.ImmutableSet;
import java.util.List;
import java.util.Map;
import org.keeplit.network.Base;
import org.keeplit.network.Connection;
import org.keeplit.network.Kind;
import org.keeplit.network.Mode;
import org.keeplit.network.Trait;
import org.keeplit.text.Span;
import org.keeplit.unit.Dimension;
import org.keeplit.unit.Quantity;

/** Reads the attributes of one element, each alone, so that a mistake spoils one only. */
final class AttributeReader {
    private final String name;
    private final Kind kind;
    private final ImmutableSet<String> conductors;
    private final Attributes into = new Attributes();

    /**
     * A reader for one element.
     *
     * @param name the element's name
     * @param kind its kind
     * @param conductors the known conductors
     */
    AttributeReader(String name, Kind kind, ImmutableSet<String> conductors) {
        this.name = name;
        this.kind = kind;
        this.conductors = conductors;
    }

    /** {@return what was read so far} */
    Attributes attributes() {
        return into;
    }

    /** Reads one attribute. */
    void read(List<Lexeme> words) {
        Cursor cursor = Cursor.over(words);
        if (!figure(cursor) && !bare(cursor) && !setting(cursor) && !common(cursor) && !ofFamily(cursor)) {
            throw AttributeTable.unknown(kind.base(), words);
        }
        if (!cursor.done()) {
            Lexeme next = cursor.need("");
            throw new Misread(Code.MISSING_COMMA
                    .at(next.span(), "a comma is missing before “" + Cursor.clip(next.getText()) + "”")
                    .help("attributes are separated by commas"));
        }
    }

    private void once(String attribute, Span span) {
        if (!into.seen.add(attribute)) {
            throw new Misread(Code.DUPLICATE.at(span, "“" + attribute + "” is said twice for " + name));
        }
    }

    private boolean figure(Cursor cursor) {
        for (Map.Entry<String, Dimension> figure :
                AttributeTable.figures(kind.base()).entrySet()) {
            List<String> words = List.of(figure.getKey().split(" "));
            if (cursor.sees(words)) {
                once(figure.getKey(), cursor.here());
                cursor.moveTo(words.size());
                String what = "the " + figure.getKey() + " of " + name;
                into.figures.put(figure.getKey(), Figures.positive(cursor, figure.getValue(), what));
                return true;
            }
        }
        return false;
    }

    private boolean bare(Cursor cursor) {
        if (!cursor.need("an attribute").isNumber()) {
            return false;
        }
        if (cursor.sees(1, "customer") || cursor.sees(1, "customers")) {
            if (kind.base() != Base.LOAD) {
                throw new Misread(Code.UNKNOWN_ATTRIBUTE.at(
                        cursor.here(),
                        "only a load has customers, and " + name + " is "
                                + Suggestions.a(kind.base().phrase())));
            }
            once("customers", cursor.here());
            into.customers = Figures.count(cursor.next(""), 1_000_000, "the number of customers");
            cursor.next("");
            return true;
        }
        boolean reactive = kind.base() == Base.CAPACITOR
                || Figures.peekUnit(cursor, 1)
                                .filter(u -> u.dimension() == Dimension.REACTIVE_POWER)
                                .isPresent()
                        && kind.base() != Base.SOURCE;
        if (reactive) {
            once(AttributeTable.REACTIVE, cursor.here());
            into.figures.put(
                    AttributeTable.REACTIVE,
                    Figures.read(cursor, Dimension.REACTIVE_POWER, "the reactive power of " + name));
        } else if (kind.base() == Base.LOAD || kind.base() == Base.GENERATOR) {
            once(AttributeTable.ACTIVE, cursor.here());
            into.figures.put(
                    AttributeTable.ACTIVE,
                    Figures.positive(cursor, Dimension.ACTIVE_POWER, "the active power of " + name));
        } else {
            return false;
        }
        return true;
    }

    /** Reads a mode and its value, such as {@code reclosing blocked}. */
    private boolean setting(Cursor cursor) {
        if (kind.base() != Base.SWITCH) {
            return false;
        }
        for (Mode mode : kind.modes()) {
            List<String> words = List.of(mode.name().split("-"));
            boolean spaced = cursor.sees(words);
            if (spaced || cursor.sees(0, mode.name())) {
                once(mode.name(), cursor.here());
                cursor.moveTo(spaced ? words.size() : 1);
                Lexeme value = cursor.next("a value of " + mode.name());
                if (!mode.values().contains(value.value())) {
                    throw new Misread(Code.UNKNOWN_MODE
                            .at(
                                    value.span(),
                                    mode.name() + " of " + Suggestions.a(kind.name()) + " is never “"
                                            + Cursor.clip(value.value()) + "”")
                            .help("it is " + Suggestions.list(mode.values(), "or")));
                }
                if (!value.value().equals(mode.normal())) {
                    into.settings.put(mode.name(), value.value());
                }
                return true;
            }
        }
        return false;
    }

    private boolean common(Cursor cursor) {
        Span here = cursor.here();
        if (cursor.take("phases") || cursor.take("phase")) {
            once("phases", here);
            into.phases = PhaseReader.letters(cursor);
            return true;
        }
        return false;
    }

    private boolean ofFamily(Cursor cursor) {
        return switch (kind.base()) {
            case SOURCE -> name(cursor, "supply");
            case LINE -> conductor(cursor);
            case TRANSFORMER -> transformer(cursor);
            case REGULATOR -> name(cursor, "at");
            case SWITCH -> device(cursor);
            case LOAD -> load(cursor) || connection(cursor);
            case CAPACITOR -> connection(cursor);
            default -> false;
        };
    }

    private boolean name(Cursor cursor, String attribute) {
        Span here = cursor.here();
        if (!cursor.take(attribute)) {
            return false;
        }
        once(attribute, here);
        Lexeme next = cursor.next("a name");
        if (!next.isName()) {
            throw new Misread(Code.RESERVED.at(next.span(), "“" + next.getText() + "” cannot be a name"));
        }
        into.word = next;
        return true;
    }

    private boolean conductor(Cursor cursor) {
        if (!name(cursor, "conductor")) {
            return false;
        }
        if (!conductors.contains(into.word.value())) {
            throw new Misread(Code.UNKNOWN_CONDUCTOR
                    .at(
                            into.word.span(),
                            "no equipment file that this network uses declares a conductor "
                                    + Cursor.clip(into.word.value()))
                    .help(Suggestions.didYouMean(into.word.value(), conductors)
                            .orElse(
                                    conductors.isEmpty()
                                            ? "declare it there with a line “conductor NAME …”"
                                            : "there is " + Suggestions.list(conductors, "and"))));
        }
        return true;
    }

    private boolean transformer(Cursor cursor) {
        Span here = cursor.here();
        if (cursor.take("clock")) {
            once("clock", here);
            Quantity hours = Figures.read(cursor, Dimension.NUMBER, "the clock of " + name);
            if (hours.si() != Math.rint(hours.si()) || hours.si() < 0 || hours.si() > 11) {
                throw new Misread(Code.BAD_NUMBER.at(here, "the clock of " + name + " is a whole number from 0 to 11"));
            }
            into.clock = (int) hours.si();
            return true;
        }
        if (!connection(cursor)) {
            return false;
        }
        cursor.expect("“to” and the connection of the other side", "to");
        Connection first = into.connection;
        into.seen.remove("connection");
        if (!connection(cursor)) {
            throw cursor.unexpected("delta, grounded wye or ungrounded wye");
        }
        into.secondary = into.connection;
        into.connection = first;
        return true;
    }

    private boolean connection(Cursor cursor) {
        Span here = cursor.here();
        for (Connection one : Connection.values()) {
            if (cursor.take(one.phrase().split(" "))) {
                once("connection", here);
                into.connection = one;
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

    private boolean device(Cursor cursor) {
        Span here = cursor.here();
        if (cursor.take("ganged")) {
            return gang(true, Trait.GANGED, here);
        }
        if (cursor.take("single-phase", "units")) {
            return gang(false, Trait.SINGLE_PHASE_UNITS, here);
        }
        if (cursor.take("closed")) {
            once("position", here);
            return true;
        }
        if (cursor.take("open")) {
            once("position", here);
            into.openEverywhere = !cursor.take("on");
            if (!into.openEverywhere) {
                into.openSpan = cursor.here();
                into.open = PhaseReader.letters(cursor);
            }
            return true;
        }
        return name(cursor, "at");
    }

    private boolean gang(boolean together, Trait trait, Span here) {
        once("build", here);
        if (!kind.has(trait)) {
            throw new Misread(Code.WRONG_BUILD.at(
                    here,
                    Suggestions.a(kind.name()) + " is never built " + (together ? "ganged" : "of single-phase units")));
        }
        into.ganged = together;
        return true;
    }

    private boolean load(Cursor cursor) {
        Span here = cursor.here();
        if (cursor.take("motor")) {
            once("motor", here);
            into.motor = true;
            return true;
        }
        if (cursor.take("critical")) {
            once("critical", here);
            into.critical = cursor.next("who depends on it, in quotes");
            if (!into.critical.isText()) {
                throw new Misread(Code.MISSING_QUOTE
                        .at(into.critical.span(), "who depends on " + name + " is written in quotes")
                        .help("such as critical \"milking parlour\""));
            }
            return true;
        }
        return false;
    }
}
