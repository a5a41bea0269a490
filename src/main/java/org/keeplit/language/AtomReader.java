package org.keeplit.language;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableSet;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.keeplit.condition.Condition;
import org.keeplit.condition.Noun;
import org.keeplit.condition.PhaseTerm;
import org.keeplit.condition.Predicate;
import org.keeplit.condition.Term;
import org.keeplit.condition.Type;
import org.keeplit.network.ClosingDuty;
import org.keeplit.network.OpeningDuty;
import org.keeplit.text.Problem;
import org.keeplit.text.Span;
import org.keeplit.unit.Dimension;
import org.keeplit.unit.Quantity;

/** Reads single questions: a subject, what is asked of it, and on which phases. */
final class AtomReader {
    private static final int MOST_COUNTED = 1000;

    private final Scope scope;
    private final TermReader terms;

    AtomReader(Scope scope) {
        this.scope = scope;
        this.terms = new TermReader(scope);
    }

    /** {@return the question here if it starts with a text or a mode instead of a term} */
    Optional<Condition> special(Cursor cursor) {
        if (cursor.need("a condition").isText() && isAboutText(cursor)) {
            return Optional.of(aboutText(cursor));
        }
        int start = cursor.index();
        Optional<String> mode = scope.vocabulary().mode(cursor);
        if (mode.isPresent() && cursor.take("of")) {
            return Optional.of(mode(cursor, mode.get(), start));
        }
        cursor.moveTo(start);
        Lexeme here = cursor.need("");
        if (here.getType() == org.keeplit.language.grammar.Words.WORD
                && !here.isVariable()
                && cursor.sees(1, "of")
                && !cursor.sees(0, "node")
                && !cursor.sees(0, "site")) {
            throw new Misread(Code.UNKNOWN_MODE
                    .at(here.span(), "there is no setting “" + Cursor.clip(here.getText()) + "”")
                    .help(Suggestions.didYouMean(
                                    here.getText(), scope.vocabulary().modes())
                            .orElse("the settings are "
                                    + Suggestions.list(scope.vocabulary().modes(), "and"))));
        }
        return Optional.empty();
    }

    private static boolean isAboutText(Cursor cursor) {
        int ahead = cursor.sees(2, "not") ? 3 : 2;
        return cursor.sees(1, "is") && (cursor.sees(ahead, "recorded") || cursor.sees(ahead, "found"));
    }

    private Condition aboutText(Cursor cursor) {
        int start = cursor.index();
        String item = cursor.next("").value();
        cursor.next("is");
        boolean negative = cursor.take("not");
        boolean recorded = cursor.take("recorded");
        List<String> words = new ArrayList<>(List.of(item));
        if (!recorded) {
            cursor.next("found");
            words.add(quoted(cursor, "what is found"));
        }
        return atom(
                recorded ? Predicate.RECORDED : Predicate.FOUND,
                List.of(),
                PhaseTerm.ALL,
                words,
                negative,
                cursor.from(start));
    }

    private Condition mode(Cursor cursor, String mode, int start) {
        TermText of = terms.read(cursor, "a device or a regulator");
        Term term = terms.resolve(of, Predicate.MODE.signature().get(0), "“" + mode + " of”");
        if (!cursor.take("is")) {
            cursor.expect("“is” and a value", "are");
        }
        boolean negative = cursor.take("not");
        Lexeme value = cursor.next("a value of " + mode);
        Set<String> values = scope.vocabulary().values(mode);
        if (!values.contains(value.value())) {
            throw new Misread(Code.UNKNOWN_MODE
                    .at(value.span(), mode + " is never “" + Cursor.clip(value.value()) + "”")
                    .help("it is " + Suggestions.list(values, "or")));
        }
        var kinds = terms.kinds(term);
        if (!kinds.isEmpty() && kinds.stream().noneMatch(k -> k.mode(mode).isPresent())) {
            throw new Misread(
                    Code.UNKNOWN_MODE.at(term.span(), Suggestions.a(kinds.get(0).name()) + " has no " + mode));
        }
        int on = cursor.index();
        PhaseTerm phase = PhaseReader.optional(cursor, scope);
        if (cursor.index() > on) {
            PhaseCheck.check(term, phase, cursor.from(on), scope);
        }
        return atom(Predicate.MODE, List.of(term), phase, List.of(mode, value.value()), negative, cursor.from(start));
    }

