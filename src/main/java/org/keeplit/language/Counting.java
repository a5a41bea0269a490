package org.keeplit.language;

import java.util.List;
import java.util.Optional;
import org.keeplit.condition.Condition;
import org.keeplit.text.Span;
import org.keeplit.unit.Dimension;
import org.keeplit.unit.Quantity;

/**
 * How a quantifier counts: {@code every}, {@code some}, {@code no}, or a number with {@code at least}, {@code at
 * most} or {@code exactly} before it.
 *
 * @param quantifier one of the first three, or null
 * @param least how many at least
 * @param most how many at most
 * @param span where it stands
 */
record Counting(Condition.Quantifier quantifier, int least, int most, Span span) {
    private static final int MOST = 1000;
    private static final List<String> NUMBERS = List.of(
            "zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve");

    /** {@return the counting here, moved past; nothing if none stands here} */
    static Optional<Counting> read(Cursor cursor, Scope scope) {
        Lexeme here = cursor.peek(0);
        if (here == null || here.isText()) {
            return Optional.empty();
        }
        int start = cursor.index();
        for (Condition.Quantifier quantifier : Condition.Quantifier.values()) {
            if (cursor.take(quantifier.name().toLowerCase(java.util.Locale.ROOT))) {
                return Optional.of(new Counting(quantifier, 0, 0, here.span()));
            }
        }
        if (cursor.take("at", "least")) {
            return Optional.of(new Counting(null, number(cursor, scope), Integer.MAX_VALUE, cursor.from(start)));
        } else if (cursor.take("at", "most")) {
            return Optional.of(new Counting(null, 0, number(cursor, scope), cursor.from(start)));
        } else if (cursor.take("exactly")) {
            int many = number(cursor, scope);
            return Optional.of(new Counting(null, many, many, cursor.from(start)));
        }
        return Optional.empty();
    }

    /** {@return a number in digits, in a word, or by the name of a rulebook's parameter} */
    private static int number(Cursor cursor, Scope scope) {
        Lexeme here = cursor.next("a number");
        int word = here.isText() ? -1 : NUMBERS.indexOf(here.getText());
        if (word > 0) {
            return word;
        }
        Quantity setting = here.isText() ? null : scope.settings().get(here.getText());
        if (setting != null) {
            double value = setting.si();
            if (setting.dimension() != Dimension.NUMBER || value != Math.rint(value) || value < 1 || value > MOST) {
                throw new Misread(Code.WRONG_DIMENSION.at(
                        here.span(), here.getText() + " is " + setting + ", and a whole number counts"));
            }
            return (int) value;
        }
        if (!here.isNumber()) {
            throw new Misread(Code.BAD_NUMBER
                    .at(here.span(), "“" + Cursor.clip(here.getText()) + "” stands where a number should")
                    .help(Suggestions.didYouMean(here.getText(), NUMBERS.subList(1, NUMBERS.size()))
                            .orElse("numbers are words from one to twelve, or digits")));
        }
        return Figures.count(here, MOST, "the number");
    }

    /** {@return the condition} */
    Condition of(Condition.Binder binder, Condition body, Span whole) {
        return quantifier != null
                ? new Condition.Quantified(quantifier, binder, body, whole)
                : new Condition.Counted(least, most, binder, body, whole);
    }
}
