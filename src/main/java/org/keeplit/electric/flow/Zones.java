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
    /** For each contact, by its number in the state, the zones that it joins; -1 for ground. */
    private final int[] contactZones;

    Zones(int terminals, List<Element> elements, StateLayout layout) {
        DisjointSets sets = new DisjointSets(terminals);
        elements.forEach(element -> element.couple(sets));
        zone = new int[terminals];
        int next = 0;
        for (int t = 0; t < terminals; t++) {
            int root = sets.find(t);
            zone[t] = root == t ? next++ : zone[root];
        }
        count = next;
        contactZones = new int[2 * layout.contacts().length()];
        for (int k = 0; k < contactZones.length; k++) {
            contactZones[k] = of(elements.get(layout.contacts().get(k / 2)).terminal(k % 2));
        }
    }

    /** The zone of a terminal; -1 for ground. */
    int of(int terminal) {
        return terminal == FlowModel.GROUND ? -1 : zone[terminal];
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
        for (int k = 0; k < contactZones.length; k += 2) {
            if (state.conducts(k / 2) && contactZones[k] >= 0 && contactZones[k + 1] >= 0) {
                sets.join(contactZones[k], contactZones[k + 1]);
            }
        }
        List<Element> elements = state.layout().elements();
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

        boolean zone(int index) {
            return index >= 0 && liveZone[index];
        }
    }
}
