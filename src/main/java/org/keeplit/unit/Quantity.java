package org.keeplit.unit;

import java.math.BigDecimal;
import java.math.MathContext;

/**
 * A number with what it measures, kept in SI units.
 *
 * @param si the value in the SI unit of the dimension
 * @param dimension what it measures
 */
public record Quantity(double si, Dimension dimension) {
    /**
     * {@return a quantity from a written number and unit}
     *
     * @param number the number
     * @param unit the unit
     */
    public static Quantity of(double number, Unit unit) {
        return new Quantity(number * unit.factor(), unit.dimension());
    }

    /**
     * {@return a plain number}
     *
     * @param number the number
     */
    public static Quantity number(double number) {
        return new Quantity(number, Dimension.NUMBER);
    }

    /** {@return the quantity as people write it, to four significant digits, such as {@code 12.47 kV}} */
    @Override
    public String toString() {
        double shown = si;
        String unit = dimension.si();
        if (dimension == Dimension.RATIO) {
            shown = si * 100;
        } else if (dimension == Dimension.TIME) {
            if (Math.abs(si) >= 60) {
                shown = si / 60;
                unit = "min";
            }
        } else if (dimension != Dimension.NUMBER && dimension != Dimension.ANGLE && dimension != Dimension.FREQUENCY) {
            double size = Math.abs(si);
            if (size >= 1e6 && dimension != Dimension.LENGTH) {
                shown = si / 1e6;
                unit = "M" + unit;
            } else if (size >= 1e3) {
                shown = si / 1e3;
                unit = "k" + unit;
            } else if (size > 0 && size < 0.1) {
                shown = si * 1e3;
                unit = "m" + unit;
            }
        }
        String number = new BigDecimal(shown).round(new MathContext(4)).stripTrailingZeros().toPlainString();
        return unit.isEmpty() ? number : number + " " + unit;
    }
}
