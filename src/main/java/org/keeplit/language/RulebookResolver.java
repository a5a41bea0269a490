package org.keeplit.language;

import com.google.common.collect.ImmutableList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.keeplit.language.grammar.Shapes;
import org.keeplit.rule.Rule;
import org.keeplit.rule.Rulebook;

/** Builds a rulebook from its file. */
final class RulebookResolver {
    private final Item item;
    private final Vocabulary vocabulary;
    private final Report report;
    private final Map<String, Rule> rules = new LinkedHashMap<>();
    private final Map<String, Lexeme> places = new LinkedHashMap<>();
    private String revision = "";
    private String title = "";

    RulebookResolver(Item item, Vocabulary vocabulary) {
        this.item = item;
        this.vocabulary = vocabulary;
        this.report = item.report();
    }

    Resolved<Rulebook> resolve() {
        int before = report.errors();
        report.attempt(() -> {
            var head = Shape.of(item.head().line(), Shapes::rulebookHead, "rulebook NAME revision 1");
            revision = Shape.lexeme(head.revision()).value();
        });
        for (Node section : item.sections()) {
            if (section.readable()) {
                report.attempt(() -> section(section));
            }
        }
        Rulebook rulebook = new Rulebook(
                item.name().value(),
                revision,
                title,
                ImmutableList.copyOf(rules.values()),
                item.name().span());
        return Resolved.of(rulebook, report.errors() == before);
    }

    private void section(Node section) {
        Line line = section.line();
        if (line.starts("title")) {
            title = titleOf(line);
            return;
        }
        if (!line.starts("rule")) {
            throw new Misread(Code.UNKNOWN_LINE
                    .at(line.head().span(), "“" + Cursor.clip(line.head().getText()) + "” starts no line of a rulebook")
                    .help(Suggestions.didYouMean(line.head().getText(), List.of("rule", "title"))
                            .orElse("lines here start with title or rule")));
        }
        // A rule with a wrong name is read for its other mistakes.
        Lexeme name = report.attempt(() -> Shape.lexeme(
                        Shape.of(line, Shapes::ruleHead, "rule NAME").name()))
                .orElse(line.last());
        Lexeme first = places.putIfAbsent(name.value(), name);
        if (first != null) {
            report.add(Code.DUPLICATE
                    .at(name.span(), "there is already a rule " + name.value())
                    .related(first.span(), "the first one"));
        }
        rules.putIfAbsent(name.value(), new RuleResolver(name, section, vocabulary, report).resolve());
    }

    /** {@return the text of a title line} */
    static String titleOf(Line line) {
        var parts = Shape.of(line, Shapes::titleLine, "title \"…\"");
        return ((Lexeme) parts.STRING().getSymbol()).value();
    }
}