    /** {@return what is said here of a subject} */
    Condition saying(Cursor cursor, TermText subject) {
        int start = cursor.index();
        Lexeme here = cursor.need("what is said of " + subject.words());
        if (here.is(",")) {
            throw new Misread(Code.UNEXPECTED
                    .at(here.span(), "a comma stands where the condition should go on")
                    .help("before “every …,” with a comma stands “for”"));
        }
        List<Phrasebook.Saying> sayings = scope.vocabulary().phrasebook().match(cursor);
        Optional<DefinedReader.Match> defined = new DefinedReader(scope).match(cursor);
        if (defined.isPresent()
                && (sayings.isEmpty()
                        || defined.get().length() > sayings.get(0).words().size())) {
            return new DefinedReader(scope).read(cursor, subject, defined.get());
        }
        if (sayings.isEmpty()) {
            throw new Misread(unknown(cursor, subject));
        }
        Phrasebook.Saying saying = choose(sayings, subject);
        cursor.moveTo(start + saying.words().size());
        Predicate predicate = saying.predicate();
        String asker = "“" + cursor.words(start) + "”";
        List<Term> arguments = new ArrayList<>();
        List<ImmutableSet<Type>> signature = predicate.signature();
        if (signature.isEmpty()) {
            throw new Misread(Code.WRONG_SORT
                    .at(cursor.from(start), asker + " is asked of a text in quotes")
                    .help("such as \"counter reading\" is recorded"));
        }
        checkLead(predicate, subject, asker);
        arguments.add(terms.resolve(subject, signature.get(0), asker));
        for (ImmutableSet<Type> expected : signature.subList(1, signature.size())) {
            TermText text = terms.read(
                    cursor,
                    Suggestions.list(
                            expected.size() > 6
                                    ? List.of("a name")
                                    : expected.stream().map(Type::phrase).toList(),
                            "or"));
            arguments.add(terms.resolve(text, expected, asker));
        }
        checkSame(predicate, arguments);
        return finish(cursor, saying, arguments, subject, start);
    }

    private Condition finish(
            Cursor cursor, Phrasebook.Saying saying, List<Term> arguments, TermText subject, int start) {
        Predicate predicate = saying.predicate();
        List<String> words = new ArrayList<>(saying.fixed());
        PhaseTerm phase;
        switch (predicate) {
            case OPENING_DUTY -> words.addAll(DutyReader.read(
                    cursor,
                    Arrays.stream(OpeningDuty.values()).map(OpeningDuty::phrase).toList()));
            case CLOSING_DUTY -> words.addAll(DutyReader.read(
                    cursor,
                    Arrays.stream(ClosingDuty.values()).map(ClosingDuty::phrase).toList()));
            case COUNTED -> words.add(
                    String.valueOf(Figures.count(cursor.next("a number"), MOST_COUNTED, "the count")));
            case WAITED -> words.add(seconds(Figures.positive(cursor, Dimension.TIME, "the time", scope)));
            case QUALIFIED_FOR -> words.add(quoted(cursor, "what somebody is qualified for"));
            default -> {}
        }
        Condition.Binder any = null;
        if (predicate == Predicate.PHASE_IN) {
            phase = PhaseReader.term(cursor, scope);
        } else {
            int on = cursor.index();
            boolean anyPhase = cursor.take("on", "any", "phase");
            any = anyPhase ? anyPhase(arguments.get(0), cursor.from(on)) : null;
            phase = anyPhase ? new PhaseTerm.Variable(any.variable()) : PhaseReader.optional(cursor, scope);
            if (cursor.index() > on && !predicate.perPhase()) {
                throw new Misread(Code.NOT_PER_PHASE
                        .at(cursor.from(on), "“" + String.join(" ", saying.words()) + "” is not asked phase by phase")
                        .help("leave out “" + cursor.words(on) + "”"));
            }
            if (!anyPhase && cursor.index() > on) {
                PhaseCheck.check(arguments.get(0), phase, cursor.from(on), scope);
            }
        }
        Span said = cursor.from(start);
        Span span = subject.span().line() == said.line() ? subject.span().to(said) : said;
        if (any == null) {
            return atom(predicate, arguments, phase, words, saying.negative(), span);
        }
        Condition some = new Condition.Quantified(
                Condition.Quantifier.SOME, any, atom(predicate, arguments, phase, words, false, span), span);
        return saying.negative() ? new Condition.Not(some, span) : some;
    }

