package org.keeplit.language;

import com.google.common.collect.ImmutableMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.keeplit.network.Equipment;
import org.keeplit.network.Kind;
import org.keeplit.network.Phases;
import org.keeplit.network.Spacing;
import org.keeplit.unit.Quantity;

/**
 * What the equipment lists that a network uses declare, each under a name of its own.
 *
 * @param kinds the kinds of equipment by name
 * @param conductors the conductors by name, each with its figures
 * @param spacings the spacings by name, in the order of the files
 */
record Wires(
        ImmutableMap<String, Kind> kinds,
        ImmutableMap<String, ImmutableMap<String, Quantity>> conductors, ImmutableMap<String, Spacing> spacings) {
    /** {@return what some lists declare} @param lists the lists @param report is told of what two of them declare */
    static Wires of(List<Equipment> lists, Lexeme network, Report report) {
        Map<String, Kind> kinds = new LinkedHashMap<>();
        Map<String, ImmutableMap<String, Quantity>> conductors = new LinkedHashMap<>();
        Map<String, Spacing> spacings = new LinkedHashMap<>();
        for (Equipment list : lists) {
            list.kinds().forEach((name, kind) -> take("kind", name, kind, list, lists, kinds, network, report));
            list.conductors().forEach((name, wire) -> take("conductor", name, wire, list, lists, conductors, network, report));
            list.spacings().forEach((name, spacing) -> take("spacing", name, spacing, list, lists, spacings, network, report));
        }
        return new Wires(ImmutableMap.copyOf(kinds), ImmutableMap.copyOf(conductors), ImmutableMap.copyOf(spacings));
    }

    private static <T> void take(
            String what,
            String name,
            T thing,
            Equipment list,
            List<Equipment> lists,
            Map<String, T> into,
            Lexeme network,
            Report report) {
        if (into.putIfAbsent(name, thing) == null) {
            return;
        }
        Equipment first = lists.stream().filter(l -> declares(l, what, name)).findFirst().orElseThrow();
        report.add(Code.TWO_READINGS
                .at(network.span(), "the network uses two equipment lists that declare a " + what + " " + name + ": "
                        + first.name() + " and " + list.name())
                .related(list.span(), "one of the two lists")
                .help("rename one of them, or use one list only"));
    }

    private static boolean declares(Equipment list, String what, String name) {
        return switch (what) {
            case "kind" -> list.kinds().containsKey(name);
            case "conductor" -> list.conductors().containsKey(name);
            default -> list.spacings().containsKey(name);
        };
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
