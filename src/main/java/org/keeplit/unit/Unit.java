package org.keeplit.unit;

import com.google.common.collect.ImmutableMap;
import java.util.Optional;

/**
 * A unit as files write it. Case counts: {@code mohm} is not {@code Mohm}.
 *
 * @param symbol the written form
 * @param dimension what it measures
 * @param factor how many SI units one of it is
 */
public record Unit(String symbol, Dimension dimension, double factor) {
    private static final ImmutableMap<String, Unit> KNOWN = build();

    private static ImmutableMap<String, Unit> build() {
        ImmutableMap.Builder<String, Unit> all = ImmutableMap.builder();
        put(all, Dimension.CURRENT, "mA", 1e-3, "A", 1, "kA", 1e3);
        put(all, Dimension.VOLTAGE, "mV", 1e-3, "V", 1, "kV", 1e3);
        put(all, Dimension.IMPEDANCE, "mohm", 1e-3, "ohm", 1, "kohm", 1e3, "Mohm", 1e6);
        put(all, Dimension.ADMITTANCE, "uS", 1e-6, "mS", 1e-3, "S", 1);
        put(all, Dimension.ACTIVE_POWER, "W", 1, "kW", 1e3, "MW", 1e6);
        put(all, Dimension.REACTIVE_POWER, "var", 1, "kvar", 1e3, "Mvar", 1e6);
        put(all, Dimension.APPARENT_POWER, "VA", 1, "kVA", 1e3, "MVA", 1e6);
        // The international foot and statute mile are exact.
        put(all, Dimension.LENGTH, "mm", 1e-3, "cm", 1e-2, "m", 1, "km", 1e3, "ft", 0.3048, "mi", 1609.344);
        put(all, Dimension.TIME, "ms", 1e-3, "s", 1, "min", 60, "h", 3600);
        put(all, Dimension.FREQUENCY, "Hz", 1);
        put(all, Dimension.ANGLE, "degrees", 1, "degree", 1);
        put(all, Dimension.RATIO, "%", 1e-2);
        return all.build();
    }

    private static void put(ImmutableMap.Builder<String, Unit> all, Dimension dimension, Object... pairs) {
        for (int i = 0; i < pairs.length; i += 2) {
            String symbol = (String) pairs[i];
            all.put(symbol, new Unit(symbol, dimension, ((Number) pairs[i + 1]).doubleValue()));
        }
    }

    /**
     * {@return the unit with that symbol, if there is one}
     *
     * @param symbol the written form, case included
     */
    public static Optional<Unit> of(String symbol) {
        return Optional.ofNullable(KNOWN.get(symbol));
    }

    /** {@return all symbols, in a fixed order} */
    public static Iterable<String> symbols() {
        return KNOWN.keySet();
    }
}
