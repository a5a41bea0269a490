package org.keeplit.electric;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import org.keeplit.condition.Truth;
import org.keeplit.network.Conductor;
import org.keeplit.network.Element;
import org.keeplit.network.Trait;
import org.keeplit.program.Vertex;

/**
 * What stands at one structure and could carry the current past a device: bypass switches, disconnects, jumpers,
 * regulators on neutral. Nothing that may open by itself counts.
 */
public final class SiteGraph {
    private record Joint(int a, int b, Contact contact, Element.Regulator regulator, Conductor phase) {}

    private final Grid grid;
    private final List<Joint> joints = new ArrayList<>();
    /** What could carry current past a device at all, whatever may open it. */
    private final List<Joint> everything = new ArrayList<>();

    /** Tells where a regulator's tap stands. */
    public interface Taps {
        /**
         * Whether a tap is on neutral.
         *
         * @param regulator the regulator
         * @param phase the phase
         * @return unknown when it may stand anywhere
         */
        Truth neutral(String regulator, Conductor phase);
    }

    /**
     * Gathers a site.
     *
     * @param grid the grid
     * @param site the structure
     */
    public SiteGraph(Grid grid, String site) {
        this.grid = grid;
        for (Contact contact : grid.contacts()) {
            if (contact.site().equals(site) && contact.part() != Contact.Part.GROUND) {
                Joint joint = new Joint(contact.a(), contact.b(), contact, null, contact.phase());
                everything.add(joint);
                if (carries(contact)) {
                    joints.add(joint);
                }
            }
        }
        for (Grid.Wire wire : grid.wires()) {
            if (wire.regulator() != null && wire.regulator().site().equals(site)) {
                Joint joint = new Joint(wire.a(), wire.b(), null, wire.regulator(), wire.phase());
                everything.add(joint);
                joints.add(joint);
            }
        }
    }

    private static boolean carries(Contact contact) {
        return switch (contact.part()) {
            case POLE, LEAD -> !contact.kind().has(Trait.TRIPS) && !contact.kind().has(Trait.FUSIBLE);
            case CLAMP -> true;
            case GROUND -> false;
        };
    }

    /**
     * Whether a branch's two sides are solidly joined on site when its own contacts are taken out.
     *
     * @param branch a device or a regulator at this site
     * @param phase the phase
     * @param closed whether a contact is closed
     * @param taps where taps stand
     * @return unknown when the only path leads through a regulator that may be off neutral
     */
    public Truth bypassed(Element.Branch branch, Conductor phase, Predicate<Contact> closed, Taps taps) {
        int from = grid.number(new Vertex.AtNode(branch.from(), phase)).orElseThrow();
        int to = grid.number(new Vertex.AtNode(branch.to(), phase)).orElseThrow();
        return joined(from, to, branch.name(), closed, taps);
    }

    /**
     * The ways around a device: the closed contacts at the site that leave its line on the source side on a phase and from
     * which its line on the load side is reached, on site, without coming back there and without its own contacts.
     *
     * @param device the device
     * @param phase the phase
     * @param closed whether a contact is closed
     * @return one contact for each way out, in the order of the grid
     */
    public List<Contact> waysAround(Element.Device device, Conductor phase, Predicate<Contact> closed) {
        int from = grid.number(new Vertex.AtNode(device.from(), phase)).orElseThrow();
        int to = grid.number(new Vertex.AtNode(device.to(), phase)).orElseThrow();
        List<Contact> out = new ArrayList<>();
        Map<Integer, Integer> beyond = new HashMap<>();
        for (Joint joint : everything) {
            boolean own = joint.contact != null && joint.contact.owner().equals(device.name());
            if (own || joint.contact != null && !closed.test(joint.contact)) {
                continue;
            }
            if (joint.a != from && joint.b != from) {
                join(beyond, joint);
            } else if (joint.contact != null) {
                out.add(joint.contact);
            }
        }
        out.removeIf(c -> find(beyond, c.a() == from ? c.b() : c.a()) != find(beyond, to));
        return out;
    }

    private Truth joined(int from, int to, String without, Predicate<Contact> closed, Taps taps) {
        Map<Integer, Integer> sure = new HashMap<>();
        Map<Integer, Integer> perhaps = new HashMap<>();
        for (Joint joint : joints) {
            Truth here = conducts(joint, without, closed, taps);
            if (here == Truth.TRUE) {
                join(sure, joint);
            }
            if (here != Truth.FALSE) {
                join(perhaps, joint);
            }
        }
        if (find(sure, from) == find(sure, to)) {
            return Truth.TRUE;
        }
        return find(perhaps, from) == find(perhaps, to) ? Truth.UNKNOWN : Truth.FALSE;
    }

    private static Truth conducts(Joint joint, String without, Predicate<Contact> closed, Taps taps) {
        if (joint.contact != null) {
            return Truth.of(!joint.contact.owner().equals(without) && closed.test(joint.contact));
        }
        return joint.regulator.name().equals(without)
                ? Truth.FALSE
                : taps.neutral(joint.regulator.name(), joint.phase);
    }

    private static void join(Map<Integer, Integer> parents, Joint joint) {
        int a = find(parents, joint.a);
        int b = find(parents, joint.b);
        parents.put(Math.max(a, b), Math.min(a, b));
    }

    private static int find(Map<Integer, Integer> parents, int vertex) {
        int root = vertex;
        while (parents.getOrDefault(root, root) != root) {
            root = parents.get(root);
        }
        return root;
    }

    /**
     * Whether the only way on site between the sides of an open contact leads through a regulator off neutral,
     * so that closing it would short a part of the series winding.
     *
     * @param contact the contact
     * @param closed whether a contact is closed
     * @param taps where taps stand
     * @return unknown when the regulator may stand anywhere
     */
    public Truth unequal(Contact contact, Predicate<Contact> closed, Taps taps) {
        Predicate<Contact> others = c -> c.id() != contact.id() && closed.test(c);
        Taps all = (regulator, phase) -> Truth.TRUE;
        if (joined(contact.a(), contact.b(), "", others, all) != Truth.TRUE) {
            return Truth.FALSE;
        }
        return joined(contact.a(), contact.b(), "", others, taps).not();
    }
}
