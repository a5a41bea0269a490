package org.keeplit.electric.line;

import com.google.common.collect.ImmutableMap;
import java.util.Optional;

/**
 * Conductors of the IEEE PES distribution test feeders, from the conductor data of those feeders.
 * Entries from memory are marked; those that a printed matrix of the 13-node or 34-node feeder
 * depends on are checked against it in the tests.
 */
public final class ConductorTable {
    private static final ImmutableMap<String, Conductor> CONDUCTORS = table(
            new Conductor("556.5 26/7 ACSR", 0.1859, 0.0313, 0.927),
            // From memory: resistance, radius and diameter.
            new Conductor("477 26/7 ACSR", 0.216, 0.0290, 0.858),
            new Conductor("336.4 26/7 ACSR", 0.306, 0.0244, 0.721),
            new Conductor("4/0 6/1 ACSR", 0.592, 0.00814, 0.563),
            // Diameter from memory; printed matrices agree with the whole row.
            new Conductor("1/0 6/1 ACSR", 1.12, 0.00446, 0.398),
            new Conductor("#2 6/1 ACSR", 1.69, 0.00418, 0.316),
            // Resistance and diameter from memory, radius from the printed matrix of configuration 302,
            // which agrees with the resistance.
            new Conductor("#4 6/1 ACSR", 2.57, 0.00437, 0.250),
            // From memory, the phase conductors of the two cable configurations and the neutral of the
            // second; printed matrices agree.
            new Conductor("250 AA", 0.41, 0.0171, 0.567),
            new Conductor("1/0 AA", 0.97, 0.0111, 0.368),
            new Conductor("1/0 Cu", 0.607, 0.01113, 0.368));

    private ConductorTable() {}

    private static ImmutableMap<String, Conductor> table(Conductor... conductors) {
        ImmutableMap.Builder<String, Conductor> map = ImmutableMap.builder();
        for (Conductor conductor : conductors) {
            map.put(conductor.name(), conductor);
        }
        return map.buildOrThrow();
    }

    /**
     * Finds a conductor.
     *
     * @param name such as "4/0 6/1 ACSR"
     * @return empty if the table does not have it
     */
    public static Optional<Conductor> find(String name) {
        return Optional.ofNullable(CONDUCTORS.get(name));
    }

    /**
     * The names of the table.
     *
     * @return in the table's order
     */
    public static Iterable<String> names() {
        return CONDUCTORS.keySet();
    }
}
