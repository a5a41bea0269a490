package org.keeplit.electric;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.function.Predicate;
import org.keeplit.network.Conductor;
import org.keeplit.network.Element;
import org.keeplit.network.OpeningDuty;
import org.keeplit.network.Side;
import org.keeplit.network.Trait;
import org.keeplit.program.Vertex;

/**
 * What a device protects: from its load-side line along everything that conducts, as far as the next device that clears
 * a fault by itself. Its own contacts and transformers are no way; nor is what stands beside it, such as a bypass, where
 * that leads to a place which a source reaches without this structure.
 */
public final class Section {
    private final Grid grid;
    private final Predicate<Contact> closed;
    private final Element.Branch device;
    private final String site;

    private Section(Grid grid, Predicate<Contact> closed, Element.Branch device, String site) {
        this.grid = grid;
        this.closed = closed;
        this.device = device;
        this.site = site;
    }

    /**
     * Finds where in it the smallest fault is: at one of its ends, or, where it has a loop, anywhere.
     *
     * @param grid the graph
     * @param closed which contacts are closed
     * @param device the device
     * @param site the structure where it stands
     * @return the numbers of line vertices, ascending
     */
    public static List<Integer> ends(Grid grid, Predicate<Contact> closed, Element.Branch device, String site) {
        return new Section(grid, closed, device, site).find();
    }

    private List<Integer> find() {
        List<List<Integer>> beside = new ArrayList<>();
        for (int i = 0; i < grid.vertexCount(); i++) {
            beside.add(new ArrayList<>());
        }
        grid.wires().forEach(wire -> join(beside, wire.a(), wire.b()));
        BitSet sourced = sourced();
        for (Contact contact : grid.contacts()) {
            if (closed.test(contact) && !clears(contact) && !contact.owner().equals(device.name())) {
                boolean here = contact.site().equals(site);
                if (!here || !sourced.get(contact.a()) && !sourced.get(contact.b())) {
                    join(beside, contact.a(), contact.b());
                }
            }
        }
        BitSet start = new BitSet();
        for (Conductor phase : device.phases()) {
            grid.number(new Vertex.AtNode(device.node(Side.LOAD), phase)).ifPresent(start::set);
        }
        BitSet section = reach(start, beside);
        int[] ways = new int[grid.vertexCount()];
        section.stream().forEach(v -> ways[v] = beside.get(v).size());
        boolean radial = section.stream().map(v -> ways[v]).sum() / 2 <= section.cardinality() - pieces(section, beside);
        if (radial) {
            cutStubs(section, beside, ways);
        }
        return section.stream()
                .filter(v -> isNode(v) && (!radial || ways[v] <= 1))
                .boxed()
                .toList();
    }

    private boolean isNode(int vertex) {
        return vertex < grid.vertices().size()
                && grid.vertices().get(vertex) instanceof Vertex.AtNode at
                && at.conductor().isPhase();
    }

    private int pieces(BitSet section, List<List<Integer>> beside) {
        BitSet left = (BitSet) section.clone();
        int pieces = 0;
        for (int v = left.nextSetBit(0); v >= 0; v = left.nextSetBit(v + 1)) {
            BitSet one = new BitSet();
            one.set(v);
            left.andNot(reach(one, beside));
            pieces++;
        }
        return pieces;
    }

    /** Takes off leads, bushings and jumper ends that lead nowhere: their node is the end. */
    private void cutStubs(BitSet section, List<List<Integer>> beside, int[] ways) {
        ArrayDeque<Integer> open = new ArrayDeque<>(section.stream().boxed().toList());
        BitSet cut = new BitSet();
        while (!open.isEmpty()) {
            int stub = open.poll();
            if (!isNode(stub) && ways[stub] <= 1 && !cut.get(stub)) {
                cut.set(stub);
                for (int next : beside.get(stub)) {
                    ways[next]--;
                    open.add(next);
                }
            }
        }
    }

    /** {@return what sources reach with everything at this structure open} */
    private BitSet sourced() {
        List<List<Integer>> beside = new ArrayList<>();
        for (int i = 0; i < grid.vertexCount(); i++) {
            beside.add(new ArrayList<>());
        }
        grid.wires().forEach(wire -> join(beside, wire.a(), wire.b()));
        grid.contacts().stream()
                .filter(c -> closed.test(c) && !c.site().equals(site))
                .forEach(c -> join(beside, c.a(), c.b()));
        BitSet sources = new BitSet();
        grid.network().all(Element.Source.class).forEach(source -> source.phases()
                .forEach(p -> grid.number(new Vertex.AtNode(source.node(), p)).ifPresent(sources::set)));
        return reach(sources, beside);
    }

    private BitSet reach(BitSet start, List<List<Integer>> beside) {
        int earth = grid.number(Vertex.EARTH).orElse(-1);
        BitSet seen = (BitSet) start.clone();
        ArrayDeque<Integer> open = new ArrayDeque<>(start.stream().boxed().toList());
        while (!open.isEmpty()) {
            for (int next : beside.get(open.poll())) {
                if (next != earth && !seen.get(next)) {
                    seen.set(next);
                    open.add(next);
                }
            }
        }
        return seen;
    }

    private static void join(List<List<Integer>> beside, int a, int b) {
        beside.get(a).add(b);
        beside.get(b).add(a);
    }

    /** A pole that clears a fault by itself ends the section; a sectionalizer only counts what another clears. */
    private static boolean clears(Contact contact) {
        boolean interrupts = contact.kind().has(Trait.TRIPS) && contact.kind().breaks().contains(OpeningDuty.FAULT);
        return contact.part() == Contact.Part.POLE && (interrupts || contact.kind().has(Trait.FUSIBLE));
    }
}
