package org.keeplit.language;

import com.google.common.collect.ImmutableSet;
import java.util.Optional;
import org.keeplit.condition.Condition;
import org.keeplit.condition.Noun;
import org.keeplit.condition.Term;
import org.keeplit.condition.Type;

/** Reads what a variable ranges over: {@code switching device F that feeds S}, {@code phase P of D}. */
final class BinderReader {
    /** What has phases of its own. */
    static final ImmutableSet<Type> PHASED = ImmutableSet.of(
            Type.DEVICE,
            Type.REGULATOR,
            Type.CAPACITOR,
            Type.TRANSFORMER,
            Type.LINE,
            Type.LOAD,
            Type.JUMPER,
            Type.GROUND,
            Type.MOBILE);

    private final Scope scope;
    private final ConditionReader conditions;

    /**
     * A reader.
     *
     * @param scope the scope that the variable goes into
     * @param conditions reads what follows {@code that}, in the same scope
     */
    BinderReader(Scope scope, ConditionReader conditions) {
        this.scope = scope;
        this.conditions = conditions;
    }

    /** {@return the binder here} */
    Condition.Binder read(Cursor cursor) {
        int start = cursor.index();
        Noun noun = scope.vocabulary().noun(cursor);
        Lexeme variable = cursor.next("a variable for the " + noun.words());
        scope.declare(variable, noun);
        Optional<Term> of = Optional.empty();
        if (noun.type() == Type.PHASE && cursor.take("of")) {
            of = Optional.of(whole(cursor));
        }
        Optional<Condition> such = Optional.empty();
        if (cursor.take("that")) {
            such = Optional.of(conditions.restriction(cursor, new TermText.Ref(variable)));
        }
        return new Condition.Binder(variable.getText(), noun, of, such, cursor.from(start));
    }

    /** {@return the object whose phases are meant} */
    private Term whole(Cursor cursor) {
        TermReader terms = new TermReader(scope);
        return terms.resolve(terms.read(cursor, "what has the phases"), PHASED, "“phase of”");
    }
}
