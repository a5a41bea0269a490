package org.keeplit.language;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.keeplit.condition.Condition;
import org.keeplit.condition.Figure;
import org.keeplit.text.Span;

/** Reads conditions: atoms joined by {@code and} or {@code or}, quantifiers, and blocks of lines. */
final class ConditionReader {
    private final Scope scope;
    private final Report report;
    private final Node block;
    private final AtomReader atoms;
    private Lexeme connective;

    /**
     * A reader for one line.
     *
     * @param scope the names
     * @param report where the mistakes of a block's lines go
     * @param block the line's node, whose children are the lines of the block that it opens, if it does
     */
    ConditionReader(Scope scope, Report report, Node block) {
        this.scope = scope;
        this.report = report;
        this.block = block;
        this.atoms = new AtomReader(scope);
    }

    private ConditionReader in(Scope inner) {
        return new ConditionReader(inner, report, block);
    }

    /** {@return the condition that takes up the rest of the line} */
    Condition read(Cursor cursor) {
        Condition condition = joined(cursor);
        cursor.finish("the condition");
        return condition;
    }

    /** {@return conditions joined by one connective} */
    private Condition joined(Cursor cursor) {
        int start = cursor.index();
        List<Condition> parts = new ArrayList<>();
        parts.add(part(cursor));
        boolean or = false;
        while (seesConnective(cursor) >= 0) {
            or = connect(cursor);
            parts.add(part(cursor));
        }
        return combine(parts, or, cursor.from(start));
    }

    private static Condition combine(List<Condition> parts, boolean or, Span span) {
        if (parts.size() == 1) {
            return parts.get(0);
        }
        return or
                ? new Condition.One(ImmutableList.copyOf(parts), span)
                : new Condition.All(ImmutableList.copyOf(parts), span);
    }

    /** {@return how many lexemes stand before a connective here: a comma may; less than 0 if none stands here} */
    private static int seesConnective(Cursor cursor) {
        int comma = cursor.sees(0, ",") ? 1 : 0;
        return cursor.sees(comma, "and") || cursor.sees(comma, "or") ? comma : -1;
    }

    /** {@return whether a connective stands here, and more is said of the same subject after it} */
    private boolean goesOn(Cursor cursor) {
        int before = seesConnective(cursor);
        return before >= 0 && scope.vocabulary().phrasebook().starts(cursor.peek(before + 1));
    }

    /** Moves past a connective. @return whether it is {@code or} @throws Misread if the line has the other one too */
    private boolean connect(Cursor cursor) {
        cursor.take(",");
        Lexeme here = cursor.next("");
        if (connective == null) {
            connective = here;
        } else if (!connective.is(here.getText())) {
            throw new Misread(Code.MIXED_AND_OR
                    .at(here.span(), "“and” and “or” stand on one line, which can be read in two ways")
                    .help("put the parts on lines of their own, in a block: “one of … end” or “all of … end”")
                    .related(connective.span(), "the other one"));
        }
        return here.is("or");
    }

    private Condition part(Cursor cursor) {
        if (cursor.sees(0, "for")) {
            return forEach(cursor);
        }
        if (HistoryReader.asksSince(cursor)) {
            return since(cursor);
        }
        if (HistoryReader.asksWhether(cursor)) {
            return new HistoryReader(scope).whether(cursor);
        }
        if (cursor.sees(List.of("one", "of")) || cursor.sees(List.of("all", "of"))) {
            return block(cursor);
        }
        Optional<Counting> counting = Counting.read(cursor, scope);
        if (counting.isPresent()) {
            return quantified(cursor, counting.get());
        }
        ComparisonReader comparisons = new ComparisonReader(scope);
        if (comparisons.starts(cursor)) {
            return compared(cursor, comparisons);
        }
        return atoms.special(cursor).orElseGet(() -> {
            refuseHalves(cursor);
            TermText subject = new TermReader(scope).read(cursor, "what the condition is about");
            return sayings(cursor, subject, atoms);
        });
    }

    /** {@return what is said of one figure, as far as the line goes on comparing it} */
    private Condition compared(Cursor cursor, ComparisonReader reader) {
        int start = cursor.index();
        Figure left = reader.subject(cursor);
        List<Condition> parts = new ArrayList<>();
        parts.add(reader.said(cursor, left, start));
        boolean or = false;
        while (seesConnective(cursor) >= 0 && ComparisonReader.goesOn(cursor, seesConnective(cursor) + 1)) {
            or = connect(cursor);
            parts.add(reader.said(cursor, left, cursor.index()));
        }
        return combine(parts, or, cursor.from(start));
    }

