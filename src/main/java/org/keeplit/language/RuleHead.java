package org.keeplit.language;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.keeplit.condition.Condition;
import org.keeplit.condition.Moment;
import org.keeplit.rule.Rule;
import org.keeplit.rule.Trigger;

/** Reads the head of a rule, which says when it is judged and binds its variables. */
final class RuleHead {
    private final Scope scope;
    private final Report report;
    private final Node section;
    private final List<Condition.Binder> binders = new ArrayList<>();
    private List<Trigger> triggers = List.of();
    private List<Moment> until = List.of();
    private Rule.Form form;
    private Condition condition;

    RuleHead(Scope scope, Report report, Node section) {
        this.scope = scope;
        this.report = report;
        this.section = section;
    }

    /** {@return when the rule is judged; null if that could not be read} */
    Rule.Form form() {
        return form;
    }

    /** {@return the condition that the head itself says; null if it says none} */
    Condition condition() {
        return condition;
    }

    List<Trigger> triggers() {
        return triggers;
    }

    List<Moment> until() {
        return until;
    }

    List<Condition.Binder> binders() {
        return binders;
    }

    /** Reads the line. @param head the line */
    void read(Node head) {
        Cursor cursor = Cursor.over(head.line());
        String word = cursor.next("").getText();
        switch (word) {
            case "always" -> always(cursor, head);
            case "never" -> never(cursor, head);
            case "while" -> during(cursor, head);
            case "before" -> before(cursor);
            case "after" -> after(cursor, head);
            case "between" -> between(cursor);
            default -> atEnds(cursor, head);
        }
    }

    private void always(Cursor cursor, Node head) {
        form = Rule.Form.ALWAYS;
        if (cursor.sees(List.of("for", "any"))) {
            cursor.next("for");
            binders(cursor);
            cursor.expect("a comma and the condition", ",");
        } else if (cursor.sees(0, "every") && startsWithBinder(cursor)) {
            // "always every load L is supplied" speaks of each load by itself.
            int start = cursor.index();
            cursor.next("every");
            Condition.Binder binder = new BinderReader(scope, new ConditionReader(scope, report, head)).read(cursor);
            binders.add(binder);
            cursor = resumed(cursor, head, start);
        }
        if (!cursor.done()) {
            condition = new ConditionReader(scope, report, head).read(cursor);
        }
    }

    /** {@return a cursor over the rest of the line with the variable put in front as the subject} */
    private static Cursor resumed(Cursor cursor, Node head, int start) {
        List<Lexeme> all = head.line().lexemes();
        List<Lexeme> rest = new ArrayList<>();
        // The variable is the first capital word after "every".
        all.subList(start, cursor.index()).stream()
                .filter(Lexeme::isVariable)
                .findFirst()
                .ifPresent(rest::add);
        rest.addAll(cursor.rest());
        return Cursor.over(rest);
    }

    private boolean startsWithBinder(Cursor cursor) {
        int back = cursor.index();
        cursor.next("every");
        boolean noun = scope.vocabulary().seesNoun(cursor);
        cursor.moveTo(back);
        return noun;
    }

    private void binders(Cursor cursor) {
        do {
            cursor.expect("any", "any");
            binders.add(new BinderReader(scope, new ConditionReader(scope, report, section)).read(cursor));
        } while (cursor.take("and"));
    }

    private void never(Cursor cursor, Node head) {
        form = Rule.Form.ALWAYS;
        List<Lexeme> all = head.line().lexemes();
        int with = -1;
        for (int i = 1; i + 1 < all.size(); i++) {
            if (all.get(i).is("with") && all.get(i + 1).is("any")) {
                with = i;
            }
        }
        Cursor body = cursor;
        if (with > 0) {
            // The variables are bound behind the condition, but must be known when it is read.
            Cursor tail = Cursor.over(all.subList(with + 1, all.size()));
            binders(tail);
            tail.finish("what the rule ranges over");
            body = Cursor.over(all.subList(1, Math.max(2, with)));
        }
        binders.addAll(0, anyIn(body, head));
        condition = new Condition.Not(condition, condition.span());
    }

    private void during(Cursor cursor, Node head) {
        form = Rule.Form.WHILE;
        binders.addAll(anyIn(cursor, head));
    }

    /** Reads the condition, in which {@code any} may bind variables. @return these */
    private List<Condition.Binder> anyIn(Cursor cursor, Node head) {
        List<Condition.Binder> any = scope.collectAny();
        condition = new ConditionReader(scope, report, head).read(cursor);
        return any;
    }

    private void before(Cursor cursor) {
        form = Rule.Form.BEFORE;
        triggers = new TriggerReader(scope).read(cursor);
    }

    /** {@code after MOMENT}, or {@code after MOMENT eventually CONDITION} or {@code … MOMENT}. */
    private void after(Cursor cursor, Node head) {
        form = Rule.Form.AFTER;
        triggers = new TriggerReader(scope).readUntil(cursor, Set.of("eventually", ","));
        if (!cursor.done()) {
            form = Rule.Form.EVENTUALLY;
            cursor.take(",");
            cursor.expect("“eventually”", "eventually");
            if (Gerunds.start(cursor)) {
                until = new MomentReader(scope).read(cursor);
                condition = new Condition.All(ImmutableList.of(), until.get(0).span());
                cursor.finish("the moment");
            } else {
                condition = new ConditionReader(scope, report, head).read(cursor);
            }
        }
    }

    /** {@code between MOMENT and MOMENT}; the start may stand for the first and the end for the second. */
    private void between(Cursor cursor) {
        form = Rule.Form.BETWEEN;
        int start = cursor.index();
        boolean fromStart = cursor.take("start");
        if (!fromStart) {
            triggers = new TriggerReader(scope).readUntil(cursor, Set.of("and"));
        }
        cursor.expect("“and” with the moment that ends the stretch", "and");
        if (cursor.take("end")) {
            if (fromStart) {
                throw new Misread(Code.UNEXPECTED
                        .at(cursor.from(start), "from the start to the end is always")
                        .help("write: always …"));
            }
        } else {
            until = new MomentReader(scope).read(cursor);
        }
        cursor.finish("the stretch");
    }

    private void atEnds(Cursor cursor, Node head) {
        boolean start = cursor.take("start");
        if (!start) {
            cursor.expect("“the start” or “the end”", "end");
        }
        form = start ? Rule.Form.AT_START : Rule.Form.AT_END;
        if (!cursor.done()) {
            condition = new ConditionReader(scope, report, head).read(cursor);
        }
    }
}
