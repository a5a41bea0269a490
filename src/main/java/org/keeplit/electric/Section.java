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
     * Finds it.
     *
     * @param grid the graph
     * @param closed which contacts are closed
     * @param device the device
     * @param site the structure where it stands
     * @return the numbers of its line vertices, ascending
     */
    public static List<Integer> beyond(Grid grid, Predicate<Contact> closed, Element.Branch device, String site) {
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
        return reach(start, beside).stream()
                .filter(v -> v < grid.vertices().size()
                        && grid.vertices().get(v) instanceof Vertex.AtNode at
                        && at.conductor().isPhase())
                .boxed()
                .toList();
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
