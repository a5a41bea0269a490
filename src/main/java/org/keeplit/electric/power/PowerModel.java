package org.keeplit.electric.power;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.keeplit.electric.Contact;
import org.keeplit.electric.Grid;
import org.keeplit.electric.flow.FlowModel;
import org.keeplit.electric.flow.LineDropControl;
import org.keeplit.network.Conductor;
import org.keeplit.network.Element;
import org.keeplit.network.Network;

/** A network with its temporary equipment as a load-flow model, with the places of everything in it. Immutable. */
public final class PowerModel {
    private final Grid grid;
    private final FlowModel flow;
    private final int[] terminals;
    private final int[] contacts;
    private final ImmutableMap<String, Integer> branches;
    private final double[] nominal;
    private final ImmutableList<Tap> taps;
    private final ImmutableList<LineDropControl> controls;
    private final ImmutableList<Integer> generators;

    /**
     * A regulator of one phase.
     *
     * @param regulator the bank's name
     * @param phase the phase
     * @param element the load-flow element
     */
    public record Tap(String regulator, Conductor phase, int element) {}

    PowerModel(
            Grid grid,
            FlowModel flow,
            int[] terminals,
            int[] contacts,
            Map<String, Integer> branches,
            double[] nominal,
            Automatic automatic) {
        this.grid = grid;
        this.flow = flow;
        this.terminals = terminals;
        this.contacts = contacts;
        this.branches = ImmutableMap.copyOf(branches);
        this.nominal = nominal;
        this.taps = ImmutableList.copyOf(automatic.taps);
        this.controls = ImmutableList.copyOf(automatic.controls);
        this.generators = ImmutableList.copyOf(automatic.generators);
    }

    /**
     * What may stand or run otherwise.
     *
     * @param taps all regulators
     * @param controls those of them whose tap their control finds
     * @param generators the customers' generators, phase by phase
     */
    record Automatic(List<Tap> taps, List<LineDropControl> controls, List<Integer> generators) {}

    /** {@return the controls of the regulators whose tap nobody states} */
    public ImmutableList<LineDropControl> controls() {
        return controls;
    }

    /** {@return the load-flow elements of customers' generators} */
    public ImmutableList<Integer> generators() {
        return generators;
    }

    /** {@return the names of the cases that figures are judged on: all load cases, and again with generators running} */
    public ImmutableList<String> cases() {
        List<String> all = new ArrayList<>(flow.loadCases());
        if (!generators.isEmpty()) {
            flow.loadCases().forEach(one -> all.add(one + ", generators running"));
        }
        return ImmutableList.copyOf(all);
    }

    /**
     * Makes the model.
     *
     * @param grid the electrical graph
     * @return the model; its base state has every contact open
     * @throws PowerException if an element lacks what a load flow needs
     */
    public static PowerModel of(Grid grid) {
        return new PowerBuilder(grid).build();
    }

    /** {@return how many cases figures are judged on in a network, see {@link #cases}} @param network the network */
    public static int cases(Network network) {
        int loads = 1 + (int) network.system().keySet().stream()
                .filter(name -> name.startsWith("load case "))
                .count();
        return network.all(Element.Generator.class).findAny().isPresent() ? 2 * loads : loads;
    }

    /** {@return the electrical graph} */
    public Grid grid() {
        return grid;
    }

    /** {@return the load-flow model} */
    public FlowModel flow() {
        return flow;
    }

    /** {@return the terminal of a vertex; ground for the earth and the neutrals} @param vertex the vertex's number */
    public int terminal(int vertex) {
        return terminals[vertex];
    }

    /** {@return the load-flow element of a contact} @param contact the contact */
    public int element(Contact contact) {
        return contacts[contact.id()];
    }

    /**
     * The load-flow element of a line section or a regulator.
     *
     * @param branch its name
     * @param phase the phase
     * @return the element and the place of the phase in it, or nothing
     */
    public Optional<int[]> branch(String branch, Conductor phase) {
        Integer whole = branches.get(branch);
        if (whole != null) {
            int place = 0;
            for (Conductor other : grid.network().element(branch).orElseThrow().phases()) {
                if (other == phase) {
                    return Optional.of(new int[] {whole, place});
                }
                place++;
            }
        }
        return Optional.ofNullable(branches.get(branch + " " + phase)).map(e -> new int[] {e, 0});
    }

    /** {@return the regulators, phase by phase, in the order of the network} */
    public ImmutableList<Tap> taps() {
        return taps;
    }

    /** {@return the nominal voltage to ground at a vertex, in volt; 0 where it has none} @param vertex its number */
    public double nominal(int vertex) {
        return nominal[vertex];
    }
}
