package org.keeplit.language;

import org.keeplit.unit.Dimension;
import org.keeplit.unit.Quantity;
import org.keeplit.unit.Unit;

/** Figures for a length of line, such as {@code 0.3 ohm per km}; they are kept for one metre. */
final class PerLength {
    private PerLength() {}

    /**
     * Reads a figure that is more than zero.
     *
     * @param cursor at the number
     * @param dimension what it measures, apart from the length
     * @param what what it is, for messages
     */
    static Quantity positive(Cursor cursor, Dimension dimension, String what) {
        Quantity quantity = Figures.positive(cursor, dimension, what);
        return new Quantity(quantity.si() / length(cursor), dimension);
    }

    /** {@return how many metres the length is for which the figure before was said} */
    static double length(Cursor cursor) {
        cursor.expect("“per” and a unit of length", "per");
        Lexeme unit = cursor.next("a unit of length");
        return Unit.of(unit.getText())
                .filter(u -> u.dimension() == Dimension.LENGTH)
                .orElseThrow(() -> new Misread(Code.UNKNOWN_UNIT
                        .at(unit.span(), "“" + Cursor.clip(unit.getText()) + "” is no unit of length")
                        .help("write per km, per m, per mi or per ft")))
                .factor();
    }
}
