package org.keeplit.electric;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.ShrinkingMode;
import net.jqwik.api.Tag;
import net.jqwik.api.lifecycle.AfterProperty;
import org.jgrapht.Graph;
import org.jgrapht.alg.connectivity.ConnectivityInspector;
import org.jgrapht.graph.DefaultEdge;
import org.jgrapht.graph.Multigraph;
import org.jgrapht.traverse.BreadthFirstIterator;
import org.keeplit.network.Conductor;
import org.keeplit.network.Element;
import org.keeplit.network.Network;
import org.keeplit.plain.MadeNetworks;
import org.keeplit.program.FieldKey;
import org.keeplit.program.Vertex;

/** What is joined and what is energized, against another library's graphs, drawn together or not. */
class ConnectivityTest {
    private int energized;
    private int dead;

    @Property(tries = 800, seed = "31", shrinking = ShrinkingMode.OFF)
    void joinedAndEnergized(@ForAll long seed) {
        compare(seed);
    }

    @Tag("long")
    @Property(tries = 8000, seed = "32", shrinking = ShrinkingMode.OFF)
    void joinedAndEnergizedInTheLongRun(@ForAll long seed) {
        compare(seed);
    }

    private void compare(long seed) {
        Network network = MadeNetworks.of(seed);
        Grid grid = new GridBuilder(network).build();
        Random random = new Random(seed);
        Map<FieldKey, Boolean> closed = new HashMap<>();
        grid.contacts().forEach(c -> closed.computeIfAbsent(c.key(), k -> random.nextInt(100) < 75));
        Set<FieldKey> moving = new HashSet<>();
        closed.keySet().stream().filter(k -> random.nextBoolean()).forEach(moving::add);

        Graph<Integer, DefaultEdge> graph = new Multigraph<>(DefaultEdge.class);
        for (int v = 0; v < grid.vertexCount(); v++) {
            graph.addVertex(v);
        }
        grid.wires().forEach(w -> edge(graph, w.a(), w.b()));
        grid.contacts().stream().filter(c -> closed.get(c.key())).forEach(c -> edge(graph, c.a(), c.b()));
        Set<Integer> reached = reached(network, grid, graph);

        compare(grid, graph, reached, new Electric(grid, c -> true, c -> closed.get(c.key())), "seed " + seed + ", whole");
        compare(grid, graph, reached, new Electric(grid, c -> moving.contains(c.key()), c -> closed.get(c.key())), "seed " + seed);
    }

    private static void edge(Graph<Integer, DefaultEdge> graph, int a, int b) {
        if (a != b) {
            graph.addEdge(a, b);
        }
    }

    private static Set<Integer> reached(Network network, Grid grid, Graph<Integer, DefaultEdge> graph) {
        Set<Integer> reached = new HashSet<>();
        List<Integer> sources = new ArrayList<>();
        network.all(Element.Source.class).forEach(s -> {
            for (Conductor phase : s.phases()) {
                sources.add(grid.number(new Vertex.AtNode(s.node(), phase)).orElseThrow());
            }
        });
        for (int source : sources) {
            new BreadthFirstIterator<>(graph, source).forEachRemaining(reached::add);
        }
        return reached;
    }

    private void compare(
            Grid grid, Graph<Integer, DefaultEdge> graph, Set<Integer> reached, Electric electric, String name) {
        Analysis analysis = electric.at(electric.startSet());
        ConnectivityInspector<Integer, DefaultEdge> inspector = new ConnectivityInspector<>(graph);
        boolean banks = !grid.couplers().isEmpty();
        for (int v = 0; v < grid.vertices().size(); v++) {
            boolean live = analysis.level(v) == Level.ENERGIZED;
            // A bank may energize what no path reaches.
            assertTrue(live == reached.contains(v) || banks && live, name + ": " + grid.vertices().get(v));
            energized += live ? 1 : 0;
            dead += live ? 0 : 1;
            Set<Integer> mine = inspector.connectedSetOf(v);
            for (int w = 0; w < grid.vertices().size(); w++) {
                boolean joined = analysis.status().joined(electric.cells().cell(v), electric.cells().cell(w));
                assertEquals(mine.contains(w), joined, name + ": " + grid.vertices().get(v) + " and " + grid.vertices().get(w));
            }
        }
    }

    @AfterProperty
    void bothCameUp() {
        assertTrue(energized > 0 && dead > 0);
    }
}
