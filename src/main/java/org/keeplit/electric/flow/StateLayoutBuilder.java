package org.keeplit.electric.flow;

import com.google.common.collect.ImmutableList;
import com.google.common.primitives.ImmutableIntArray;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Map;

/** Numbers what a state holds while elements are added, and keeps the base state. */
final class StateLayoutBuilder {
    private final List<Integer> contacts = new ArrayList<>();
    private final List<Integer> regulators = new ArrayList<>();
    private final List<Integer> generators = new ArrayList<>();
    private final List<Integer> sources = new ArrayList<>();
    private final List<Integer> taps = new ArrayList<>();
    private final BitSet closed = new BitSet();
    private final BitSet running = new BitSet();

    /** The number of the contact that is this element. */
    int contact(int element, boolean conducts) {
        closed.set(contacts.size(), conducts);
        contacts.add(element);
        return contacts.size() - 1;
    }

    int regulator(int element, int tap) {
        taps.add(tap);
        regulators.add(element);
        return regulators.size() - 1;
    }

    int generator(int element, boolean runs) {
        running.set(generators.size(), runs);
        generators.add(element);
        return generators.size() - 1;
    }

    void source(int element) {
        sources.add(element);
    }

    FlowState baseState(List<Element> elements, List<String> loadCases) {
        StateLayout layout = new StateLayout(
                ImmutableList.copyOf(elements),
                ImmutableIntArray.copyOf(contacts),
                ImmutableIntArray.copyOf(regulators),
                ImmutableIntArray.copyOf(generators),
                ImmutableIntArray.copyOf(sources),
                ImmutableList.copyOf(loadCases));
        int[] baseTaps = taps.stream().mapToInt(Integer::intValue).toArray();
        return new FlowState(layout, closed, running, baseTaps, 0, Map.of());
    }
}
