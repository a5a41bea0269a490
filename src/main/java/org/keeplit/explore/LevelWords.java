package org.keeplit.explore;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.keeplit.electric.Analysis;
import org.keeplit.electric.Grid;
import org.keeplit.electric.Level;
import org.keeplit.network.Conductor;
import org.keeplit.program.Vertex;

/** Says where voltage comes and goes between two states. */
final class LevelWords {
    /** How many places are named before the rest is only counted. */
    private static final int NAMED = 4;

    private LevelWords() {}

    /** {@return which line conductors came alive or went dead, by phase} */
    static List<String> changes(Grid grid, Analysis was, Analysis is) {
        Map<Conductor, List<String>> dead = new EnumMap<>(Conductor.class);
        Map<Conductor, List<String>> alive = new EnumMap<>(Conductor.class);
        List<Vertex> vertices = grid.vertices();
        for (int i = 0; i < vertices.size(); i++) {
            if (!(vertices.get(i) instanceof Vertex.AtNode node)) {
                continue;
            }
            Level old = was.level(i);
            Level now = is.level(i);
            if (old.isAlive() != now.isAlive()) {
                (now.isAlive() ? alive : dead)
                        .computeIfAbsent(node.conductor(), c -> new ArrayList<>())
                        .add(node.node());
            }
        }
        List<String> all = new ArrayList<>();
        dead.forEach((phase, nodes) -> all.add("phase " + phase + " goes dead at " + some(nodes)));
        alive.forEach((phase, nodes) -> all.add("phase " + phase + " comes alive at " + some(nodes)));
        return all;
    }

    private static String some(List<String> names) {
        int more = names.size() - NAMED;
        String head = String.join(", ", names.subList(0, Math.min(NAMED, names.size())));
        return more > 0 ? head + " and " + more + " more" : head;
    }
}
