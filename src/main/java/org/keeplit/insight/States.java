package org.keeplit.insight;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.keeplit.program.StateKey;

/** Different states, in the order in which they came. */
final class States {
    private final Map<StateKey, long[]> all = new LinkedHashMap<>();

    States() {}

    States(Collection<long[]> some) {
        some.forEach(this::add);
    }

    /** Adds a state. {@return whether it is new} */
    boolean add(long[] state) {
        return all.putIfAbsent(StateKey.of(state), state) == null;
    }

    List<long[]> list() {
        return new ArrayList<>(all.values());
    }

    int size() {
        return all.size();
    }

    /** {@return what tells these states from others} */
    Set<StateKey> key() {
        return all.keySet();
    }

    /** {@return whether both hold the same states} */
    boolean same(States other) {
        return all.keySet().equals(other.all.keySet());
    }
}
