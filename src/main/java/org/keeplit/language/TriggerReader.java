package org.keeplit.language;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableSet;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.keeplit.condition.Condition;
import org.keeplit.condition.Noun;
import org.keeplit.condition.Type;
import org.keeplit.rule.ActKind;
import org.keeplit.rule.Trigger;
import org.keeplit.text.Span;

/** Reads the moments of a rule: {@code opening or closing any switching device D on phase P}. */
final class TriggerReader {
    private static final Noun PHASE = Noun.all(Type.PHASE, "phase");

    private final Scope scope;
    private final Map<String, List<String>> gerunds = new LinkedHashMap<>();
    private final List<Condition.Binder> participants = new ArrayList<>();
    private final List<String> words = new ArrayList<>();
    private Lexeme phase;
    private Condition.Binder actor;

    TriggerReader(Scope scope) {
        this.scope = scope;
        for (ActKind act : ActKind.values()) {
            String said = act == ActKind.TAPPING ? "running" : act.words();
            gerunds.put(
                    act.name(),
                    Arrays.stream(said.split(" ")).filter(w -> !w.equals("the")).toList());
        }
    }

    /** {@return the moments on the rest of the line} */
    List<Trigger> read(Cursor cursor) {
        int start = cursor.index();
        List<ActKind> acts = new ArrayList<>();
        do {
            acts.add(act(cursor));
        } while (cursor.take("or"));
        Lexeme near = cursor.peek(-1);
        if (acts.contains(ActKind.LIFTING) || acts.contains(ActKind.LANDING)) {
            cursor.expect("“a lead of”", "a", "lead", "of");
        }
        if (acts.contains(ActKind.SETTING)) {
            setting(cursor, acts);
        } else if (!isPersonal(acts)) {
            participant(cursor);
        }
        if (acts.contains(ActKind.TAPPING)) {
            cursor.expect("“to neutral”", "to", "neutral");
        }
        tail(cursor);
        cursor.finish("the moment");
        List<Trigger> triggers = new ArrayList<>();
        for (ActKind act : acts) {
            triggers.add(trigger(act, near, cursor.from(start)));
        }
        return triggers;
    }

    /** {@return the kind of moment named here, the longest that fits} */
    private ActKind act(Cursor cursor) {
        ActKind best = null;
        int longest = 0;
        for (ActKind act : ActKind.values()) {
            List<String> said = gerunds.get(act.name());
            if (said.size() > longest && cursor.sees(said)) {
                best = act;
                longest = said.size();
            }
        }
        if (best == null) {
            Lexeme here = cursor.need("a moment such as opening or clamping");
            List<String> known =
                    gerunds.values().stream().map(w -> String.join(" ", w)).toList();
            throw new Misread(Code.UNKNOWN_MOMENT
                    .at(here.span(), "“" + Cursor.clip(here.getText()) + "” is no moment that a rule can bind to")
                    .help(Suggestions.didYouMean(here.getText(), known)
                            .orElse("the moments are " + String.join(", ", known))));
        }
        cursor.moveTo(cursor.index() + longest);
        return best;
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
        if (acts.size() > 1) {
            throw new Misread(cursor.problem(Code.UNEXPECTED, "“setting” stands alone in a head")
                    .help("write a rule of its own for it"));
        }
        Lexeme here = cursor.need("a setting");
        String mode = scope.vocabulary()
                .mode(cursor)
                .orElseThrow(() -> new Misread(Code.UNKNOWN_MODE
                        .at(here.span(), "there is no setting “" + Cursor.clip(here.getText()) + "”")
                        .help(Suggestions.didYouMean(
                                        here.getText(), scope.vocabulary().modes())
                                .orElse("the settings are "
                                        + Suggestions.list(scope.vocabulary().modes(), "and")))));
        cursor.expect("“of”", "of");
        participant(cursor);
        cursor.expect("“to” and a value", "to");
        Lexeme value = cursor.next("a value of " + mode);
        if (!scope.vocabulary().values(mode).contains(value.value())) {
            throw new Misread(Code.UNKNOWN_MODE
                    .at(value.span(), mode + " is never “" + Cursor.clip(value.value()) + "”")
                    .help("it is " + Suggestions.list(scope.vocabulary().values(mode), "or")));
        }
        words.add(mode);
        words.add(value.value());
    }

    private void tail(Cursor cursor) {
        while (!cursor.done()) {
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
