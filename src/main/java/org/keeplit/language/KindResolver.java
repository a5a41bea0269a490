package org.keeplit.language;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import com.google.common.collect.ImmutableSet;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Stream;
import org.keeplit.language.grammar.Shapes;
import org.keeplit.network.Base;
import org.keeplit.network.Kind;
import org.keeplit.network.Mode;
import org.keeplit.network.Trait;
import org.keeplit.network.Verb;
import org.keeplit.unit.Dimension;
import org.keeplit.unit.Quantity;
import org.keeplit.unit.Unit;

/** Builds a kind of equipment from its section. */
final class KindResolver {
    private static final String HEAD = "kind NAME is a switching device";
    private static final ImmutableList<String> LINES =
            ImmutableList.of("breaks", "makes", "leads break", "leads make", "mode", "verb", "rating", "impedance");

    private final Node section;
    private final Report report;
    private final Set<Trait> traits = new LinkedHashSet<>();
    private final List<Mode> modes = new ArrayList<>();
    private final KindDuties duties;
    private final Map<String, Quantity> ratings = new LinkedHashMap<>();
    private final List<Verb> verbs = new ArrayList<>();

    KindResolver(Node section, Report report) {
        this.section = section;
        this.report = report;
        this.duties = new KindDuties(report);
    }

    Kind resolve() {
        Line line = section.line();
        Shapes.KindHeadContext head = Shape.of(line, Shapes::kindHead, HEAD);
        Lexeme article = (Lexeme) head.WORD().getSymbol();
        if (!article.is("a") && !article.is("an")) {
            throw new Misread(Code.UNEXPECTED
                    .at(article.span(), "“a” should stand before the family")
                    .help("such a line reads: " + HEAD));
        }
        List<Lexeme> words = Shape.lexemes(line.lexemes(), head.phrase());
        Base base = oneOf(words, Base.values(), Base::phrase, "family of equipment");
        // Modes first: verbs speak of them, wherever they stand.
        read(true, base);
        read(false, base);
        Lexeme name = Shape.lexeme(head.name());
        boolean each = traits.contains(Trait.SINGLE_PHASE_UNITS);
        return new Kind(
                name.value(),
                base,
                ImmutableSet.copyOf(traits),
                modes.stream().map(m -> new Mode(m.name(), m.values(), each)).collect(ImmutableList.toImmutableList()),
                duties.ofPoles(),
                duties.ofLeads(),
                ImmutableMap.copyOf(ratings),
                ImmutableList.copyOf(verbs),
                name.span());
    }

    private void read(boolean modesOnly, Base base) {
        for (Node node : section.children()) {
            if (node.readable() && node.line().starts("mode") == modesOnly) {
                report.attempt(() -> line(node.line(), base));
            }
        }
    }

    private void line(Line line, Base base) {
        switch (line.head().getText()) {
            case "mode" -> mode(line);
            case "verb" -> verbs.add(new VerbResolver(line, modes, base).resolve());
            case "breaks", "makes" -> duties.read(line);
            case "rating", "impedance" -> rating(line, base);
            default -> {
                if (line.starts("leads") && line.lexemes().size() > 1) {
                    duties.readOfLeads(line);
                } else {
                    trait(line);
                }
            }
        }
    }

    private void trait(Line line) {
        Cursor.over(line);
        String words = Vocabulary.join(line.lexemes());
        for (Trait trait : Trait.values()) {
            if (trait.phrase().equals(words)) {
                traits.add(trait);
                return;
            }
        }
        List<String> known = Stream.concat(Arrays.stream(Trait.values()).map(Trait::phrase), LINES.stream())
                .toList();
        throw new Misread(Code.UNKNOWN_LINE
                .at(line.span(), "a kind has no line “" + Cursor.clip(words) + "”")
                .help(Suggestions.nearest(words, known)
                        .or(() -> Suggestions.nearest(line.head().getText(), known))
                        .map(near -> "did you mean " + near + "?")
                        .orElse("its lines are " + String.join(", ", known))));
    }

    private void mode(Line line) {
        Shapes.ModeLineContext parts = Shape.of(line, Shapes::modeLine, "mode NAME value, value");
        Lexeme name = Shape.lexeme(parts.name());
        ImmutableSet<String> values =
                parts.value().stream().map(v -> Shape.lexeme(v).value()).collect(ImmutableSet.toImmutableSet());
        if (values.size() < 2) {
            throw new Misread(Code.UNFINISHED.at(line.last().span(), "a mode needs at least two different values"));
        }
        if (modes.stream().anyMatch(m -> m.name().equals(name.value()))) {
            throw new Misread(Code.DUPLICATE.at(name.span(), "this kind has a mode " + name.value() + " already"));
        }
        modes.add(new Mode(name.value(), values.asList(), false));
    }

    /** {@return the one of some things whose words stand there} @param what what it is, for messages */
    static <E> E oneOf(List<Lexeme> words, E[] all, Function<E, String> phrase, String what) {
        String written = Vocabulary.join(words);
        for (E one : all) {
            if (phrase.apply(one).equals(written)) {
                return one;
            }
        }
        List<String> known = Arrays.stream(all).map(phrase).toList();
        throw new Misread(Code.UNKNOWN_WORD
                .at(Line.spanOf(words), "there is no " + what + " “" + Cursor.clip(written) + "”")
                .help(Suggestions.didYouMean(written, known).orElse("there is " + Suggestions.list(known, "and"))));
    }

    private void rating(Line line, Base base) {
        Cursor cursor = Cursor.over(line);
        int start = line.starts("rating") ? 1 : 0;
        while (!cursor.done() && !cursor.need("").isNumber()) {
            cursor.next("");
        }
        String name = Vocabulary.join(line.lexemes().subList(start, cursor.index()));
        Dimension dimension = line.starts("impedance")
                ? Dimension.IMPEDANCE
                : AttributeTable.rating(base, name)
                        .or(() -> Figures.peekUnit(cursor, 1).map(Unit::dimension))
                        .orElse(Dimension.CURRENT);
        if (name.isEmpty()) {
            throw new Misread(Code.UNEXPECTED
                    .at(cursor.here(), "the rating has no name")
                    .help("such a line reads: rating continuous 300 A"));
        }
        Quantity quantity =
                Figures.positive(cursor, dimension, line.starts("rating") ? "the rating " + name : "the impedance");
        if (line.starts("rating") && dimension == Dimension.CURRENT && cursor.take("for")) {
            Quantity time = Figures.positive(cursor, Dimension.TIME, "the time of the rating " + name);
            ratings.putIfAbsent(name + " duration", time);
        }
        cursor.finish("the rating");
        if (ratings.putIfAbsent(name, quantity) != null) {
            throw new Misread(Code.DUPLICATE.at(line.span(), "the rating " + name + " is given twice"));
        }
    }
}
