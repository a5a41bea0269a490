package org.keeplit.electric.flow;

import java.util.BitSet;
import java.util.List;

/**
 * Which terminals are alive together whatever the state, found once; a state then only has to join
 * zones by its closed contacts. A zone that no running source reaches is dead, and its voltages are
 * exactly zero. Conductors are joined by lines along themselves, by transformers and regulators, and
 * by loads and capacitors between two conductors; not by what one conductor induces in another.
 */
final class Zones {
    private final int[] zone;
    private final int count;

    Zones(int terminals, List<Element> elements) {
        DisjointSets sets = new DisjointSets(terminals);
        elements.forEach(element -> element.couple(sets));
        zone = new int[terminals];
        int next = 0;
        for (int t = 0; t < terminals; t++) {
            int root = sets.find(t);
            zone[t] = root == t ? next++ : zone[root];
        }
        count = next;
    }

    /**
     * The terminals of live zones in a state.
     *
     * @param joined terminals that something besides the state joins, as a fault does
     */
    Live live(FlowState state, int... joined) {
        DisjointSets sets = new DisjointSets(count);
        for (int terminal : joined) {
            sets.join(zone[joined[0]], zone[terminal]);
        }
        List<Element> elements = state.layout().elements();
        state.layout().contacts().forEach(element -> {
            Contact contact = (Contact) elements.get(element);
            if (state.conducts(contact.ordinal())
                    && contact.terminal(0) != FlowModel.GROUND
                    && contact.terminal(1) != FlowModel.GROUND) {
                sets.join(zone[contact.terminal(0)], zone[contact.terminal(1)]);
            }
        });
        BitSet liveRoots = new BitSet(count);
        for (int element : state.layout().sources().asList()) {
            Source source = (Source) elements.get(element);
            for (int p = 0; source.running(state) && p < source.positions(); p++) {
                if (source.terminal(p) != FlowModel.GROUND) {
                    liveRoots.set(sets.find(zone[source.terminal(p)]));
                }
            }
        }
        boolean[] live = new boolean[count];
        for (int z = 0; z < count; z++) {
            live[z] = liveRoots.get(sets.find(z));
        }
        return new Live(zone, live);
    }

    /** Answers whether a terminal is alive in one state. */
    record Live(int[] zone, boolean[] liveZone) {
        boolean at(int terminal) {
            return terminal != FlowModel.GROUND && liveZone[zone[terminal]];
        }
    }
}
