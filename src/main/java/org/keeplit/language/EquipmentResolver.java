package org.keeplit.language;

import com.google.common.collect.ImmutableMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.antlr.v4.runtime.ParserRuleContext;
import org.keeplit.language.grammar.Shapes;
import org.keeplit.network.Equipment;
import org.keeplit.network.Kind;
import org.keeplit.unit.Dimension;
import org.keeplit.unit.Quantity;
import org.keeplit.unit.Unit;

/** Builds an equipment list from its file. */
final class EquipmentResolver {
    private static final String HEAD = "equipment NAME \"Title\"";
    private static final String CONDUCTOR = "conductor NAME resistance 0.3 ohm per km, radius 7 mm, ampacity 400 A";

    /** What a conductor's figures measure; per-length ones are kept for one metre. */
    private static final ImmutableMap<String, Dimension> FIGURES = ImmutableMap.of(
            "resistance", Dimension.IMPEDANCE,
            "reactance", Dimension.IMPEDANCE,
            "radius", Dimension.LENGTH,
            "diameter", Dimension.LENGTH,
            "ampacity", Dimension.CURRENT);

    private final Item item;
    private final Report report;
    private final Map<String, Kind> kinds = new LinkedHashMap<>();
    private final Map<String, ImmutableMap<String, Quantity>> conductors = new LinkedHashMap<>();
    private final Map<String, Lexeme> places = new LinkedHashMap<>();

    EquipmentResolver(Item item) {
        this.item = item;
        this.report = item.report();
    }

    /** {@return the equipment, with what could be read of it} */
    Resolved<Equipment> resolve() {
        int before = report.errors();
        String title = report.attempt(() -> {
                    var head = Shape.of(item.head().line(), Shapes::equipmentHead, HEAD);
                    return head.STRING() == null ? "" : ((Lexeme) head.STRING().getSymbol()).value();
                })
                .orElse("");
        for (Node section : item.sections()) {
            if (section.readable()) {
                report.attempt(() -> section(section));
            }
        }
        Equipment equipment = new Equipment(
                item.name().value(),
                title,
                ImmutableMap.copyOf(kinds),
                ImmutableMap.copyOf(conductors),
                item.name().span());
        return Resolved.of(equipment, report.errors() == before);
    }

    private void section(Node section) {
        Line line = section.line();
        if (line.starts("kind")) {
            Kind kind = new KindResolver(section, report).resolve();
            if (isNew(line.lexemes().get(1), "kind")) {
                kinds.put(kind.name(), kind);
            }
        } else if (line.starts("conductor")) {
            Shapes.ConductorLineContext parts = Shape.of(line, Shapes::conductorLine, CONDUCTOR);
            Lexeme name = Shape.lexeme(parts.name());
            if (isNew(name, "conductor")) {
                conductors.put(name.value(), figures(line, parts));
            }
        } else {
            throw new Misread(Code.UNKNOWN_LINE
                    .at(line.head().span(), "“" + line.head().getText() + "” starts no line of an equipment file")
                    .help(Suggestions.didYouMean(line.head().getText(), List.of("kind", "conductor"))
                            .orElse("lines here start with kind or conductor")));
        }
    }

    private boolean isNew(Lexeme name, String what) {
        Letters.small(name, report);
        Lexeme first = places.putIfAbsent(what + " " + name.value(), name);
        if (first != null) {
            report.add(Code.DUPLICATE
                    .at(name.span(), "there is already a " + what + " " + name.value())
                    .related(first.span(), "the first one"));
        }
        return first == null;
    }

    private ImmutableMap<String, Quantity> figures(Line line, Shapes.ConductorLineContext parts) {
        Map<String, Quantity> figures = new LinkedHashMap<>();
        for (ParserRuleContext attribute : parts.attribute()) {
            List<Lexeme> words = Shape.lexemes(line.lexemes(), attribute);
            report.attempt(() -> figure(words, figures, line));
        }
        return ImmutableMap.copyOf(figures);
    }

    private static void figure(List<Lexeme> words, Map<String, Quantity> figures, Line line) {
        if (words.isEmpty()) {
            throw new Misread(Code.UNEXPECTED.at(line.span(), "there is nothing between two commas"));
        }
        Cursor cursor = Cursor.over(words);
        Lexeme name = cursor.next("a figure");
        Dimension dimension = FIGURES.get(name.getText());
        if (dimension == null) {
            throw new Misread(Code.UNKNOWN_ATTRIBUTE
                    .at(name.span(), "a conductor has no figure “" + Cursor.clip(name.getText()) + "”")
                    .help(Suggestions.didYouMean(name.getText(), FIGURES.keySet())
                            .orElse("it has " + Suggestions.list(FIGURES.keySet(), "and"))));
        }
        Quantity quantity = Figures.positive(cursor, dimension, "the " + name.getText());
        if (dimension == Dimension.IMPEDANCE) {
            cursor.expect("“per” and a unit of length", "per");
            Lexeme unit = cursor.next("a unit of length");
            double length = Unit.of(unit.getText())
                    .filter(u -> u.dimension() == Dimension.LENGTH)
                    .orElseThrow(() -> new Misread(Code.UNKNOWN_UNIT
                            .at(unit.span(), "“" + Cursor.clip(unit.getText()) + "” is no unit of length")
                            .help("write per km, per m, per mi or per ft")))
                    .factor();
            quantity = new Quantity(quantity.si() / length, Dimension.IMPEDANCE);
        }
        cursor.finish("the " + name.getText());
        if (figures.putIfAbsent(name.getText(), quantity) != null) {
            throw new Misread(Code.DUPLICATE.at(name.span(), "the " + name.getText() + " is given twice"));
        }
    }
}
