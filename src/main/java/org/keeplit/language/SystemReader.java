package org.keeplit.language;

import com.google.common.collect.ImmutableMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.antlr.v4.runtime.ParserRuleContext;
import org.keeplit.language.grammar.Shapes;
import org.keeplit.unit.Dimension;
import org.keeplit.unit.Quantity;

/** Reads the lines on the whole network: {@code system}, {@code limits} and {@code load case}. */
final class SystemReader {
    /** The case of the loads as they are written. */
    private static final String PEAK = "peak";

    private static final ImmutableMap<String, Dimension> SYSTEM =
            ImmutableMap.of(
                    "voltage", Dimension.VOLTAGE,
                    "frequency", Dimension.FREQUENCY,
                    "cold load factor", Dimension.NUMBER,
                    "inrush factor", Dimension.NUMBER,
                    "fault resistance", Dimension.IMPEDANCE,
                    "altitude", Dimension.LENGTH);

    private final Report report;
    private final Map<String, Quantity> figures = new LinkedHashMap<>();

    SystemReader(Report report) {
        this.report = report;
    }

    /** {@return what was read so far, by name} */
    Map<String, Quantity> figures() {
        return figures;
    }

    /** {@return whether a line is one of these} */
    static boolean reads(Line line) {
        return line.starts("system") || line.starts("limits") || isLoadCase(line);
    }

    /** A load may be named “case”: its line goes on with a place. */
    private static boolean isLoadCase(Line line) {
        return line.starts("load", "case")
                && !(line.lexemes().size() > 2 && line.lexemes().get(2).is("at"));
    }

    /** Reads one of these lines, each part by itself. */
    void read(Line line) {
        if (isLoadCase(line)) {
            loadCase(line);
            return;
        }
        String form = line.starts("system")
                ? "system voltage 12.47 kV, frequency 60 Hz"
                : "limits voltage 95 % to 105 %";
        List<? extends ParserRuleContext> parts = line.starts("system")
                ? Shape.of(line, Shapes::systemLine, form).attribute()
                : Shape.of(line, Shapes::limitsLine, form).attribute();
        for (ParserRuleContext part : parts) {
            List<Lexeme> words = Shape.lexemes(line.lexemes(), part);
            report.attempt(() -> part(words, line));
        }
    }

    private void part(List<Lexeme> words, Line line) {
        if (words.isEmpty()) {
            throw new Misread(Code.UNEXPECTED.at(line.span(), "there is nothing between two commas"));
        }
        Cursor cursor = Cursor.over(words);
        if (line.starts("system")) {
            system(cursor);
        } else {
            limit(cursor);
        }
    }

    private void system(Cursor cursor) {
        Lexeme first = cursor.need("a figure");
        String name = SYSTEM.keySet().stream()
                .filter(known -> cursor.take(known.split(" ")))
                .findFirst()
                .orElseThrow(() -> unknown(cursor, first));
        String what = "the system's " + name;
        Quantity quantity = Figures.positive(cursor, SYSTEM.get(name), what);
        cursor.finish("the " + name);
        put(first, name, quantity, "the " + name);
    }

    private static Misread unknown(Cursor cursor, Lexeme first) {
        StringBuilder written = new StringBuilder(cursor.next("").getText());
        while (!cursor.done() && !cursor.need("").isNumber()) {
            written.append(' ').append(cursor.next("").getText());
        }
        return new Misread(Code.UNKNOWN_ATTRIBUTE
                .at(first.span(), "a system has no figure “" + Cursor.clip(written.toString()) + "”")
                .help(Suggestions.didYouMean(written.toString(), SYSTEM.keySet())
                        .orElse("it has " + Suggestions.list(SYSTEM.keySet(), "and"))));
    }

    /** {@code voltage 95 % to 105 %}, of the nominal voltage. */
    private void limit(Cursor cursor) {
        Lexeme name = cursor.next("a figure");
        if (!name.is("voltage")) {
            throw new Misread(Code.UNKNOWN_ATTRIBUTE
                    .at(name.span(), "there is no limit of “" + Cursor.clip(name.getText()) + "”")
                    .help("write limits voltage 95 % to 105 %"));
        }
        int start = cursor.index();
        Quantity low = Figures.positive(cursor, Dimension.RATIO, "the lower limit");
        cursor.expect("“to” and the upper limit", "to");
        Quantity high = Figures.positive(cursor, Dimension.RATIO, "the upper limit");
        if (low.si() >= high.si()) {
            throw new Misread(Code.BAD_NUMBER
                    .at(cursor.from(start), "no voltage lies from " + low + " to " + high)
                    .help("the lower limit comes first"));
        }
        cursor.finish("the limits");
        put(name, "voltage low", low, "the limits of the voltage");
        figures.put("voltage high", high);
    }

    /** {@code load case light 40 %}. */
    private void loadCase(Line line) {
        Lexeme name = Shape.lexeme(Shape.of(line, Shapes::loadCaseLine, "load case light 40 %").name());
        Letters.small(name, report);
        if (name.value().equals(PEAK)) {
            throw new Misread(Code.DUPLICATE
                    .at(name.span(), "the loads as they are written are the case peak already")
                    .help("choose another name"));
        }
        Cursor cursor = Cursor.over(line);
        cursor.moveTo(3);
        String what = "the factor of the load case " + name.value();
        Quantity factor = Figures.positive(cursor, Dimension.RATIO, what);
        cursor.finish("the load case");
        put(name, "load case " + name.value(), factor, "the load case " + name.value());
    }

    private void put(Lexeme at, String name, Quantity quantity, String what) {
        if (figures.putIfAbsent(name, quantity) != null) {
            throw new Misread(Code.DUPLICATE.at(at.span(), what + (what.contains("limits") ? " are" : " is") + " given twice"));
        }
    }
}
