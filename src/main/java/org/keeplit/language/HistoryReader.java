package org.keeplit.language;

import com.google.common.collect.ImmutableList;
import org.keeplit.condition.Condition;
import org.keeplit.condition.Moment;

/** Reads what asks for the past: {@code issuing H has happened since going aloft at S}, {@code since MOMENT, …}. */
final class HistoryReader {
    private final Scope scope;

    HistoryReader(Scope scope) {
        this.scope = scope;
    }

    /** {@return whether it is asked here whether a moment came up, or what was meant as one} */
    static boolean asksWhether(Cursor cursor) {
        if (Gerunds.start(cursor)) {
            // The closing current is a figure, no moment.
            return !cursor.sees(1, "current");
        }
        Lexeme first = cursor.peek(0);
        if (first == null || first.isText() || !first.getText().endsWith("ing")) {
            return false;
        }
        for (int ahead = 1; cursor.peek(ahead) != null && !cursor.sees(ahead, ","); ahead++) {
            if (cursor.sees(ahead, "happened")) {
                return true;
            }
        }
        return false;
    }

    /** {@return whether a stretch begins here, such as {@code since opening D, …}} */
    static boolean asksSince(Cursor cursor) {
        return cursor.sees(0, "since");
    }

    /** {@code MOMENT has happened}, {@code MOMENT has not happened since MOMENT}. */
    Condition whether(Cursor cursor) {
        int start = cursor.index();
        ImmutableList<Moment> moments = new MomentReader(scope).read(cursor);
        cursor.expect("“has happened”, or “has not happened”,", "has");
        boolean negative = cursor.take("not");
        cursor.expect("“happened”", "happened");
        ImmutableList<Moment> since =
                cursor.take("since") ? new MomentReader(scope).read(cursor) : ImmutableList.of();
        allow(cursor, start);
        Condition happened = new Condition.Happened(moments, since, cursor.from(start));
        return negative ? new Condition.Not(happened, cursor.from(start)) : happened;
    }

    /** {@return the moments of {@code since MOMENT,}, the comma passed} */
    ImmutableList<Moment> since(Cursor cursor) {
        int start = cursor.index();
        cursor.next("since");
        ImmutableList<Moment> moments = new MomentReader(scope).read(cursor);
        allow(cursor, start);
        cursor.expect("a comma and the condition", ",");
        return moments;
    }

    private void allow(Cursor cursor, int start) {
        if (!scope.isRemembering()) {
            throw new Misread(Code.NO_MEMORY
                    .at(cursor.from(start), "only rules ask for what happened before")
                    .help("a step asks for what is so when it is done; put this into a rulebook"));
        }
    }
}
