package org.keeplit.plain;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.keeplit.condition.PhaseTerm;
import org.keeplit.network.Conductor;
import org.keeplit.network.Element;
import org.keeplit.network.Phases;
import org.keeplit.network.Side;
import org.keeplit.procedure.Action;
import org.keeplit.procedure.Block;

/** Which clamp of a jumper is the one on the source side: known from all places on which each of the two may be. */
final class WhereClampsAre {
    private final Names names;
    private final Map<String, Set<String>> places = new HashMap<>();

    /** @param atStart the place of each clamp that is on at the start */
    WhereClampsAre(Names names, Map<String, String> atStart) {
        this.names = names;
        atStart.forEach(this::may);
        names.bound().body().forEach(this::look);
    }

    private void may(String clamp, String place) {
        places.computeIfAbsent(clamp, c -> new HashSet<>()).add(place);
    }

    private void look(Block block) {
        if (block instanceof Block.Step step) {
            if (step.action() instanceof Action.Install i) {
                put(step, i.jumper().toString(), 1, i.first());
                put(step, i.jumper().toString(), 2, i.second());
            } else if (step.action() instanceof Action.Clamp c) {
                put(step, c.jumper().toString(), c.clamp(), c.spot());
            }
        } else if (block instanceof Block.Group group) {
            group.parts().forEach(this::look);
        } else if (block instanceof Block.Stage stage) {
            stage.parts().forEach(this::look);
        } else if (block instanceof Block.Repeat repeat) {
            repeat.parts().forEach(this::look);
        } else if (block instanceof Block.IfFound choice) {
            choice.then().forEach(this::look);
            choice.otherwise().forEach(this::look);
        }
    }

    private void put(Block.Step step, String jumper, int clamp, Action.Spot spot) {
        Phases has = names.bound().phasesOf(names.bound().temporary(jumper).orElseThrow().of());
        for (Conductor p : step.phases() instanceof PhaseTerm.Given given ? given.phases().and(has) : has) {
            Conductor there = spot.phase().isPresent() && spot.phase().get() instanceof PhaseTerm.Given g
                    ? g.phases().list().get(0)
                    : p;
            may(Names.clamp(jumper, p, clamp), names.vertex(spot.point(), there));
        }
    }

    /** {@return the number of the clamp on a side} @throws IllegalStateException if the files do not tell */
    int clampOn(String jumper, Conductor phase, Side side) {
        String device = names.bound().temporary(jumper).orElseThrow().of().toString();
        Map<String, Side> known = sides(device);
        for (int clamp = 1; clamp <= 2; clamp++) {
            Set<String> mine = places.getOrDefault(Names.clamp(jumper, phase, clamp), Set.of());
            Set<String> other = places.getOrDefault(Names.clamp(jumper, phase, 3 - clamp), Set.of());
            Side across = side == Side.SOURCE ? Side.LOAD : Side.SOURCE;
            if (allOn(mine, side, known) && allOn(other, across, known)) {
                return clamp;
            }
        }
        throw new IllegalStateException("nobody knows which clamp of " + jumper + " is on the " + side.word() + " side");
    }

    private static boolean allOn(Set<String> places, Side side, Map<String, Side> known) {
        return !places.isEmpty() && places.stream().allMatch(place -> known.get(place) == side);
    }

    /** {@return the side of each place that is on one side of a device only, with that device out of the network in its normal state} */
    private Map<String, Side> sides(String device) {
        Element.Branch out = (Element.Branch) names.element(device);
        Map<String, Side> all = new HashMap<>();
        for (Conductor p : out.phases()) {
            Set<String> source = reach(out, out.from(), p);
            Set<String> load = reach(out, out.to(), p);
            source.stream().filter(n -> !load.contains(n)).forEach(n -> all.put(n, Side.SOURCE));
            load.stream().filter(n -> !source.contains(n)).forEach(n -> all.put(n, Side.LOAD));
            all.put(Names.node(out.from(), p), Side.SOURCE);
            all.put(Names.node(out.to(), p), Side.LOAD);
            for (Side side : Side.values()) {
                all.put(Names.bushing(device, side, p), side);
                all.put(Names.lead(device, side, p), side);
            }
        }
        return all;
    }

    private Set<String> reach(Element.Branch out, String from, Conductor p) {
        List<Element.Branch> joining = new ArrayList<>();
        for (Element element : names.bound().network().elements()) {
            boolean closed = element instanceof Element.Device d && d.closed().contains(p)
                    || element instanceof Element.Line && element.phases().contains(p)
                    || element instanceof Element.Regulator && element.phases().contains(p);
            if (closed && !element.name().equals(out.name())) {
                joining.add((Element.Branch) element);
            }
        }
        Set<String> nodes = new HashSet<>(Set.of(from));
        boolean more = true;
        while (more) {
            more = false;
            for (Element.Branch b : joining) {
                if (nodes.contains(b.from()) != nodes.contains(b.to())) {
                    nodes.add(b.from());
                    nodes.add(b.to());
                    more = true;
                }
            }
        }
        Set<String> all = new HashSet<>();
        nodes.forEach(n -> all.add(Names.node(n, p)));
        names.bound().network().all(Element.Device.class).filter(d -> !d.name().equals(out.name())).forEach(d -> {
            for (Side side : Side.values()) {
                if (nodes.contains(d.node(side))) {
                    all.add(Names.lead(d.name(), side, p));
                    all.add(Names.bushing(d.name(), side, p));
                }
            }
        });
        return all;
    }
}
