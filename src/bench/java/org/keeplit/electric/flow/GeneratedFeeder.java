package org.keeplit.electric.flow;

import static org.keeplit.electric.flow.FlowModel.GROUND;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.keeplit.electric.complex.Complex;
import org.keeplit.electric.complex.ComplexMatrix;

/**
 * A radial feeder of a given number of nodes: a three-phase main with branches, single-phase
 * laterals, 8 MVA of load at every second node, three poles at every twentieth node, some with jumpers
 * beside them. The same
 * number of nodes gives the same feeder.
 */
public final class GeneratedFeeder {
    private static final double VOLTS = 7200;

    private final FlowModelBuilder builder = FlowModel.builder();
    private final Random random = new Random(7);
    private final int[] depth;
    /** The phase of a lateral node, or -1 on three phases. */
    private final int[] phase;

    private GeneratedFeeder(int nodes) {
        depth = new int[nodes];
        phase = new int[nodes];
        phase[0] = -1;
        int window = Math.max(8, nodes / 25);
        int[] parent = new int[nodes];
        int deepest = 1;
        for (int n = 1; n < nodes; n++) {
            parent[n] = Math.max(0, n - 1 - random.nextInt(window));
            depth[n] = depth[parent[n]] + 1;
            deepest = Math.max(deepest, depth[n]);
            phase[n] = phase[parent[n]] >= 0 ? phase[parent[n]] : random.nextInt(12) == 0 ? random.nextInt(3) : -1;
        }
        builder.source("source", phases(0), GROUND, SourceImpedance.balanced(VOLTS, 0),
                SourceImpedance.ofSequences(new Complex(0.05, 0.5), new Complex(0.05, 0.5)));
        for (int n = 1; n < nodes; n++) {
            addNode(n, parent[n], 4.0 / deepest, 16e6 / nodes);
        }
    }

    private int[] phases(int node) {
        return phase[node] < 0
                ? builder.terminals("n" + node, "ABC")
                : new int[] {builder.terminal("n" + node + "." + "ABC".charAt(phase[node]))};
    }

    private void addNode(int node, int parent, double miles, double va) {
        int[] to = phases(node);
        int[] from = new int[to.length];
        for (int k = 0; k < to.length; k++) {
            from[k] = builder.terminal("n" + parent + "." + "ABC".charAt(to.length == 3 ? k : phase[node]));
        }
        if (to.length == 3 && node % 20 == 0) {
            int[] middle = builder.terminals("m" + node, "ABC");
            for (int k = 0; k < 3; k++) {
                builder.contact("pole " + node + "." + k, from[k], middle[k], new Complex(5e-4, 0), true);
                if (node % 400 == 0) {
                    builder.contact("jumper " + node + "." + k, from[k], middle[k], new Complex(2e-3, 0), false);
                }
            }
            from = middle;
        }
        builder.line("line " + node, from, to,
                ComplexMatrix.balanced(to.length, new Complex(0.35, 1.02), new Complex(0.15, 0.45)),
                ComplexMatrix.balanced(to.length, new Complex(0, 6e-6), new Complex(0, -1e-6)), miles);
        for (int terminal : node % 2 == 0 ? to : new int[0]) {
            Complex power = new Complex(0.9 * va / to.length, 0.3 * va / to.length);
            builder.load("load " + node + "." + terminal, terminal, GROUND, VOLTS, LoadPower.constantPower(power));
        }
    }

    /**
     * Builds the feeder.
     *
     * @param nodes how many nodes
     * @return the model
     */
    public static FlowModel build(int nodes) {
        return new GeneratedFeeder(nodes).builder.build();
    }

    /**
     * States as a procedure makes them: a jumper goes on, a pole opens, at one site after another.
     *
     * @param model a model of this class
     * @param count how many
     * @return states, each different
     */
    public static List<FlowState> states(FlowModel model, int count) {
        List<Integer> jumpers = new ArrayList<>();
        List<Integer> poles = new ArrayList<>();
        for (int e = 0; e < model.elements().size(); e++) {
            if (model.elements().get(e) instanceof Contact contact) {
                (contact.name().startsWith("jumper") ? jumpers : poles).add(e);
            }
        }
        Random random = new Random(11);
        List<FlowState> states = new ArrayList<>();
        for (int k = 0; k < count; k++) {
            FlowState.Editor editor = model.baseState().edit();
            for (int change = 0; change < 3 && !jumpers.isEmpty(); change++) {
                editor.contact(jumpers.get(random.nextInt(jumpers.size())), true);
            }
            editor.contact(poles.get(poles.size() - 1 - random.nextInt(poles.size() / 2)), false);
            states.add(editor.state());
        }
        return states;
    }
}
