package org.keeplit.language;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.keeplit.condition.Condition;
import org.keeplit.condition.Figure;
import org.keeplit.condition.Measure;
import org.keeplit.condition.Term;
import org.keeplit.text.Problem;
import org.keeplit.text.Span;
import org.keeplit.unit.Dimension;

/** Reads comparisons of figures, such as {@code is at most 80 % of the continuous rating of J}. */
final class ComparisonReader {
    private static final ImmutableMap<List<String>, Condition.Comparison> WORDS = ImmutableMap.of(
            List.of("at", "most"), Condition.Comparison.AT_MOST,
            List.of("at", "least"), Condition.Comparison.AT_LEAST,
            List.of("below"), Condition.Comparison.BELOW,
            List.of("above"), Condition.Comparison.ABOVE);

    /** What people write for a comparison in other words, and what it reads here. */
    private static final ImmutableMap<List<String>, String> OTHER_WORDS = ImmutableMap.<List<String>, String>builder()
            .put(List.of("is", "not", "at", "most"), "is above")
            .put(List.of("is", "not", "at", "least"), "is below")
            .put(List.of("is", "not", "below"), "is at least")
            .put(List.of("is", "not", "above"), "is at most")
            .put(List.of("is", "not", "more", "than"), "is at most")
            .put(List.of("is", "not", "less", "than"), "is at least")
            .put(List.of("is", "no", "more", "than"), "is at most")
            .put(List.of("is", "no", "less", "than"), "is at least")
            .put(List.of("is", "less", "than"), "is below")
            .put(List.of("is", "under"), "is below")
            .put(List.of("is", "more", "than"), "is above")
            .put(List.of("is", "greater", "than"), "is above")
            .put(List.of("is", "over"), "is above")
            .put(List.of("exceeds"), "is above")
            .put(List.of("is", "not", "between"), "is below … or is above")
            .buildOrThrow();

    private final Scope scope;
    private final FigureReader figures;

    ComparisonReader(Scope scope) {
        this.scope = scope;
        this.figures = new FigureReader(scope);
    }

    /** {@return whether a comparison stands here: it starts with a figure, or compares what was meant as one} */
    boolean starts(Cursor cursor) {
        if (figures.starts(cursor)) {
            return true;
        }
        for (int ahead = 0; cursor.peek(ahead) != null; ahead++) {
            if (cursor.sees(ahead, "and") || cursor.sees(ahead, "or") || cursor.sees(ahead, ",")) {
                return false;
            }
            if (cursor.sees(ahead, "is") && comparesAfter(cursor, ahead + 1)) {
                return true;
            }
        }
        return false;
    }

    private static boolean comparesAfter(Cursor cursor, int ahead) {
        if (cursor.sees(ahead, "between")) {
            return true;
        }
        return WORDS.keySet().stream().anyMatch(words -> {
            for (int i = 0; i < words.size(); i++) {
                if (!cursor.sees(ahead + i, words.get(i))) {
                    return false;
                }
            }
            return true;
        });
    }

    /** {@return the figure that is asked about} */
    Figure subject(Cursor cursor) {
        return figures.read(cursor, "what is compared");
    }

    /** {@return whether a further comparison of the same figure stands so far ahead} */
    static boolean goesOn(Cursor cursor, int ahead) {
        return cursor.sees(ahead, "is") && comparesAfter(cursor, ahead + 1);
    }

    /** Reads {@code is at most FIGURE} and its like. */
    Condition said(Cursor cursor, Figure left, int start) {
        if (!goesOn(cursor, 0)) {
            throw new Misread(notCompared(cursor, left));
        }
        cursor.next("is");
        return compared(cursor, left, start);
    }

    /** Reads the comparison itself, without its verb: {@code at most FIGURE}, {@code between FIGURE and FIGURE}. */
    Condition compared(Cursor cursor, Figure left, int start) {
        if (cursor.take("between")) {
            return between(cursor, left, start);
        }
        for (var entry : WORDS.entrySet()) {
            if (cursor.take(entry.getKey().toArray(String[]::new))) {
                Figure right = other(cursor, left);
                return new Condition.Compare(left, entry.getValue(), right, cursor.from(start));
            }
        }
        throw cursor.unexpected("at most, at least, below, above or between");
    }

