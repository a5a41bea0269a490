package org.keeplit.language;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.keeplit.condition.Condition;
import org.keeplit.condition.Figure;
import org.keeplit.language.grammar.Shapes;

/** Reads the clauses below a step. */
final class StepClauses {
    private final Work work;
    private final Scope scope;
    private final Node step;
    private final Optional<Figure> figure;
    private final List<Condition> requires = new ArrayList<>();
    private final List<Condition> expects = new ArrayList<>();
    private final List<String> records = new ArrayList<>();
    private final List<String> cautions = new ArrayList<>();
    private Condition limit;
    private String because;
    private String asOne;
    private boolean ordered;

    /**
     * A reader for the clauses of one step.
     *
     * @param figure what the step measures, if it measures
     */
    StepClauses(Work work, Scope scope, Node step, Optional<Figure> figure) {
        this.figure = figure;
        this.work = work;
        this.scope = scope;
        this.step = step;
    }

    /** Reads them all, each mistake by itself. @return this */
    StepClauses read() {
        for (Node clause : step.children()) {
            if (clause.readable()) {
                work.report().attempt(() -> clause(clause));
            }
        }
        return this;
    }

    private void clause(Node clause) {
        Line line = clause.line();
        switch (line.head().getText()) {
            case "requires" -> requires.add(condition(clause));
            case "expects" -> expects.add(condition(clause));
            case "records" -> records.add(text(line));
            case "caution" -> cautions.add(text(line));
            case "limit" -> limit(line);
            case "because" -> {
                once(because, line, "says why it is done");
                because = text(line);
            }
            case "as" -> {
                once(asOne, line, "is done as one");
                var parts = Shape.of(line, Shapes::asOneLine, "as one because \"…\"");
                asOne = ((Lexeme) parts.STRING().getSymbol()).value();
            }
            case "phases" -> {
                end(line, 3);
                ordered = true;
            }
            default -> end(line, 2);
        }
    }

    /** @throws Misread if a clause that counts once stands a second time */
    private static void once(String before, Line line, String what) {
        if (before != null) {
            throw new Misread(Code.DUPLICATE.at(line.head().span(), "the step " + what + " already").help("write both in one"));
        }
    }

    /** Checks that nothing follows the words of a clause that stands for itself, such as {@code read back}. */
    private static void end(Line line, int words) {
        Cursor cursor = Cursor.over(line);
        cursor.moveTo(words);
        cursor.finish("this clause");
    }

    private Condition condition(Node clause) {
        Cursor cursor = Cursor.over(clause.line());
        cursor.next("");
        return new ConditionReader(scope, work.report(), clause).read(cursor);
    }

    /** {@code limit at least 20 A}: a comparison of what the step measures. */
    private void limit(Line line) {
        Cursor cursor = Cursor.over(line);
        cursor.next("");
        Figure measured = figure.orElseThrow(() -> new Misread(Code.CLAUSE_ALONE
                .at(line.head().span(), "“limit” belongs below a step that measures something")
                .help("such as: east measures the current through J on P")));
        if (limit != null) {
            throw new Misread(Code.DUPLICATE
                    .at(line.head().span(), "the step has a limit already")
                    .help("write both in one: limit between 20 A and 200 A"));
        }
        limit = new ComparisonReader(scope).compared(cursor, measured, cursor.index());
        cursor.finish("the limit");
    }

    private static String text(Line line) {
        var parts = Shape.of(line, Shapes::textLine, line.head().getText() + " \"…\"");
        return ((Lexeme) parts.STRING().getSymbol()).value();
    }

    ImmutableList<Condition> requires() {
        return ImmutableList.copyOf(requires);
    }

    ImmutableList<Condition> expects() {
        return ImmutableList.copyOf(expects);
    }

    Optional<Condition> limit() {
        return Optional.ofNullable(limit);
    }

    ImmutableList<String> records() {
        return ImmutableList.copyOf(records);
    }

    ImmutableList<String> cautions() {
        return ImmutableList.copyOf(cautions);
    }

    Optional<String> because() {
        return Optional.ofNullable(because);
    }

    Optional<String> asOne() {
        return Optional.ofNullable(asOne);
    }

    boolean ordered() {
        return ordered;
    }
}
