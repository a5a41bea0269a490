package org.keeplit.language;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableSet;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.keeplit.condition.Condition;
import org.keeplit.condition.PhaseTerm;
import org.keeplit.condition.Term;
import org.keeplit.condition.Type;
import org.keeplit.procedure.DeviceSet;
import org.keeplit.text.Span;

/** The line of one step while it is read: who acts, on which phases, and what its words stand for. */
final class StepText {
    /** A place with its own phase. */
    record Spot(TermText term, Optional<PhaseTerm> phase) {}

    /** Devices as they stand on the line: one by name, or the ones that feed another. */
    record SetItem(TermText term, boolean feeding) {}

    private final Work work;
    private final Scope scope;
    private final Node node;
    private final ImmutableList<Lexeme> actors;
    private final Cursor cursor;
    private PhaseTerm phases = PhaseTerm.ALL;

    StepText(Work work, Scope scope, Node node, List<Lexeme> actors, Cursor cursor) {
        this.work = work;
        this.scope = scope;
        this.node = node;
        this.actors = ImmutableList.copyOf(actors);
        this.cursor = cursor;
    }

    Work work() {
        return work;
    }

    ImmutableList<Lexeme> actors() {
        return actors;
    }

    TermReader terms() {
        return new TermReader(scope);
    }

    Cursor cursor() {
        return cursor;
    }

    PhaseTerm phases() {
        return phases;
    }

    void phases(PhaseTerm some) {
        phases = some;
    }

    Scope scope() {
        return scope;
    }

    /** {@return the object that fits one of some sorts} */
    Term resolve(TermText text, Set<Type> expected, String asker) {
        return terms().resolve(text, expected, asker);
    }

    Term person(TermText text, String asker) {
        return resolve(text, ImmutableSet.of(Type.PERSON), asker);
    }

    Term permit(TermText text, String asker) {
        return resolve(text, ImmutableSet.of(Type.HOLD, Type.CLEARANCE), asker);
    }

    /** Moves past a comma and these words if they follow. @return whether they did */
    boolean option(String... words) {
        if (!cursor.sees(0, ",")) {
            return false;
        }
        int back = cursor.index();
        cursor.next("");
        if (cursor.take(words)) {
            return true;
        }
        cursor.moveTo(back);
        return false;
    }

    Spot readSpot(Cursor at) {
        TermText term = terms().read(at, "a point on the line");
        return new Spot(term, at.take("on") ? Optional.of(PhaseReader.term(at, scope)) : Optional.empty());
    }

    List<SetItem> readSet(Cursor at) {
        List<SetItem> items = new ArrayList<>();
        items.add(item(at));
        while (true) {
            int back = at.index();
            boolean more = at.take(",");
            more |= at.take("and");
            Lexeme next = at.peek(0);
            if (!more || next == null || !next.is("every") && !(next.isName() && !next.isText() && !next.isPhases())) {
                at.moveTo(back);
                return items;
            }
            items.add(item(at));
        }
    }

    private SetItem item(Cursor at) {
        if (at.take("every", "device", "that", "feeds") || at.take("every", "switching", "device", "that", "feeds")) {
            return new SetItem(terms().read(at, "what they feed"), true);
        }
        if (at.sees(0, "every")) {
            throw new Misread(at.problem(Code.UNEXPECTED, "only “every device that feeds …” can stand here")
                    .help("name the devices one by one"));
        }
        return new SetItem(terms().read(at, "a device"), false);
    }

    /** {@return a set with its term resolved} */
    DeviceSet set(SetItem item, Set<Type> expected, String asker) {
        if (item.feeding()) {
            return new DeviceSet.Feeding(resolve(item.term(), ImmutableSet.of(Type.DEVICE, Type.REGULATOR), asker));
        }
        return new DeviceSet.One(resolve(item.term(), expected, asker));
    }

    String readText(Cursor at) {
        Lexeme text = at.next("a text in quotes");
        if (!text.isText()) {
            throw new Misread(Code.MISSING_QUOTE
                    .at(text.span(), "a text in quotes should stand here, not “" + Cursor.clip(text.getText()) + "”")
                    .help("write it as \"…\""));
        }
        return text.value();
    }

    Condition readCondition(Cursor at) {
        return new ConditionReader(scope, work.report(), node).read(at);
    }

    Span here() {
        return cursor.here();
    }
}