    private Condition between(Cursor cursor, Figure left, int start) {
        Figure low = other(cursor, left);
        cursor.expect("“and” and the upper figure", "and");
        Figure high = other(cursor, left);
        Span span = cursor.from(start);
        if (low instanceof Figure.Given a
                && high instanceof Figure.Given b
                && a.quantity().si() >= b.quantity().si()) {
            throw new Misread(Code.BAD_NUMBER
                    .at(low.span().to(high.span()), "nothing is between " + a + " and " + b)
                    .help("the lower figure comes first"));
        }
        return new Condition.All(
                ImmutableList.of(
                        new Condition.Compare(left, Condition.Comparison.AT_LEAST, low, span),
                        new Condition.Compare(left, Condition.Comparison.AT_MOST, high, span)),
                span);
    }

    /** {@return the figure that another is compared with, which must measure the same} */
    private Figure other(Cursor cursor, Figure left) {
        int start = cursor.index();
        Figure right = figures.read(
                cursor, "what " + left + " is compared with", Optional.of(left.dimension()));
        if (right.dimension() != left.dimension()) {
            throw new Misread(mismatch(left, right, cursor.words(start)));
        }
        if (cursor.sees(0, "on") && left instanceof Figure.Measured) {
            throw new Misread(cursor.problem(Code.LEFT_OVER, "phases stand right after what is measured")
                    .help("write: " + left + " on …, before “is”"));
        }
        return right;
    }

    private Problem mismatch(Figure left, Figure right, String written) {
        String other = right instanceof Figure.Given ? written : right.toString();
        Problem problem = Code.WRONG_DIMENSION.at(
                right.span(),
                left + " is " + left.dimension().phrase() + ", but " + other + " is "
                        + right.dimension().phrase());
        return meant(left, right, written).map(problem::help).orElse(problem);
    }

    /** {@return what was probably meant where two figures do not measure the same} */
    private Optional<String> meant(Figure left, Figure right, String written) {
        boolean loading = left instanceof Figure.Measured m && m.measure() == Measure.LOADING;
        if (loading && right.dimension() == Dimension.CURRENT) {
            Term of = ((Figure.Measured) left).of();
            return Optional.of("compare the current through " + of + ", or write a part of its rating in %");
        }
        if (right instanceof Figure.Given && right.dimension() == Dimension.RATIO) {
            return Optional.of(
                    left.dimension() == Dimension.VOLTAGE
                            ? "say of what: " + written + " of the nominal voltage of X"
                            : "say of what: " + written + " of the continuous rating of X");
        }
        if (right instanceof Figure.Given) {
            return Optional.of("write it in " + Figures.units(left.dimension()));
        }
        if (right instanceof Figure.Rated rated) {
            Set<String> fitting = scope.vocabulary().figures().names(rated.of().type(), left.dimension());
            return fitting.isEmpty()
                    ? Optional.empty()
                    : Optional.of(Suggestions.nearest(rated.name(), fitting)
                            .map(near -> "did you mean the " + near + " of " + rated.of() + "?")
                            .orElse(left.dimension().phrase() + " of it is its "
                                    + Suggestions.list(fitting, "or")));
        }
        return Optional.empty();
    }

    private static Problem notCompared(Cursor cursor, Figure left) {
        Lexeme here = cursor.need("is at most, is at least, is below, is above or is between");
        for (var other : OTHER_WORDS.entrySet()) {
            if (cursor.sees(other.getKey())) {
                int start = cursor.index();
                cursor.moveTo(start + other.getKey().size());
                return Code.UNKNOWN_COMPARISON
                        .at(cursor.from(start), "“" + cursor.words(start) + "” is no comparison")
                        .help("write “" + other.getValue() + "”");
            }
        }
        return Code.UNKNOWN_COMPARISON
                .at(here.span(), "“" + Cursor.clip(here.getText()) + "” does not say how " + left + " compares")
                .help("write is at most, is at least, is below, is above, or is between … and …");
    }
}
