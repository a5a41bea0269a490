package org.keeplit.reference;

import com.google.common.collect.ImmutableList;

/**
 * What a standard asks of the discharge resistors of a capacitor unit above 600 V.
 *
 * @param volts what may be left
 * @param minutes after that time
 */
public record Discharge(String standard, double volts, double minutes) {
    private static final ImmutableList<Discharge> ALL = Table.rows("capacitor-discharge.csv").stream()
            .map(r -> new Discharge(r.get(0), Double.parseDouble(r.get(1)), Double.parseDouble(r.get(2))))
            .collect(ImmutableList.toImmutableList());

    /** {@return all that are known} */
    public static ImmutableList<Discharge> all() {
        return ALL;
    }

    /** {@return the most that is left after so many minutes of what was trapped at the peak of so many volts} */
    public double left(double peak, double after) {
        return peak * Math.pow(volts / peak, after / minutes);
    }
}
