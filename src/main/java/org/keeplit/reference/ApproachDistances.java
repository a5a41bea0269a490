package org.keeplit.reference;

import com.google.common.collect.ImmutableList;
import java.util.List;
import java.util.NoSuchElementException;
import java.util.OptionalDouble;

/** Minimum approach distances of 29 CFR 1910.269 for alternating current up to 72.5 kV, in metres. */
public final class ApproachDistances {
    /** To what the distance is kept. */
    public enum Exposure {
        /** A part at line voltage, seen from ground. */
        PHASE_TO_GROUND,
        /** A part of another phase. */
        PHASE_TO_PHASE
    }

    /**
     * How height is counted in. The regulation knows both, and above 900 m they differ: whoever prints a distance says which it is.
     */
    public enum Method {
        /** Table R-3: M + A x D. */
        FORMULA,
        /** The footnote of table R-6: A times the whole distance. */
        TABLE
    }

    private record Row(double above, double upTo, double movement, double ground, double phase, double r6Ground, double r6Phase) {}

    private record Step(double upTo, double factor) {}

    private static final ImmutableList<Row> ROWS = Table.rows("approach-distances.csv").stream()
            .map(ApproachDistances::numbers)
            .map(n -> new Row(n[0], n[1], n[2], n[3], n[4], n[5], n[6]))
            .collect(ImmutableList.toImmutableList());
    private static final ImmutableList<Step> STEPS = Table.rows("altitude-factors.csv").stream()
            .map(ApproachDistances::numbers)
            .map(n -> new Step(n[0], n[1]))
            .collect(ImmutableList.toImmutableList());

    private ApproachDistances() {}

    private static double[] numbers(List<String> row) {
        return row.stream().mapToDouble(Double::parseDouble).toArray();
    }

    /**
     * {@return the distance in metres}
     *
     * @param kilovolts the nominal voltage, phase to phase; more than 0.3
     * @param metres the height above the sea
     */
    public static double metres(double kilovolts, Exposure exposure, double metres, Method method) {
        Row row = ROWS.stream()
                .filter(r -> kilovolts > r.above && kilovolts <= r.upTo)
                .findFirst()
                .orElseThrow(() -> new NoSuchElementException("no distance in the table for " + kilovolts + " kV"));
        boolean ground = exposure == Exposure.PHASE_TO_GROUND;
        double factor = altitudeFactor(metres);
        return method == Method.FORMULA
                // Below 5.1 kV table R-3 has no factor.
                ? row.movement + (row.upTo > 5 ? factor : 1) * (ground ? row.ground : row.phase)
                : factor * (ground ? row.r6Ground : row.r6Phase);
    }

    /**
     * {@return the distance of table R-6 in metres, by its footnote above 900 m; none for what the table does not have}
     *
     * @param kilovolts the nominal voltage, phase to phase
     * @param metres the height above the sea
     */
    public static OptionalDouble table(double kilovolts, Exposure exposure, double metres) {
        try {
            return OptionalDouble.of(metres(kilovolts, exposure, metres, Method.TABLE));
        } catch (NoSuchElementException outsideTheTable) {
            return OptionalDouble.empty();
        }
    }

    /** {@return the factor A of table R-5 at that height in metres} */
    public static double altitudeFactor(double metres) {
        return STEPS.stream()
                .filter(s -> metres <= s.upTo)
                .findFirst()
                .orElseThrow(() -> new NoSuchElementException("no factor in the table for " + metres + " m"))
                .factor;
    }
}
