package org.keeplit.language;

import com.google.common.collect.ImmutableMap;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.antlr.v4.runtime.ParserRuleContext;
import org.keeplit.language.grammar.Shapes;
import org.keeplit.network.Conductor;
import org.keeplit.network.Phases;
import org.keeplit.network.Spacing;
import org.keeplit.unit.Dimension;

/** Builds a spacing from its line: {@code spacing NAME  A at -1.1 m 8.8 m, N at 0 m 7.3 m, neutral CONDUCTOR}. */
final class SpacingResolver {
    private static final String FORM = "spacing NAME  A at -1.1 m 8.8 m, N at 0 m 7.3 m, neutral CONDUCTOR";

    private final Line line;
    private final Report report;
    private final Map<Conductor, Spacing.Position> positions = new EnumMap<>(Conductor.class);
    private Lexeme neutral;

    SpacingResolver(Line line, Report report) {
        this.line = line;
        this.report = report;
    }

    /** {@return its name} */
    static Lexeme name(Line line) {
        return Shape.lexeme(Shape.of(line, Shapes::spacingLine, FORM).name());
    }

    /** {@return the lexeme that names the neutral's conductor, if one is named} */
    Optional<Lexeme> neutral() {
        return Optional.ofNullable(neutral);
    }

    Spacing resolve() {
        Shapes.SpacingLineContext parts = Shape.of(line, Shapes::spacingLine, FORM);
        Lexeme name = Shape.lexeme(parts.name());
        int before = report.errors();
        for (ParserRuleContext part : parts.attribute()) {
            List<Lexeme> words = Shape.lexemes(line.lexemes(), part);
            report.attempt(() -> attribute(words));
        }
        if (report.errors() != before) {
            throw Misread.told();
        }
        checkNeutral(name);
        return new Spacing(
                name.value(),
                ImmutableMap.copyOf(positions),
                neutral().map(Lexeme::value),
                name.span());
    }

    private void attribute(List<Lexeme> words) {
        if (words.isEmpty()) {
            throw new Misread(Code.UNEXPECTED.at(line.span(), "there is nothing between two commas"));
        }
        Cursor cursor = Cursor.over(words);
        if (cursor.take("neutral")) {
            if (neutral != null) {
                throw new Misread(Code.DUPLICATE.at(words.get(0).span(), "the neutral's conductor is given twice"));
            }
            neutral = cursor.next("the neutral's conductor");
        } else {
            wire(cursor);
        }
        cursor.finish("the wire");
    }

    private void wire(Cursor cursor) {
        Lexeme letter = cursor.next("a conductor");
        Conductor wire = Phases.parse(letter.getText())
                .filter(p -> p.size() == 1)
                .orElseThrow(() -> new Misread(Code.UNKNOWN_PHASE
                        .at(letter.span(), "there is no wire “" + Cursor.clip(letter.getText()) + "”")
                        .help("wires are A, B, C and N; such a line reads: " + FORM)))
                .list()
                .get(0);
        cursor.expect("“at” and the wire's place", "at");
        double across = Figures.read(cursor, Dimension.LENGTH, "how far " + letter.getText() + " hangs to one side")
                .si();
        double height = Figures.positive(cursor, Dimension.LENGTH, "the height of " + letter.getText())
                .si();
        Spacing.Position position = new Spacing.Position(across, height);
        positions.forEach((other, there) -> {
            if (other != wire && there.equals(position)) {
                throw new Misread(Code.WRONG_PLACE.at(
                        cursor.from(0), "the wires " + other + " and " + wire + " hang in one place"));
            }
        });
        if (positions.putIfAbsent(wire, position) != null) {
            throw new Misread(Code.DUPLICATE.at(letter.span(), "the place of " + wire + " is given twice"));
        }
    }

    private void checkNeutral(Lexeme name) {
        boolean placed = positions.containsKey(Conductor.N);
        if (placed && neutral == null) {
            throw new Misread(Code.MISSING_ATTRIBUTE
                    .at(name.span(), "the spacing " + name.value() + " does not say which conductor its neutral is")
                    .help("add it, such as neutral acsr-4-0"));
        }
        if (!placed && neutral != null) {
            throw new Misread(Code.MISSING_ATTRIBUTE
                    .at(neutral.span(), "the spacing " + name.value() + " does not say where its neutral hangs")
                    .help("add it, such as N at 0 m 7.3 m"));
        }
        if (positions.keySet().stream().noneMatch(Conductor::isPhase)) {
            throw new Misread(Code.MISSING_ATTRIBUTE
                    .at(name.span(), "the spacing " + name.value() + " has no phase")
                    .help("such a line reads: " + FORM));
        }
    }
}
