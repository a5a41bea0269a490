package org.keeplit.language;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableSet;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.keeplit.condition.Condition;
import org.keeplit.condition.Noun;
import org.keeplit.condition.Type;
import org.keeplit.condition.ActKind;
import org.keeplit.rule.Trigger;
import org.keeplit.text.Span;

/** Reads the moments of a rule: {@code opening or closing any switching device D on phase P}. */
final class TriggerReader {
    private static final Noun PHASE = Noun.all(Type.PHASE, "phase");

    private final Scope scope;
    private final List<Condition.Binder> participants = new ArrayList<>();
    private final List<String> words = new ArrayList<>();
    private Lexeme phase;
    private Condition.Binder actor;

    TriggerReader(Scope scope) {
        this.scope = scope;
    }

    /** {@return the moments on the rest of the line} */
    List<Trigger> read(Cursor cursor) {
        List<Trigger> triggers = readUntil(cursor, Set.of());
        cursor.finish("the moment");
        return triggers;
    }

    /** {@return the moments here} @param ends the words before which they end */
    List<Trigger> readUntil(Cursor cursor, Set<String> ends) {
        int start = cursor.index();
        List<ActKind> acts = Gerunds.read(cursor);
        Lexeme near = cursor.peek(-1);
        if (acts.contains(ActKind.LIFTING) || acts.contains(ActKind.LANDING)) {
            cursor.expect("“a lead of”", "a", "lead", "of");
        }
        if (acts.get(0).takesText()) {
            words.add(Gerunds.text(cursor, acts));
        } else if (acts.contains(ActKind.SETTING)) {
            setting(cursor, acts);
        } else if (!isPersonal(acts)) {
            participant(cursor);
        }
        if (acts.contains(ActKind.TAPPING)) {
            cursor.expect("“to neutral”", "to", "neutral");
        }
        tail(cursor, ends);
        List<Trigger> triggers = new ArrayList<>();
        for (ActKind act : acts) {
            triggers.add(trigger(act, near, cursor.from(start)));
        }
        return triggers;
    }

    private static boolean isPersonal(List<ActKind> acts) {
        return acts.stream().allMatch(a -> a == ActKind.GOING_ALOFT || a == ActKind.COMING_DOWN);
    }

    private void participant(Cursor cursor) {
        participants.add(bind(cursor));
    }

    private Condition.Binder bind(Cursor cursor) {
        cursor.expect("“any”, a noun and a variable", "any");
        int start = cursor.index();
        Noun noun = scope.vocabulary().noun(cursor);
        Lexeme variable = cursor.next("a variable for the " + noun.words());
        scope.declare(variable, noun);
        return new Condition.Binder(variable.getText(), noun, Optional.empty(), Optional.empty(), cursor.from(start));
    }

    /** {@code setting reclosing of any recloser D to on}. */
    private void setting(Cursor cursor, List<ActKind> acts) {
        String mode = Gerunds.mode(cursor, acts, scope);
        participant(cursor);
        words.add(mode);
        words.add(Gerunds.value(cursor, mode, scope));
    }

    private void tail(Cursor cursor, Set<String> ends) {
        while (!cursor.done() && ends.stream().noneMatch(end -> cursor.sees(0, end))) {
            if (cursor.take("on", "phase") || cursor.take("on", "any", "phase")) {
                phase = cursor.next("a variable for the phase");
                scope.declare(phase, PHASE);
            } else if (cursor.take("at")) {
                participant(cursor);
            } else if (cursor.take("by")) {
                actor = bind(cursor);
                if (actor.noun().type() != Type.PERSON) {
                    throw new Misread(Code.WRONG_SORT.at(actor.span(), "only a person acts"));
                }
            } else {
                throw cursor.unexpected("“on phase P”, “at any site S” or “by any person W”");
            }
        }
    }

    private Trigger trigger(ActKind act, Lexeme near, Span span) {
        List<Condition.Binder> all = new ArrayList<>(participants);
        ImmutableList<ImmutableSet<Type>> signature = act.signature();
        boolean personal = act == ActKind.GOING_ALOFT || act == ActKind.COMING_DOWN;
        if (personal) {
            all.add(0, actor == null ? RuleResolver.unnamed(Type.PERSON, near) : actor);
        }
        if (act == ActKind.GOING_ALOFT && all.size() == 1) {
            all.add(RuleResolver.unnamed(Type.SITE, near));
        }
        if (all.size() != signature.size()) {
            throw new Misread(Code.WRONG_SORT.at(span, "“" + act.words() + "” has another number of participants"));
        }
        for (int i = 0; i < all.size(); i++) {
            check(act, all.get(i), signature.get(i));
        }
        if (phase != null && !act.perPhase()) {
            throw new Misread(Code.NOT_PER_PHASE
                    .at(phase.span(), "“" + act.words() + "” does not happen phase by phase")
                    .help("leave out “on phase " + phase.getText() + "”"));
        }
        return new Trigger(
                act,
                ImmutableList.copyOf(all),
                Optional.ofNullable(phase).map(Lexeme::getText),
                personal ? Optional.empty() : Optional.ofNullable(actor).map(Condition.Binder::variable),
                ImmutableList.copyOf(words));
    }

    private static void check(ActKind act, Condition.Binder binder, Set<Type> expected) {
        if (!expected.contains(binder.noun().type())) {
            throw new Misread(Code.WRONG_SORT.at(
                    binder.span(),
                    "“" + act.words() + "” goes with "
                            + Suggestions.list(
                                    expected.stream().sorted().map(Type::phrase).toList(), "or") + ", not with "
                            + binder.noun().type().phrase()));
        }
    }
}
