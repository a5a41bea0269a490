package org.keeplit.text;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/** Collects the problems of one run, so that one mistake never hides the next. */
public final class Problems {
    private final Set<Problem> found = new LinkedHashSet<>();

    /**
     * Adds a problem; the same one at the same place counts once.
     *
     * @param problem the problem
     */
    public void add(Problem problem) {
        found.add(problem);
    }

    /** {@return whether any error was added} */
    public boolean hasErrors() {
        return found.stream().anyMatch(p -> p.severity() == Problem.Severity.ERROR);
    }

    /** {@return the problems in the order in which people read them} */
    public List<Problem> sorted() {
        return found.stream().sorted(Problem.ORDER).toList();
    }
}
