package org.keeplit.language;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableSet;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.keeplit.condition.Condition;
import org.keeplit.condition.Noun;
import org.keeplit.condition.Term;
import org.keeplit.condition.Type;
import org.keeplit.network.Kind;
import org.keeplit.rule.Definition;

/** Reads conditions that a rulebook has given a name: {@code W is covered at S}, {@code W is not covered at S}. */
final class DefinedReader {
    private final Scope scope;
    private final TermReader terms;

    /**
     * A definition whose words stand here.
     *
     * @param definition the definition
     * @param length how many words of the line its first words take
     * @param negative whether they say that it is not so
     */
    record Match(Definition definition, int length, boolean negative) {}

    DefinedReader(Scope scope) {
        this.scope = scope;
        this.terms = new TermReader(scope);
    }

    /** {@return the definition whose first words stand here, the longest} */
    Optional<Match> match(Cursor cursor) {
        Match best = null;
        for (Definition definition : scope.definitions()) {
            List<String> said = List.of(definition.words().get(0).split(" "));
            List<String> rest = said.subList(1, said.size());
            for (List<String> verb : verbs(said.get(0))) {
                boolean fits = cursor.sees(verb);
                for (int i = 0; fits && i < rest.size(); i++) {
                    fits = cursor.sees(verb.size() + i, rest.get(i));
                }
                int length = verb.size() + rest.size();
                if (fits && (best == null || length > best.length)) {
                    best = new Match(definition, length, verb.contains("not") || verb.contains("no"));
                }
            }
        }
        return Optional.ofNullable(best);
    }

    private static List<List<String>> verbs(String verb) {
        return verb.equals("is")
                ? List.of(List.of("is"), List.of("are"), List.of("is", "not"), List.of("are", "not"))
                : List.of(
                        List.of("has"),
                        List.of("have"),
                        List.of("has", "not"),
                        List.of("have", "not"),
                        List.of("has", "no"),
                        List.of("have", "no"),
                        List.of("does", "not", "have"),
                        List.of("do", "not", "have"));
    }

    /** {@return the condition, its words passed} */
    Condition read(Cursor cursor, TermText subject, Match match) {
        int start = cursor.index();
        cursor.moveTo(start + match.length());
        Definition definition = match.definition();
        String asker = "“" + definition.phrase() + "”";
        ImmutableList.Builder<Condition.Argument> arguments = ImmutableList.builder();
        for (int i = 0; i < definition.parameters().size(); i++) {
            Condition.Binder parameter = definition.parameters().get(i);
            if (parameter.noun().type() == Type.PHASE && i > 0) {
                arguments.add(new Condition.Argument(
                        parameter.variable(), Optional.empty(), Optional.of(PhaseReader.term(cursor, scope))));
            } else {
                TermText text = i == 0 ? subject : terms.read(cursor, parameter.noun().type().phrase());
                arguments.add(new Condition.Argument(
                        parameter.variable(), Optional.of(thing(text, parameter.noun(), asker)), Optional.empty()));
            }
            String words = definition.words().get(i);
            if (i > 0 && !words.isEmpty()) {
                cursor.expect("“" + words + "”", Arrays.stream(words.split(" ")).toArray(String[]::new));
            }
        }
        if (definition.body() == null) {
            throw new Misread(Code.CIRCULAR
                    .at(cursor.from(start), asker + " is not defined yet where it is used")
                    .help("a definition stands above whatever uses it, and never uses itself")
                    .related(definition.span(), "it is defined here"));
        }
        if (Histories.isIn(definition.body()) && !scope.isRemembering()) {
            throw new Misread(Code.NO_MEMORY
                    .at(cursor.from(start), asker + " asks for what happened before, which only rules do")
                    .related(definition.span(), "it is defined here"));
        }
        var said = cursor.from(start);
        var span = subject.span().line() == said.line() ? subject.span().to(said) : said;
        Condition named = new Condition.Named(definition.words(), arguments.build(), definition.body(), span);
        return match.negative() ? new Condition.Not(named, span) : named;
    }

    private Term thing(TermText text, Noun noun, String asker) {
        Term term = terms.resolve(text, ImmutableSet.of(noun.type()), asker);
        List<Kind> kinds = terms.kinds(term);
        for (Kind kind : noun.kinds().isEmpty() ? List.<Kind>of() : kinds) {
            if (!noun.kinds().contains(kind.name())) {
                throw new Misread(Code.WRONG_SORT.at(
                        term.span(),
                        asker + " is said of " + Suggestions.a(noun.words()) + ", and " + text.words()
                                + " may be " + Suggestions.a(kind.name())));
            }
        }
        return term;
    }

    /** {@return the named condition nearest to the words here} */
    static Optional<String> nearest(Cursor cursor, Scope scope) {
        List<String> known = scope.definitions().stream()
                .map(d -> d.words().get(0))
                .toList();
        for (int length = Math.min(5, cursor.rest().size()); length > 1; length--) {
            Optional<String> near =
                    Suggestions.nearest(Vocabulary.join(cursor.rest().subList(0, length)), known);
            if (near.isPresent()) {
                return near;
            }
        }
        return Optional.empty();
    }
}
