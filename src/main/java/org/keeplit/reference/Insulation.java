package org.keeplit.reference;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.Iterables;

/**
 * What a test of insulation resistance should show.
 *
 * @param rating the nominal rating in volts that the row stands for
 * @param testVoltage volts, direct current
 * @param megohms the least resistance
 */
public record Insulation(double rating, double testVoltage, double megohms) {
    private static final ImmutableList<Insulation> ROWS = Table.rows("insulation-resistance.csv").stream()
            .map(r -> new Insulation(
                    Double.parseDouble(r.get(0)), Double.parseDouble(r.get(1)), Double.parseDouble(r.get(2))))
            .collect(ImmutableList.toImmutableList());

    /** {@return the first row whose rating is at least that many volts; above the table its last one} */
    public static Insulation of(double volts) {
        return ROWS.stream().filter(r -> volts <= r.rating).findFirst().orElseGet(() -> Iterables.getLast(ROWS));
    }
}
