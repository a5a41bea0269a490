package org.keeplit.plain;

import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.keeplit.procedure.Bound;

/** Goes every way through a procedure from its beginning, every time anew: no state is ever told to be the same. */
final class EveryOrder {
    private final Walk walk;
    private final Map<String, Integer> roots = new TreeMap<>();
    private int left;

    private EveryOrder(Walk walk, int most) {
        this.walk = walk;
        this.left = most;
    }

    /**
     * Goes every way.
     *
     * @param bound the procedure
     * @param most how many acts are tried before it is given up
     * @return the shortest way to each root finding; nothing if it was given up
     */
    static Optional<Map<String, Integer>> roots(Bound bound, int most) {
        Walk walk = new Walk(bound);
        EveryOrder all = new EveryOrder(walk, most);
        Set<String> notes = new TreeSet<>();
        Set<String> found = walk.foundAtStart(notes);
        notes.forEach(n -> all.roots.put(n, 0));
        if (found.isEmpty()) {
            all.go(walk.start(), 0);
        } else {
            found.forEach(f -> all.roots.put(f, 0));
        }
        return all.left < 0 ? Optional.empty() : Optional.of(all.roots);
    }

    private void go(Walk.At at, int length) {
        if (walk.isEnd(at)) {
            Set<String> notes = new TreeSet<>();
            walk.foundAtEnd(at, notes).forEach(f -> roots.merge(f, length, Math::min));
            notes.forEach(n -> roots.merge(n, length, Math::min));
            return;
        }
        walk.stuck(at).ifPresent(step -> roots.merge("stuck " + step, length, Math::min));
        for (Walk.Done done : walk.acts(at)) {
            if (--left < 0) {
                return;
            }
            int longer = length + 1 + done.byItself().size();
            done.found().forEach(f -> roots.merge(f, longer, Math::min));
            done.notes().forEach(n -> roots.merge(n, longer, Math::min));
            if (done.keepsAllRules() && done.to().isPresent()) {
                go(done.to().get(), longer);
            }
        }
    }
}
