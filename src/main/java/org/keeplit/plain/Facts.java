package org.keeplit.plain;

import java.util.Map;
import java.util.TreeMap;

/**
 * The facts of a state: what differs from the normal state. A fact that returns to its normal value is forgotten, so
 * that equal states are equal maps.
 */
final class Facts {
    private final Map<String, Integer> normal;
    private final TreeMap<String, Integer> changed;

    Facts(Map<String, Integer> normal) {
        this(normal, new TreeMap<>());
    }

    private Facts(Map<String, Integer> normal, TreeMap<String, Integer> changed) {
        this.normal = normal;
        this.changed = changed;
    }

    /** {@return what differs from the normal state} */
    Map<String, Integer> changed() {
        return changed;
    }

    int get(String fact) {
        Integer now = changed.get(fact);
        return now != null ? now : normal.getOrDefault(fact, 0);
    }

    Facts with(String fact, int value) {
        TreeMap<String, Integer> next = new TreeMap<>(changed);
        if (normal.getOrDefault(fact, 0) == value) {
            next.remove(fact);
        } else {
            next.put(fact, value);
        }
        return new Facts(normal, next);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Facts that && changed.equals(that.changed);
    }

    @Override
    public int hashCode() {
        return changed.hashCode();
    }

    @Override
    public String toString() {
        return changed.toString();
    }
}
