package org.keeplit.explore;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * What leads from one state at rest to the next, as one small number each: an act alone is its own number; an act with
 * what followed by itself has a number beyond those of the acts.
 */
final class Edges {
    private final int acts;
    private final List<Edge> longer = new ArrayList<>();
    private final Map<Edge, Integer> numbers = new HashMap<>();

    Edges(int acts) {
        this.acts = acts;
    }

    /** An act and what followed by itself. @param act the act; -1 for none @param reactions the reactions, in order */
    record Edge(int act, ImmutableList<Integer> reactions) {}

    int number(int act, ImmutableList<Integer> reactions) {
        if (reactions.isEmpty()) {
            return act;
        }
        return numbers.computeIfAbsent(new Edge(act, reactions), edge -> {
            longer.add(edge);
            return acts + longer.size() - 1;
        });
    }

    Edge edge(int number) {
        return number < acts ? new Edge(number, ImmutableList.of()) : longer.get(number - acts);
    }
}
