package org.keeplit.electric.power;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import org.keeplit.electric.Grid;
import org.keeplit.electric.flow.FlowModel;
import org.keeplit.electric.flow.FlowModelBuilder;
import org.keeplit.network.Conductor;
import org.keeplit.network.Element;
import org.keeplit.network.Network;
import org.keeplit.network.Phases;
import org.keeplit.program.Vertex;
import org.keeplit.unit.Quantity;

/** A load-flow model while it is put together: which vertex has which terminal, and what elements state. */
final class Assembly {
    static final double SQRT3 = Math.sqrt(3);
    private static final int UNUSED = -2;

    final Grid grid;
    final Network network;
    final Nominal nominal;
    final FlowModelBuilder builder = FlowModel.builder();
    /** The terminals of the quarter points of sections with load along them, by section and phase. */
    final Map<String, Integer> quarters = new HashMap<>();
    private final int[] terminals;

    /** No vertex has a terminal yet. */
    Assembly(Grid grid) {
        this.grid = grid;
        network = grid.network();
        nominal = new Nominal(network);
        terminals = new int[grid.vertices().size()];
        Arrays.fill(terminals, UNUSED);
    }

    /** Makes a vertex one with the earth. */
    void ground(int vertex) {
        terminals[vertex] = FlowModel.GROUND;
    }

    /** {@return the terminal of each vertex; what nothing uses counts as ground} */
    int[] terminals() {
        return Arrays.stream(terminals).map(t -> t == UNUSED ? FlowModel.GROUND : t).toArray();
    }

    static double figure(Map<String, Quantity> figures, String name, double otherwise) {
        Quantity quantity = figures.get(name);
        return quantity == null ? otherwise : quantity.si();
    }

    static double need(Element element, String name) {
        Quantity quantity = element.figures().get(name);
        if (quantity == null) {
            throw new PowerException(
                    element.kind().name() + " " + element.name() + " states no " + name + ", which a load flow needs");
        }
        return quantity.si();
    }

    int at(String node, Conductor phase) {
        return terminal(grid.number(new Vertex.AtNode(node, phase)).orElseThrow());
    }

    /** A vertex becomes a terminal when an element first uses it; a piece that no step brings stays at no voltage. */
    int terminal(int vertex) {
        if (terminals[vertex] == UNUSED) {
            terminals[vertex] = builder.terminal(grid.vertices().get(vertex).toString());
        }
        return terminals[vertex];
    }

    int[] at(String node, Phases phases) {
        return phases.list().stream()
                .filter(Conductor::isPhase)
                .mapToInt(p -> at(node, p))
                .toArray();
    }
}
