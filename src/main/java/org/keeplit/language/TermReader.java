package org.keeplit.language;

import com.google.common.collect.ImmutableMap;
import com.google.common.collect.ImmutableSet;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.keeplit.condition.Condition;
import org.keeplit.condition.Noun;
import org.keeplit.condition.Term;
import org.keeplit.condition.Type;
import org.keeplit.network.Element;
import org.keeplit.network.Kind;
import org.keeplit.network.Side;
import org.keeplit.network.Trait;
import org.keeplit.text.Problem;

/** Reads terms, and resolves them once it is known what sort of thing is asked for. */
final class TermReader {
    private static final ImmutableMap<String, Side> SIDES = ImmutableMap.of(
            "source-side", Side.SOURCE, "load-side", Side.LOAD, "source", Side.SOURCE, "load", Side.LOAD);
    private static final ImmutableMap<String, TermText.PartKind> SIDED = ImmutableMap.of(
            "line", TermText.PartKind.LINE, "lead", TermText.PartKind.LEAD, "bushing", TermText.PartKind.BUSHING);
    private static final ImmutableSet<Type> WITH_SITE =
            ImmutableSet.of(Type.DEVICE, Type.REGULATOR, Type.JUMPER, Type.GROUND, Type.MOBILE);
    private static final ImmutableSet<Type> WITH_NODE =
            ImmutableSet.of(Type.LOAD, Type.CAPACITOR, Type.GENERATOR, Type.SOURCE);
    private static final ImmutableSet<Type> BRANCHES =
            ImmutableSet.of(Type.DEVICE, Type.REGULATOR, Type.LINE, Type.TRANSFORMER);

    private final Scope scope;

    TermReader(Scope scope) {
        this.scope = scope;
    }

    /** {@return the term here, as it stands} @param what what it is for, for messages */
    TermText read(Cursor cursor, String what) {
        int start = cursor.index();
        Lexeme here = cursor.need(what);
        if (here.is("any")) {
            return any(cursor);
        }
        TermText.PartKind part = partHere(cursor);
        if (part != null) {
            Side side = SIDES.get(here.getText());
            cursor.moveTo(
                    start + (side == null || part == TermText.PartKind.NODE || part == TermText.PartKind.SITE ? 2 : 3));
            TermText of = read(cursor, "a name");
            return new TermText.Part(part, side, of, cursor.from(start), cursor.words(start));
        }
        if (here.isPhases()) {
            throw new Misread(Code.UNEXPECTED
                    .at(here.span(), "“" + here.getText() + "” is a phase, and " + what + " should stand here")
                    .help("phases stand after on, phase or phases"));
        }
        if (!here.isName()) {
            Problem problem = Code.UNEXPECTED.at(
                    here.span(), "“" + Cursor.clip(here.getText()) + "” stands where " + what + " should");
            throw new Misread(
                    here.is("all") || here.is("each")
                            ? problem.help("write every, some or no, as in every load L")
                            : here.is("that") ? problem.help("leave out “that”") : problem);
        }
        cursor.next("");
        return new TermText.Ref(here);
    }

    private static TermText.PartKind partHere(Cursor cursor) {
        if (cursor.sees(List.of("node", "of"))) {
            return TermText.PartKind.NODE;
        }
        if (cursor.sees(List.of("site", "of"))) {
            return TermText.PartKind.SITE;
        }
        Lexeme side = cursor.peek(0);
        Lexeme part = cursor.peek(1);
        return side != null && part != null && SIDES.containsKey(side.getText()) && cursor.sees(2, "of")
                ? SIDED.get(part.getText())
                : null;
    }

    private TermText any(Cursor cursor) {
        List<Condition.Binder> binders = scope.any()
                .orElseThrow(() -> new Misread(cursor.problem(
                                Code.UNEXPECTED, "“any” binds a variable for a whole rule, which cannot be done here")
                        .help("write every, some or no")));
        int start = cursor.index();
        cursor.next("any");
        Noun noun = scope.vocabulary().noun(cursor);
        Lexeme variable = cursor.next("a variable, such as X,");
        scope.anyScope().declare(variable, noun);
        binders.add(
                new Condition.Binder(variable.getText(), noun, Optional.empty(), Optional.empty(), cursor.from(start)));
        return new TermText.Ref(variable);
    }

    /**
     * Resolves a term.
     *
     * @param text the term as it stands
     * @param expected the sorts that fit
     * @param asker what asks for it, for messages, such as {@code “is closed”}
     */
    Term resolve(TermText text, Set<Type> expected, String asker) {
        if (text instanceof TermText.Ref ref) {
            return ref(ref.name(), expected, asker);
        }
        TermText.Part part = (TermText.Part) text;
        Term term =
                switch (part.part()) {
                    case NODE -> new Term.NodeOf(resolve(part.of(), WITH_NODE, "“node of”"), part.span());
                    case SITE -> new Term.SiteOf(resolve(part.of(), WITH_SITE, "“site of”"), part.span());
                    case LINE -> new Term.LineOf(resolve(part.of(), BRANCHES, "“line of”"), part.side(), part.span());
                    case LEAD -> new Term.LeadOf(leaded(part, "lead"), part.side(), part.span());
                    case BUSHING -> new Term.BushingOf(leaded(part, "bushing"), part.side(), part.span());
                };
        return fit(term, expected, asker, text.words());
    }

