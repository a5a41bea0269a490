package org.keeplit.program;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.keeplit.network.Conductor;
import org.keeplit.network.Element;
import org.keeplit.network.Trait;
import org.keeplit.procedure.Block;
import org.keeplit.procedure.Bound;

/** Puts a program together from its acts and their orders. */
final class Assembly {
    private Assembly() {}

    /**
     * What the acts of a program speak of.
     *
     * @param sites the structures where people may go up
     * @param spots for each clamp the places where it may be
     * @param outcomes for each inspection its outcomes
     * @param heldAt for each hold or clearance the devices named when it is issued
     */
    record Things(
            Set<String> sites,
            Map<FieldKey.Clamp, List<Vertex>> spots,
            Map<String, List<String>> outcomes,
            ImmutableMap<String, ImmutableList<String>> heldAt) {}

    static Program of(
            Bound bound,
            StartValues start,
            Plan plan,
            int numbered,
            List<Act> acts,
            List<Block.Step> steps,
            Things things,
            Set<String> armed) {
        Orders orders = Orders.of(plan, numbered);
        Layout.Builder layout = new Layout.Builder();
        start.values().forEach(layout::initial);
        Footprint footprint = new Footprint(bound, layout, things.spots, things.sites, things.outcomes);
        acts.forEach(act -> {
            act.primitives().forEach(footprint::add);
            act.step().records().forEach(item -> layout.changes(new FieldKey.Recorded(item), 2));
        });
        ImmutableList<Reaction> reactions = reactions(bound, armed);
        reactions.forEach(reaction -> footprint.add(reaction, acts.size()));
        return new Program(
                bound,
                ImmutableList.copyOf(acts),
                ImmutableList.copyOf(steps),
                plan,
                numbered,
                orders,
                layout.build(orders.bits()),
                start,
                ImmutableList.copyOf(things.sites),
                copyOf(things.spots),
                copyOf(things.outcomes),
                reactions,
                things.heldAt);
    }

    /** {@return a program with other acts in other orders} */
    static Program again(Program program, Plan plan, List<Act> acts, List<Block.Step> steps) {
        Set<String> armed = program.reactions().stream()
                .map(r -> r.device().name())
                .collect(Collectors.toCollection(LinkedHashSet::new));
        return again(program, plan, acts, steps, armed);
    }

    static Program again(Program program, Plan plan, List<Act> acts, List<Block.Step> steps, Set<String> armed) {
        Map<FieldKey.Clamp, List<Vertex>> spots = new LinkedHashMap<>();
        program.spots().forEach((clamp, places) -> spots.put(clamp, new ArrayList<>(places)));
        Set<String> sites = new LinkedHashSet<>(program.sites());
        for (Act act : acts) {
            for (Primitive primitive : act.primitives()) {
                if (primitive instanceof Primitive.MoveClamp move && move.spot() != null) {
                    FieldKey.Clamp clamp = new FieldKey.Clamp(move.family(), move.phase(), move.clamp());
                    List<Vertex> places = spots.computeIfAbsent(clamp, k -> new ArrayList<>());
                    if (!places.contains(move.spot())) {
                        places.add(move.spot());
                    }
                } else if (primitive instanceof Primitive.GoUp go) {
                    sites.add(go.site());
                }
            }
        }
        Map<String, List<String>> outcomes = new LinkedHashMap<>(program.outcomesOf());
        return of(
                program.bound(),
                program.start(),
                plan,
                program.numbered(),
                acts,
                steps,
                new Things(sites, spots, outcomes, program.heldAt()),
                armed);
    }

    private static ImmutableList<Reaction> reactions(Bound bound, Set<String> armed) {
        List<Reaction> all = new ArrayList<>();
        bound.network().all(Element.Device.class).filter(d -> armed.contains(d.name())).forEach(device -> {
            List<Conductor> units = Pickups.units(device);
            for (Reaction.Kind kind : kinds(device)) {
                List<Conductor> each = kind.isOfUnit() ? units : units.subList(0, 1);
                each.forEach(u -> all.add(new Reaction(all.size(), kind, device, u)));
            }
        });
        return ImmutableList.copyOf(all);
    }

    private static List<Reaction.Kind> kinds(Element.Device device) {
        List<Reaction.Kind> all = new ArrayList<>();
        if (Pickups.trips(device) && Pickups.phase(device).isPresent()) {
            all.add(Reaction.Kind.PHASE_TRIP);
        }
        if (Pickups.trips(device) && Pickups.ground(device).isPresent()) {
            all.add(Reaction.Kind.GROUND_TRIP);
        }
        if (Pickups.trips(device) && device.kind().recloses()) {
            all.add(Reaction.Kind.RECLOSE);
        }
        if (device.kind().has(Trait.RESTORES)) {
            all.add(Reaction.Kind.RESTORE);
        }
        if (device.kind().has(Trait.SELF_SWITCHING)) {
            all.add(Reaction.Kind.CONTROL_OPEN);
            all.add(Reaction.Kind.CONTROL_CLOSE);
        }
        return all;
    }

    private static <K, V> ImmutableMap<K, ImmutableList<V>> copyOf(Map<K, List<V>> lists) {
        ImmutableMap.Builder<K, ImmutableList<V>> all = ImmutableMap.builder();
        lists.forEach((key, list) -> all.put(key, ImmutableList.copyOf(list)));
        return all.build();
    }
}