    private static String quoted(Cursor cursor, String what) {
        Lexeme text = cursor.next(what + ", in quotes,");
        if (!text.isText()) {
            throw new Misread(Code.MISSING_QUOTE
                    .at(text.span(), what + " is written in quotes")
                    .help("write \"" + Cursor.clip(text.getText()) + "\""));
        }
        return text.value();
    }

    /** {@return the phases of a subject, for {@code on any phase}} */
    private static Condition.Binder anyPhase(Term of, Span span) {
        return new Condition.Binder("(phase)", Noun.all(Type.PHASE, "phase"), Optional.of(of), Optional.empty(), span);
    }

    /** Leads come off; other points, and what hangs on them, do not. */
    private static void checkLead(Predicate predicate, TermText subject, String asker) {
        boolean ofLead = predicate == Predicate.ATTACHED || predicate == Predicate.DETACHED;
        if (ofLead && !(subject instanceof TermText.Part part && part.part() == TermText.PartKind.LEAD)) {
            throw new Misread(Code.WRONG_SORT
                    .at(subject.span(), asker + " is asked of a lead, and " + subject.words() + " is none")
                    .help("say which lead: the source lead of R is off; of a place say that it is dead, of a load that it is not supplied,"
                            + " of a device that it is open, of a jumper that it is not in use"));
        }
    }

    private static void checkSame(Predicate predicate, List<Term> arguments) {
        if (predicate == Predicate.SAME
                && arguments.get(0).type() != arguments.get(1).type()) {
            throw new Misread(Code.WRONG_SORT.at(
                    arguments.get(1).span(),
                    "one is " + arguments.get(0).type().phrase() + " and the other "
                            + arguments.get(1).type().phrase() + ", so they are never the same"));
        }
    }

    /** {@return the meaning that fits the subject, else the first} */
    private Phrasebook.Saying choose(List<Phrasebook.Saying> sayings, TermText subject) {
        for (Phrasebook.Saying saying : sayings) {
            List<ImmutableSet<Type>> signature = saying.predicate().signature();
            if (sayings.size() > 1 && !signature.isEmpty() && fits(subject, signature.get(0))) {
                return saying;
            }
        }
        return sayings.get(0);
    }

    private boolean fits(TermText subject, ImmutableSet<Type> expected) {
        try {
            terms.resolve(subject, expected, "");
            return true;
        } catch (Misread misread) {
            return false;
        }
    }

    private static Condition atom(
            Predicate predicate,
            List<Term> arguments,
            PhaseTerm phase,
            List<String> words,
            boolean negative,
            Span span) {
        Condition atom = new Condition.Atom(
                predicate, ImmutableList.copyOf(arguments), phase, ImmutableList.copyOf(words), span);
        return negative ? new Condition.Not(atom, span) : atom;
    }

    /** {@return a waiting time as the engines keep it} */
    private static String seconds(Quantity time) {
        return BigDecimal.valueOf(time.si()).stripTrailingZeros().toPlainString();
    }

    private Problem unknown(Cursor cursor, TermText subject) {
        Lexeme here = cursor.need("");
        Optional<String> near = scope.vocabulary().phrasebook().completes(here)
                ? Optional.of("is " + here.getText())
                : scope.vocabulary().phrasebook().nearest(cursor).or(() -> DefinedReader.nearest(cursor, scope));
        int many = 1;
        if (scope.vocabulary().phrasebook().starts(here)) {
            while (many < 4
                    && cursor.peek(many) != null
                    && Character.isLetter(cursor.peek(many).getText().charAt(0))
                    && !cursor.sees(many, "and")
                    && !cursor.sees(many, "or")) {
                many++;
            }
        }
        List<Lexeme> words = cursor.rest().subList(0, many);
        return Code.UNKNOWN_PREDICATE
                .at(
                        Line.spanOf(words),
                        "“" + Cursor.clip(Line.written(words)) + "” is nothing that can be asked of " + subject.words())
                .help(near.map(n -> "did you mean “" + n + "”?")
                        .orElse("a condition reads: R is closed on A, or H covers S"));
    }
}
