package org.keeplit.language;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.keeplit.network.Base;
import org.keeplit.network.Kind;
import org.keeplit.network.Mode;
import org.keeplit.network.Trait;
import org.keeplit.text.Span;
import org.keeplit.unit.Dimension;

/** Reads the attributes of one element, each alone, so that a mistake spoils one only. */
final class AttributeReader {
    private final String name;
    private final Kind kind;
    private final Attributes into;
    private final LineAttributes line;
    private final TransformerAttributes transformer;
    private final RegulatorAttributes regulator;
    private final LoadAttributes load;

    /**
     * A reader for one element.
     *
     * @param name the element's name
     * @param kind its kind
     * @param wires the known conductors and spacings
     */
    AttributeReader(String name, Kind kind, Wires wires) {
        this.name = name;
        this.kind = kind;
        this.into = new Attributes(name);
        this.line = new LineAttributes(into, wires);
        this.transformer = new TransformerAttributes(into);
        this.regulator = new RegulatorAttributes(into);
        this.load = new LoadAttributes(into);
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

    private boolean figure(Cursor cursor) {
        for (Map.Entry<String, Dimension> figure :
                AttributeTable.figures(kind.base()).entrySet()) {
            List<String> words = List.of(figure.getKey().split(" "));
            if (cursor.sees(words)) {
                into.once(figure.getKey(), cursor.here());
                cursor.moveTo(words.size());
                String rating = figure.getKey().equals(AttributeTable.CONTINUOUS) ? " rating" : "";
                String what = "the " + figure.getKey() + rating + " of " + name;
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
            into.once("customers", cursor.here());
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
            into.once(AttributeTable.REACTIVE, cursor.here());
            into.figures.put(
                    AttributeTable.REACTIVE,
                    Figures.read(cursor, Dimension.REACTIVE_POWER, "the reactive power of " + name));
        } else if (kind.base() == Base.LOAD || kind.base() == Base.GENERATOR) {
            into.once(AttributeTable.ACTIVE, cursor.here());
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
        if (kind.base() != Base.SWITCH && kind.base() != Base.REGULATOR) {
            return false;
        }
        // The longest name first: “control power off” is no value of the mode control.
        for (Mode mode : kind.modes().stream()
                .sorted(Comparator.comparing((Mode m) -> -m.name().length()))
                .toList()) {
            List<String> words = List.of(mode.name().split("-"));
            boolean spaced = cursor.sees(words);
            if (spaced || cursor.sees(0, mode.name())) {
                into.once(mode.name(), cursor.here());
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
            into.once("phases", here);
            into.phases = PhaseReader.letters(cursor);
            return true;
        }
        return false;
    }

    private boolean ofFamily(Cursor cursor) {
        return switch (kind.base()) {
            case SOURCE -> into.name(cursor, "supply");
            case LINE -> line.read(cursor);
            case TRANSFORMER -> transformer.read(cursor);
            case REGULATOR -> regulator.read(cursor);
            case SWITCH -> device(cursor);
            case LOAD -> load.read(cursor) || into.joined(cursor);
            case CAPACITOR -> into.joined(cursor);
            default -> false;
        };
    }

    /** Looks at all attributes together, once each was read. */
    void finish(Lexeme element, Report report) {
        switch (kind.base()) {
            case LINE -> line.finish(element, kind, report);
            case TRANSFORMER -> report.attempt(() -> transformer.finish(element, report));
            case REGULATOR -> regulator.finish(report);
            case LOAD -> load.finish(report);
            default -> {}
        }
    }

    /** {@return the spacing of a line's wires, if one is known} */
    Optional<String> spacing() {
        return line.spacing(kind);
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
            into.once("position", here);
            return true;
        }
        if (cursor.take("open")) {
            into.once("position", here);
            into.openEverywhere = !cursor.take("on");
            if (!into.openEverywhere) {
                into.openSpan = cursor.here();
                into.open = PhaseReader.letters(cursor);
            }
            return true;
        }
        return into.name(cursor, "at");
    }

    private boolean gang(boolean together, Trait trait, Span here) {
        into.once("build", here);
        if (!kind.has(trait)) {
            throw new Misread(Code.WRONG_BUILD.at(
                    here,
                    Suggestions.a(kind.name()) + " is never built " + (together ? "ganged" : "of single-phase units")));
        }
        into.ganged = together;
        return true;
    }
}
