package org.keeplit.language;

import com.google.common.collect.ImmutableMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.keeplit.network.Equipment;
import org.keeplit.network.Phases;
import org.keeplit.network.Spacing;
import org.keeplit.unit.Quantity;

/**
 * The conductors and spacings of the equipment lists that a network uses; of several with one name the first counts.
 *
 * @param conductors the conductors by name, each with its figures
 * @param spacings the spacings by name, in the order of the files
 */
record Wires(
        ImmutableMap<String, ImmutableMap<String, Quantity>> conductors, ImmutableMap<String, Spacing> spacings) {
    static Wires of(Iterable<Equipment> lists) {
        Map<String, ImmutableMap<String, Quantity>> conductors = new LinkedHashMap<>();
        Map<String, Spacing> spacings = new LinkedHashMap<>();
        for (Equipment list : lists) {
            list.conductors().forEach(conductors::putIfAbsent);
            list.spacings().forEach(spacings::putIfAbsent);
        }
        return new Wires(ImmutableMap.copyOf(conductors), ImmutableMap.copyOf(spacings));
    }

    /** {@return the spacing of an overhead line that names none: the first with exactly its phases} */
    Optional<String> usual(Phases phases) {
        return spacings.values().stream()
                .filter(s -> s.phases().equals(phases.and(Phases.ABC))
                        && s.conductors().containsAll(phases))
                .map(Spacing::name)
                .findFirst();
    }
}
