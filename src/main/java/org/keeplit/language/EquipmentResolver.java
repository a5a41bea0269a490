package org.keeplit.language;

import com.google.common.collect.ImmutableMap;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.antlr.v4.runtime.ParserRuleContext;
import org.keeplit.language.grammar.Shapes;
import org.keeplit.network.Equipment;
import org.keeplit.network.Kind;
import org.keeplit.network.Spacing;
import org.keeplit.unit.Dimension;
import org.keeplit.unit.Quantity;

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
    private final Map<String, Spacing> spacings = new LinkedHashMap<>();
    private final List<Lexeme> neutrals = new ArrayList<>();
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
        neutrals.forEach(this::checkNeutral);
        Equipment equipment = new Equipment(
                item.name().value(),
                title,
                ImmutableMap.copyOf(kinds),
                ImmutableMap.copyOf(conductors),
                ImmutableMap.copyOf(spacings),
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
        } else if (line.starts("spacing")) {
            spacing(line);
        } else {
            throw unknown(line);
        }
        if (!line.starts("kind")) {
            // Nothing belongs below these lines; a misspelt head would be lost there.
            section.children().stream()
                    .filter(Node::readable)
                    .forEach(child -> report.add(unknown(child.line())));
        }
    }

    private static Misread unknown(Line line) {
        return new Misread(Code.UNKNOWN_LINE
                .at(line.head().span(), "“" + line.head().getText() + "” starts no line of an equipment file")
                .help(Suggestions.didYouMean(line.head().getText(), List.of("kind", "conductor", "spacing"))
                        .orElse("lines here start with kind, conductor or spacing")));
    }

    private void spacing(Line line) {
        if (isNew(SpacingResolver.name(line), "spacing")) {
            SpacingResolver resolver = new SpacingResolver(line, report);
            Spacing spacing = resolver.resolve();
            spacings.put(spacing.name(), spacing);
            resolver.neutral().ifPresent(neutrals::add);
        }
    }

    /** A neutral's conductor may be declared further down. */
    private void checkNeutral(Lexeme neutral) {
        if (!places.containsKey("conductor " + neutral.value())) {
            report.add(Code.UNKNOWN_CONDUCTOR
                    .at(neutral.span(), "this file declares no conductor " + Cursor.clip(neutral.value()))
                    .help(Suggestions.didYouMean(neutral.value(), conductors.keySet())
                            .orElse("the neutral's conductor is declared in the same file")));
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
        String what = "the " + name.getText();
        Quantity quantity = dimension == Dimension.IMPEDANCE
                ? PerLength.positive(cursor, dimension, what)
                : Figures.positive(cursor, dimension, what);
        cursor.finish("the " + name.getText());
        if (figures.putIfAbsent(name.getText(), quantity) != null) {
            throw new Misread(Code.DUPLICATE.at(name.span(), "the " + name.getText() + " is given twice"));
        }
    }
}