    /** Tells {@code not R is open} and {@code R is open or closed}, which leave out what must be said. */
    private void refuseHalves(Cursor cursor) {
        Lexeme here = cursor.need("a condition");
        if (here.is("not")) {
            throw new Misread(Code.UNEXPECTED
                    .at(here.span(), "“not” stands after the verb")
                    .help("such as: R is not open"));
        }
        Lexeme before = cursor.peek(-1);
        boolean joined = before != null && (before.is("and") || before.is("or"));
        if (joined && here.isName() && scope.vocabulary().phrasebook().completes(here)) {
            throw new Misread(Code.UNEXPECTED
                    .at(here.span(), "“" + here.getText() + "” lacks its verb")
                    .help("say it in full: " + before.getText() + " is " + here.getText()));
        }
    }

    /** {@code since MOMENT, …}, which ranges to the end of the line. */
    private Condition since(Cursor cursor) {
        int start = cursor.index();
        var moments = new HistoryReader(scope).since(cursor);
        Condition body = joined(cursor);
        return new Condition.Since(moments, body, cursor.from(start));
    }

    /** {@code for every NOUN X …, CONDITION}. */
    private Condition forEach(Cursor cursor) {
        int start = cursor.index();
        cursor.next("for");
        Counting counting = Counting.read(cursor, scope)
                .orElseThrow(() -> cursor.unexpected("every, some, no, at least, at most or exactly"));
        Scope inner = scope.inner();
        ConditionReader reader = in(inner);
        Condition.Binder binder = new BinderReader(inner, reader).read(cursor);
        cursor.expect("a comma and the condition", ",");
        reader.connective = connective;
        Condition body = reader.joined(cursor);
        connective = reader.connective;
        return counting.of(binder, body, cursor.from(start));
    }

    /** {@code every NOUN X … is …}. */
    private Condition quantified(Cursor cursor, Counting counting) {
        int start = cursor.index();
        Scope inner = scope.inner();
        ConditionReader reader = in(inner);
        Condition.Binder binder = new BinderReader(inner, reader).read(cursor);
        reader.connective = connective;
        TermText subject = new TermText.Ref(variable(cursor, start));
        Condition body = reader.sayings(cursor, subject, reader.atoms);
        connective = reader.connective;
        return counting.of(binder, body, cursor.from(start).line() == counting.span().line()
                ? counting.span().to(cursor.from(start))
                : counting.span());
    }

    private Lexeme variable(Cursor cursor, int start) {
        int end = cursor.index();
        cursor.moveTo(start);
        scope.vocabulary().noun(cursor);
        Lexeme variable = cursor.next("");
        cursor.moveTo(end);
        return variable;
    }

    /** {@return what is said of one subject, as far as the line goes on about it} */
    private Condition sayings(Cursor cursor, TermText subject, AtomReader reader) {
        int start = cursor.index();
        List<Condition> parts = new ArrayList<>();
        parts.add(reader.saying(cursor, subject));
        boolean or = false;
        while (goesOn(cursor)) {
            or = connect(cursor);
            parts.add(reader.saying(cursor, subject));
        }
        Span span = parts.size() == 1
                ? parts.get(0).span()
                : subject.span().line() == cursor.from(start).line()
                        ? subject.span().to(cursor.from(start))
                        : cursor.from(start);
        return combine(parts, or, span);
    }

    /** {@return what {@code that} says of a variable} */
    Condition restriction(Cursor cursor, TermText subject) {
        int start = cursor.index();
        List<Condition> parts = new ArrayList<>();
        parts.add(atoms.saying(cursor, subject));
        while (cursor.sees(0, "and") && goesOn(cursor)) {
            cursor.next("and");
            parts.add(atoms.saying(cursor, subject));
        }
        return combine(parts, false, cursor.from(start));
    }

    /** {@code one of … end}, {@code all of … end}: each line of the block is a condition. */
    private Condition block(Cursor cursor) {
        int start = cursor.index();
        boolean or = cursor.next("").is("one");
        cursor.next("of");
        if (!cursor.done()) {
            throw new Misread(Code.UNEXPECTED
                    .at(cursor.here(), "after “one of” and “all of” the line ends")
                    .help("write each part on a line of its own below, and close the block with “end”"));
        }
        if (block.unclosed()) {
            throw Misread.told();
        }
        Span span = cursor.from(start);
        if (block.children().isEmpty()) {
            throw new Misread(Code.EMPTY_GROUP.at(span, "this block has no lines"));
        }
        List<Condition> parts = new ArrayList<>();
        for (Node child : block.children()) {
            if (child.readable()) {
                report.attempt(() -> new ConditionReader(scope, report, child).read(Cursor.over(child.line())))
                        .ifPresent(parts::add);
            }
        }
        if (parts.size() < block.children().size()) {
            throw Misread.told();
        }
        return or
                ? new Condition.One(ImmutableList.copyOf(parts), span)
                : new Condition.All(ImmutableList.copyOf(parts), span);
    }
}
