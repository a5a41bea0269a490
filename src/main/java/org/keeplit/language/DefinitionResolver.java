package org.keeplit.language;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.keeplit.condition.Condition;
import org.keeplit.condition.Noun;
import org.keeplit.rule.Definition;
import org.keeplit.text.Span;

/**
 * Reads conditions that get a name: {@code define any person W is covered at any site S: …}. Their heads are read
 * first, so that one that uses itself or a later one is told from a misspelt one.
 */
final class DefinitionResolver {
    private final Scope scope;
    private final Report report;
    private final List<Definition> definitions;
    private final Map<Node, Integer> numbers = new HashMap<>();
    private final Map<Node, Cursor> bodies = new HashMap<>();
    private final Map<Node, Scope> scopes = new HashMap<>();

    DefinitionResolver(Scope scope, Report report, List<Definition> definitions) {
        this.scope = scope;
        this.report = report;
        this.definitions = definitions;
    }

    /** Reads the words of a definition. */
    void head(Node section) {
        Cursor cursor = Cursor.over(section.line());
        cursor.next("define");
        Scope inner = scope.inner();
        List<Condition.Binder> parameters = new ArrayList<>();
        List<String> words = new ArrayList<>();
        int start = cursor.index();
        do {
            cursor.expect("“any”, a noun and a variable", "any");
            parameters.add(parameter(cursor, inner));
            words.add(words(cursor));
        } while (!cursor.take(":"));
        Span span = cursor.from(start);
        check(words.get(0), parameters.get(0), span);
        Definition head =
                new Definition(ImmutableList.copyOf(parameters), ImmutableList.copyOf(words), null, span);
        definitions.stream().filter(d -> d.words().equals(head.words())).findFirst().ifPresent(first -> {
            throw new Misread(Code.NAMED_ALREADY
                    .at(span, "“" + head.phrase() + "” is defined already")
                    .related(first.span(), "the first one"));
        });
        numbers.put(section, definitions.size());
        bodies.put(section, cursor);
        scopes.put(section, inner);
        definitions.add(head);
    }

    private static Condition.Binder parameter(Cursor cursor, Scope inner) {
        int start = cursor.index();
        Noun noun = inner.vocabulary().noun(cursor);
        Lexeme variable = cursor.next("a variable for the " + noun.words());
        inner.declare(variable, noun);
        return new Condition.Binder(
                variable.getText(), noun, Optional.empty(), Optional.empty(), cursor.from(start));
    }

    private static String words(Cursor cursor) {
        List<Lexeme> words = new ArrayList<>();
        while (!cursor.sees(0, "any") && !cursor.sees(0, ":")) {
            Lexeme word = cursor.next("a colon and the condition");
            if (word.isText() || word.isVariable() || word.isNumber() || word.is(",")) {
                throw new Misread(Code.UNEXPECTED
                        .at(word.span(), "“" + Cursor.clip(word.getText()) + "” cannot be a word of a definition")
                        .help("it reads: define any person W is covered at any site S: CONDITION"));
            }
            words.add(word);
        }
        return Vocabulary.join(words);
    }

    private void check(String first, Condition.Binder subject, Span span) {
        List<String> words = List.of(first.split(" "));
        boolean verb = words.get(0).equals("is") || words.get(0).equals("has");
        if (!verb || words.size() < 2 || words.get(1).equals("not") || words.get(1).equals("no")) {
            throw new Misread(Code.UNEXPECTED
                    .at(span, "what is said of " + subject.variable() + " begins with “is” or “has” and a word")
                    .help("such as: define any " + subject.noun().words() + " " + subject.variable()
                            + " is ready: CONDITION"));
        }
        boolean known = scope.vocabulary().phrasebook().match(Cursor.over(LineReader.inside(first, span))).stream()
                .anyMatch(s -> s.words().equals(words));
        if (known) {
            throw new Misread(Code.NAMED_ALREADY
                    .at(span, "“" + first + "” has a meaning already")
                    .help("choose other words"));
        }
    }

    /** Reads what a definition means; only those above it are known to it. */
    void body(Node section) {
        Integer number = numbers.get(section);
        if (number == null) {
            return;
        }
        Definition head = definitions.get(number);
        // Where it cannot be read, whatever uses it is not told off for that as well.
        Condition nothing = new Condition.All(ImmutableList.of(), head.span());
        Condition body = report.attempt(() ->
                        new ConditionReader(scopes.get(section), report, section).read(bodies.get(section)))
                .orElse(nothing);
        definitions.set(number, new Definition(head.parameters(), head.words(), body, head.span()));
    }
}
