package org.keeplit.language;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.keeplit.text.Span;
import org.keeplit.unit.Dimension;
import org.keeplit.unit.Quantity;
import org.keeplit.unit.Unit;

/** Numbers with units. A unit is one only right after a number. */
final class Figures {
    private Figures() {}

    /**
     * Reads a quantity.
     *
     * @param cursor at the number
     * @param dimension what it should measure
     * @param what what it is, for messages, such as {@code the length}
     */
    static Quantity read(Cursor cursor, Dimension dimension, String what) {
        int start = cursor.index();
        Lexeme number = cursor.next(what);
        if (!number.isNumber()) {
            throw new Misread(Code.UNEXPECTED
                    .at(number.span(), what + " is a number, not “" + Cursor.clip(number.getText()) + "”")
                    .help("write " + example(dimension)));
        }
        double value = Double.parseDouble(number.getText());
        if (Double.isInfinite(value)) {
            throw new Misread(Code.BAD_NUMBER.at(number.span(), "this number is too large"));
        }
        if (dimension == Dimension.NUMBER) {
            return Quantity.number(value);
        }
        Unit unit = unit(cursor, number, dimension, what);
        if (unit.dimension() != dimension) {
            Span span = cursor.from(start);
            throw new Misread(Code.WRONG_DIMENSION
                    .at(
                            span,
                            what + " is " + dimension.phrase() + ", but " + cursor.words(start) + " is "
                                    + unit.dimension().phrase())
                    .help("write it in " + units(dimension)));
        }
        return Quantity.of(value, unit);
    }

    /** {@return the quantity, which must be more than nothing} */
    static Quantity positive(Cursor cursor, Dimension dimension, String what) {
        int start = cursor.index();
        Quantity quantity = read(cursor, dimension, what);
        if (quantity.si() <= 0) {
            throw new Misread(Code.BAD_NUMBER.at(
                    cursor.from(start), what + " must be more than zero, not " + cursor.words(start)));
        }
        return quantity;
    }

    /** Like {@link #positive(Cursor, Dimension, String)}; the name of a rulebook's parameter may stand for it. */
    static Quantity positive(Cursor cursor, Dimension dimension, String what, Scope scope) {
        Lexeme here = cursor.peek(0);
        Quantity setting = here == null || here.isText() ? null : scope.settings().get(here.getText());
        if (setting == null) {
            return positive(cursor, dimension, what);
        }
        cursor.next("");
        if (setting.dimension() != dimension) {
            throw new Misread(Code.WRONG_DIMENSION.at(
                    here.span(),
                    what + " is " + dimension.phrase() + ", but " + here.getText() + " is "
                            + setting.dimension().phrase()));
        }
        return setting;
    }

    /** {@return a whole number from 1 to a limit} */
    static int count(Lexeme number, int most, String what) {
        String digits = number.getText();
        if (!number.isNumber() || digits.length() > 9 || !digits.chars().allMatch(Character::isDigit)) {
            throw new Misread(
                    Code.BAD_NUMBER.at(number.span(), what + " is a whole number, not “" + Cursor.clip(digits) + "”"));
        }
        int count = Integer.parseInt(digits);
        if (count < 1 || count > most) {
            throw new Misread(
                    Code.BAD_NUMBER.at(number.span(), what + " must be from 1 to " + most + ", not " + count));
        }
        return count;
    }

    /** {@return the unit here, if a known one stands right after a number} */
    static Optional<Unit> peekUnit(Cursor cursor, int ahead) {
        Lexeme here = cursor.peek(ahead);
        return here == null || here.isText() ? Optional.empty() : Unit.of(here.getText());
    }

    private static Unit unit(Cursor cursor, Lexeme number, Dimension dimension, String what) {
        Optional<Unit> unit = peekUnit(cursor, 0);
        if (unit.isPresent()) {
            cursor.next("the unit");
            return unit.get();
        }
        String options = units(dimension);
        Lexeme written = cursor.peek(0);
        if (written == null || !written.isName() || written.isText()) {
            throw new Misread(Code.MISSING_UNIT
                    .at(number.span(), what + " has no unit: “" + number.getText() + "”")
                    .help("write it in " + options));
        }
        throw new Misread(Code.UNKNOWN_UNIT
                .at(written.span(), "“" + Cursor.clip(written.getText()) + "” is no unit")
                .help(Suggestions.didYouMean(written.getText(), symbols(dimension))
                        .orElse("write it in " + options)));
    }

    /** {@return the units in which a dimension is written, for advice} */
    static String units(Dimension dimension) {
        return Suggestions.list(symbols(dimension), "or");
    }

    private static List<String> symbols(Dimension dimension) {
        List<String> all = new ArrayList<>();
        for (String symbol : Unit.symbols()) {
            if (Unit.of(symbol).orElseThrow().dimension() == dimension) {
                all.add(symbol);
            }
        }
        return all;
    }

    private static String example(Dimension dimension) {
        return dimension == Dimension.NUMBER ? "a number such as 3" : "it such as 12 " + dimension.si();
    }
}