    private Term leaded(TermText.Part part, String what) {
        Term device = resolve(part.of(), Set.of(Type.DEVICE), "“" + what + " of”");
        List<Kind> kinds = kinds(device);
        if (!kinds.isEmpty() && kinds.stream().noneMatch(k -> k.has(Trait.LEADS))) {
            throw new Misread(Code.WRONG_BUILD.at(
                    part.of().span(), Suggestions.a(kinds.get(0).name()) + " has no leads that come off"));
        }
        return device;
    }

    private Term ref(Lexeme name, Set<Type> expected, String asker) {
        if (name.isVariable()) {
            Optional<Type> type = scope.typeOf(name.getText());
            if (type.isEmpty() && scope.isForgiving()) {
                return new Term.Variable(name.getText(), first(expected), name.span());
            }
            Type known = type.orElseThrow(() -> new Misread(unknownVariable(name)));
            return fit(new Term.Variable(name.getText(), known, name.span()), expected, asker, name.getText());
        }
        List<Type> sorts = scope.sorts(name.value());
        if (sorts.isEmpty()) {
            if (scope.isIncomplete() && !expected.isEmpty()) {
                // The network that would tell its sort could not be read, which was told there.
                return new Term.Name(
                        name.value(), first(expected), name.span());
            }
            throw new Misread(unknownName(name, expected));
        }
        Type type = sorts.stream().filter(expected::contains).findFirst().orElse(sorts.get(0));
        return fit(new Term.Name(name.value(), type, name.span()), expected, asker, name.value());
    }

    /** {@return one of the sorts, always the same} */
    private static Type first(Set<Type> expected) {
        return expected.stream().sorted().findFirst().orElseThrow();
    }

    private static Term fit(Term term, Set<Type> expected, String asker, String words) {
        if (expected.contains(term.type())) {
            return term;
        }
        if (expected.contains(Type.SITE) && WITH_SITE.contains(term.type())) {
            return new Term.SiteOf(term, term.span());
        }
        if (expected.contains(Type.POINT) && WITH_NODE.contains(term.type())) {
            return new Term.NodeOf(term, term.span());
        }
        List<String> fitting = expected.stream().map(Type::phrase).toList();
        Problem problem = Code.WRONG_SORT.at(
                term.span(),
                asker + " goes with " + Suggestions.list(fitting, "or") + ", and " + Cursor.clip(words) + " is "
                        + term.type().phrase());
        boolean point = expected.contains(Type.POINT) && BRANCHES.contains(term.type());
        throw new Misread(point ? problem.help("say which side: the source-side line of " + words) : problem);
    }

    private Problem unknownVariable(Lexeme name) {
        List<String> known = scope.variables();
        Problem problem =
                Code.UNKNOWN_NAME.at(name.span(), "nothing is called " + Cursor.clip(name.getText()) + " here");
        return problem.help(Suggestions.didYouMean(name.getText(), known)
                .orElse(
                        known.isEmpty()
                                ? "a variable is declared first, such as “every load L”"
                                : "the variables here are " + Suggestions.list(known, "and")));
    }

    private Problem unknownName(Lexeme name, Set<Type> expected) {
        if (expected.equals(Set.of(Type.PERSON))) {
            return nobody(name, scope);
        }
        String what = expected.size() == 1 ? expected.iterator().next().phrase() : "anything";
        what = what.replaceFirst("^a ", "").replaceFirst("^an ", "");
        String where = scope.networks().isEmpty()
                ? "here"
                : "in "
                        + Suggestions.list(
                                scope.networks().stream().map(n -> n.name()).toList(), "or");
        String message = what.equals("anything") ? "nothing is called " : "there is no " + what + " ";
        Problem problem = Code.UNKNOWN_NAME.at(name.span(), message + Cursor.clip(name.value()) + " " + where);
        List<String> known = new ArrayList<>(scope.names(expected));
        if (expected.contains(Type.PERSON)) {
            known.addAll(scope.people());
        }
        known.addAll(scope.variables());
        return Suggestions.didYouMean(name.value(), known)
                .or(() -> Suggestions.didYouMean(name.value(), scope.names(Set.of(Type.values()))))
                .map(problem::help)
                .orElse(problem);
    }

    /** {@return the problem that nobody of the crew has that name} */
    static Problem nobody(Lexeme name, Scope scope) {
        return Code.UNKNOWN_ACTOR
                .at(name.span(), "nobody called " + Cursor.clip(name.getText()) + " is in the crew")
                .help(Suggestions.didYouMean(name.value(), scope.people())
                        .orElse(
                                scope.people().isEmpty()
                                        ? "list the people under “crew”"
                                        : "the crew is " + Suggestions.list(scope.people(), "and")));
    }

    /** {@return the kinds of equipment that a term may stand for; empty if nothing is known} */
    List<Kind> kinds(Term term) {
        if (term instanceof Term.Variable variable) {
            return scope.nounOf(variable.name())
                    .map(scope.vocabulary()::kindsOf)
                    .orElse(List.of());
        }
        return term instanceof Term.Name name
                ? scope.element(name.name()).map(Element::kind).map(List::of).orElse(List.of())
                : List.of();
    }
}
