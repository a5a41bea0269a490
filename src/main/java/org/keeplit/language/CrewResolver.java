package org.keeplit.language;

import com.google.common.collect.ImmutableSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.antlr.v4.runtime.ParserRuleContext;
import org.keeplit.language.grammar.Shapes;
import org.keeplit.network.Side;
import org.keeplit.procedure.Person;

/** Reads the people of a procedure. */
final class CrewResolver {
    private static final String FORM = "foreman \"Person in charge\", in charge";
    private static final List<String> KNOWN =
            List.of(
                    "in charge",
                    "on the source side",
                    "on the load side",
                    "at control",
                    "observer",
                    "ground hand",
                    "qualified",
                    "qualified for \"…\"");

    private final Report report;
    private final Header header;
    private final Scope scope;
    private final Map<String, Lexeme> here = new LinkedHashMap<>();

    CrewResolver(Report report, Header header, Scope scope) {
        this.report = report;
        this.header = header;
        this.scope = scope;
    }

    void read(Node section) {
        Shape.of(section.line(), Shapes::crewLine, "crew");
        for (Node node : section.children()) {
            if (node.readable()) {
                report.attempt(() -> person(node.line()));
            }
        }
        List<Person> inCharge =
                header.crew.values().stream().filter(Person::inCharge).toList();
        if (inCharge.size() > 1) {
            throw new Misread(Code.DUPLICATE
                    .at(inCharge.get(1).span(), "two people are in charge")
                    .related(inCharge.get(0).span(), "the other one"));
        }
    }

    private void person(Line line) {
        // The name is known even if something after it is wrong, so that no step stumbles over it.
        scope.addPerson(line.head().value());
        var parts = Shape.of(line, Shapes::personLine, FORM);
        Lexeme name = Shape.lexeme(parts.name());
        Letters.small(name, report);
        Lexeme first = here.putIfAbsent(name.value(), name);
        if (first != null) {
            throw new Misread(Code.DUPLICATE
                    .at(name.span(), "there is already somebody called " + name.value())
                    .related(first.span(), "the first one"));
        }
        boolean desk = false;
        boolean charge = false;
        boolean observer = false;
        boolean groundHand = false;
        boolean qualified = false;
        Set<String> qualifications = new LinkedHashSet<>();
        Optional<Side> side = Optional.empty();
        for (ParserRuleContext part : parts.attribute()) {
            List<Lexeme> words = Shape.lexemes(line.lexemes(), part);
            if (words.size() == 3 && line(words).equals("qualified for") && words.get(2).isText()) {
                qualifications.add(words.get(2).value());
                qualified = true;
                continue;
            }
            switch (Vocabulary.join(words)) {
                case "in charge" -> charge = true;
                case "at control" -> desk = true;
                case "observer" -> observer = true;
                case "ground hand" -> groundHand = true;
                case "qualified" -> qualified = true;
                case "on source side" -> side = Optional.of(Side.SOURCE);
                case "on load side" -> side = Optional.of(Side.LOAD);
                default -> report.add(Code.UNKNOWN_ATTRIBUTE
                        .at(
                                words.isEmpty() ? line.last().span() : Line.spanOf(words),
                                "nothing is known of somebody “" + Cursor.clip(Vocabulary.join(words)) + "”")
                        .help(Suggestions.didYouMean(Vocabulary.join(words), KNOWN)
                                .orElse("what is known of people is " + Suggestions.list(KNOWN, "or"))));
            }
        }
        String title = ((Lexeme) parts.STRING().getSymbol()).value();
        header.crew.put(
                name.value(),
                new Person(
                        name.value(),
                        title,
                        desk,
                        charge,
                        side,
                        observer,
                        groundHand,
                        qualified,
                        ImmutableSet.copyOf(qualifications),
                        name.span()));
    }

    private static String line(List<Lexeme> words) {
        return Vocabulary.join(words.subList(0, 2));
    }
}
