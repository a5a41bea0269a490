package org.keeplit.language;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableSet;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.keeplit.condition.ActKind;
import org.keeplit.condition.Moment;
import org.keeplit.condition.Noun;
import org.keeplit.condition.PhaseTerm;
import org.keeplit.condition.Term;
import org.keeplit.condition.Type;

/** Reads moments of things that are known already: {@code opening D on P by W}, {@code issuing any hold}. */
final class MomentReader {
    private final Scope scope;
    private final TermReader terms;
    private final List<Moment.Participant> participants = new ArrayList<>();
    private final List<String> words = new ArrayList<>();
    private Optional<PhaseTerm> phase = Optional.empty();
    private Optional<Moment.Participant> actor = Optional.empty();

    MomentReader(Scope scope) {
        this.scope = scope;
        this.terms = new TermReader(scope);
    }

    /** {@return the moments here, joined by {@code or}; they end where something else follows} */
    ImmutableList<Moment> read(Cursor cursor) {
        int start = cursor.index();
        List<ActKind> acts = Gerunds.read(cursor);
        ActKind first = acts.get(0);
        if (acts.contains(ActKind.LIFTING) || acts.contains(ActKind.LANDING)) {
            cursor.expect("“a lead of”", "a", "lead", "of");
        }
        if (first.takesText()) {
            words.add(Gerunds.text(cursor, acts));
        } else if (acts.contains(ActKind.SETTING)) {
            String mode = Gerunds.mode(cursor, acts, scope);
            participants.add(participant(cursor, first.signature().get(0), first));
            words.add(mode);
            words.add(Gerunds.value(cursor, mode, scope));
        } else if (!isPersonal(first)) {
            participants.add(participant(cursor, first.signature().get(0), first));
        }
        if (acts.contains(ActKind.TAPPING)) {
            cursor.expect("“to neutral”", "to", "neutral");
        }
        tail(cursor, first);
        ImmutableList.Builder<Moment> all = ImmutableList.builder();
        for (ActKind act : acts) {
            all.add(moment(act, cursor, start));
        }
        return all.build();
    }

    private static boolean isPersonal(ActKind act) {
        return act == ActKind.GOING_ALOFT || act == ActKind.COMING_DOWN;
    }

    private Moment.Participant participant(Cursor cursor, Set<Type> expected, ActKind act) {
        int start = cursor.index();
        if (cursor.take("any")) {
            Noun noun = scope.vocabulary().noun(cursor);
            if (!expected.contains(noun.type())) {
                throw new Misread(Code.WRONG_SORT.at(
                        cursor.from(start),
                        "“" + act.words() + "” goes with "
                                + Suggestions.list(expected.stream().sorted().map(Type::phrase).toList(), "or")
                                + ", not with " + noun.type().phrase()));
            }
            Lexeme variable = cursor.peek(0);
            if (variable != null && variable.isVariable()) {
                throw new Misread(Code.BAD_VARIABLE
                        .at(variable.span(), "“any” binds no variable here: one of them is enough")
                        .help("leave out “" + variable.getText() + "”, or name what the rule is about already"));
            }
            return new Moment.Any(noun);
        }
        TermText text = terms.read(
                cursor, Suggestions.list(expected.stream().sorted().map(Type::phrase).toList(), "or"));
        return new Moment.The(terms.resolve(text, expected, "“" + act.words() + "”"));
    }

    private void tail(Cursor cursor, ActKind act) {
        while (true) {
            if (cursor.sees(0, "on")) {
                int on = cursor.index();
                cursor.next("on");
                phase = cursor.take("any", "phase") ? Optional.empty() : Optional.of(PhaseReader.term(cursor, scope));
                if (!act.perPhase()) {
                    throw new Misread(Code.NOT_PER_PHASE
                            .at(cursor.from(on), "“" + act.words() + "” does not happen phase by phase")
                            .help("leave out “" + cursor.words(on) + "”"));
                }
            } else if (act == ActKind.GOING_ALOFT && cursor.take("at")) {
                participants.add(participant(cursor, ImmutableSet.of(Type.SITE), act));
            } else if (cursor.take("by")) {
                actor = Optional.of(participant(cursor, ImmutableSet.of(Type.PERSON), act));
            } else {
                return;
            }
        }
    }

    private Moment moment(ActKind act, Cursor cursor, int start) {
        List<Moment.Participant> all = new ArrayList<>(participants);
        if (isPersonal(act)) {
            all.add(0, actor.orElse(new Moment.Any(Noun.all(Type.PERSON, "person"))));
        }
        if (act == ActKind.GOING_ALOFT && all.size() == 1) {
            all.add(new Moment.Any(Noun.all(Type.SITE, "site")));
        }
        boolean fits = all.size() == act.signature().size();
        for (int i = 0; fits && i < all.size(); i++) {
            fits = act.signature().get(i).contains(type(all.get(i)));
        }
        if (!fits) {
            throw new Misread(
                    Code.WRONG_SORT.at(cursor.from(start), "“" + act.words() + "” does not go with all of this"));
        }
        return new Moment(
                act,
                ImmutableList.copyOf(all),
                phase,
                isPersonal(act) ? Optional.empty() : actor,
                ImmutableList.copyOf(words),
                cursor.from(start));
    }

    private static Type type(Moment.Participant participant) {
        if (participant instanceof Moment.The the) {
            Term term = the.term();
            return term.type();
        }
        return ((Moment.Any) participant).noun().type();
    }
}
