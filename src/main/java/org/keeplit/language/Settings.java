package org.keeplit.language;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.keeplit.language.grammar.Shapes;
import org.keeplit.rule.Rulebook;
import org.keeplit.unit.Dimension;
import org.keeplit.unit.Quantity;
import org.keeplit.unit.Unit;

/** Reads rulebooks that are kept or extended, with the figures that are set for them. */
final class Settings {
    private Settings() {}

    /**
     * {@return the rulebook, with its figures set; as it is without if these cannot be read}
     *
     * @param kept its name, and perhaps figures
     * @param passed figures set from further out, which count before its own
     */
    static Resolved<Rulebook> rulebook(
            Session session, Line line, Shapes.KeptContext kept, Map<String, Quantity> passed, Report report) {
        Lexeme name = Shape.lexeme(kept.name());
        Resolved<Rulebook> usual = session.rulebook(name, report);
        if (usual.ifSound().isEmpty()) {
            return usual;
        }
        Map<String, Quantity> parameters = usual.ifSound().get().parameters();
        Map<String, Quantity> set = new LinkedHashMap<>();
        boolean good = true;
        for (Shapes.SettingContext setting : kept.setting()) {
            good &= report.attempt(() -> set(line, setting, name, parameters, set)).orElse(false);
        }
        passed.forEach((parameter, value) -> {
            if (parameters.containsKey(parameter)) {
                set.put(parameter, value);
            }
        });
        return !good ? new Resolved<>(usual.thing(), false) : set.isEmpty() ? usual : session.rulebook(name, set, report);
    }

    private static boolean set(
            Line line,
            Shapes.SettingContext setting,
            Lexeme book,
            Map<String, Quantity> parameters,
            Map<String, Quantity> set) {
        Lexeme name = Shape.lexeme(setting.name());
        Quantity usual = parameters.get(name.value());
        if (usual == null) {
            throw new Misread(Code.UNKNOWN_PARAMETER
                    .at(name.span(), book.value() + " has no parameter " + Cursor.clip(name.value()))
                    .help(Suggestions.didYouMean(name.value(), parameters.keySet())
                            .orElse(
                                    parameters.isEmpty()
                                            ? "it has none at all"
                                            : "it has " + Suggestions.list(parameters.keySet(), "and"))));
        }
        Quantity value = quantity(line, setting, Optional.of(usual.dimension()));
        if (set.put(name.value(), value) != null) {
            throw new Misread(Code.DUPLICATE.at(name.span(), name.value() + " is set already"));
        }
        return true;
    }

    /** {@return the figure of a setting} @param expected what it must measure, if that is known */
    static Quantity quantity(Line line, Shapes.SettingContext setting, Optional<Dimension> expected) {
        List<Lexeme> lexemes = Shape.lexemes(line.lexemes(), setting);
        Cursor cursor = Cursor.over(lexemes.subList(1, lexemes.size()));
        Dimension dimension = expected.orElse(
                Figures.peekUnit(cursor, 1).map(Unit::dimension).orElse(Dimension.NUMBER));
        Quantity quantity = Figures.positive(cursor, dimension, "the " + lexemes.get(0).value());
        if (!cursor.done() && dimension == Dimension.NUMBER) {
            Lexeme unit = cursor.need("");
            throw new Misread(Code.UNKNOWN_UNIT
                    .at(unit.span(), "“" + Cursor.clip(unit.getText()) + "” is no unit here")
                    .help(Suggestions.didYouMean(unit.getText(), Unit.symbols()).orElse("a plain number has none")));
        }
        cursor.finish("the figure");
        return quantity;
    }
}
