package org.keeplit.explore;

import com.google.common.collect.ImmutableList;
import org.keeplit.electric.Analysis;
import org.keeplit.electric.Level;
import org.keeplit.network.Conductor;
import org.keeplit.network.Element;
import org.keeplit.network.Phases;
import org.keeplit.outcome.TraceStep;
import org.keeplit.program.Vertex;

/** Who has supply. */
final class Supply {
    private Supply() {}

    /** {@return the loads that had supply on a phase and have it no more} */
    static ImmutableList<TraceStep.Lost> lost(World world, Analysis was, Analysis is) {
        ImmutableList.Builder<TraceStep.Lost> all = ImmutableList.builder();
        world.bound().network().all(Element.Load.class).forEach(load -> {
            Phases phases = Phases.NONE;
            for (Conductor phase : load.phases()) {
                int vertex = vertex(world, load, phase);
                if (was.level(vertex) == Level.ENERGIZED && is.level(vertex) != Level.ENERGIZED) {
                    phases = phases.or(Phases.of(phase));
                }
            }
            if (!phases.isEmpty()) {
                all.add(new TraceStep.Lost(load.name(), load.customers(), phases.toString(), load.critical().orElse("")));
            }
        });
        return all.build();
    }

    /** {@return how many customers lack supply on some phase} */
    static int without(World world, Analysis now) {
        return world.bound().network().all(Element.Load.class)
                .filter(load -> load.phases().list().stream().anyMatch(p -> now.level(vertex(world, load, p)) != Level.ENERGIZED))
                .mapToInt(Element.Load::customers)
                .sum();
    }

    private static int vertex(World world, Element.Load load, Conductor phase) {
        return world.grid().number(new Vertex.AtNode(load.node(), phase)).orElseThrow();
    }
}
