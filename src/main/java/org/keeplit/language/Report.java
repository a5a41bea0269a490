package org.keeplit.language;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import org.keeplit.text.Problem;
import org.keeplit.text.Source;
import org.keeplit.text.Span;

/** The problems of one file, as many as anybody would read. */
final class Report {
    private static final int MOST = 100;

    private final Source source;
    private final Set<Problem> found = new LinkedHashSet<>();
    private final Set<Problem> warnings = new LinkedHashSet<>();
    private int errors;
    private boolean more;

    Report(Source source) {
        this.source = source;
    }

    Source source() {
        return source;
    }

    void add(Problem problem) {
        if (problem.severity() == Problem.Severity.ERROR) {
            errors++;
        }
        // Warnings never take the place of a mistake.
        Set<Problem> among = problem.severity() == Problem.Severity.ERROR ? found : warnings;
        if (among.size() < MOST) {
            among.add(problem);
        } else if (!among.contains(problem)) {
            more |= among == warnings;
        }
    }

    /** Collects what a reading ended with. */
    void add(Misread misread) {
        misread.problem().ifPresentOrElse(this::add, () -> errors++);
    }

    /** {@return whether no more mistakes would be listed} */
    boolean isFull() {
        return found.size() == MOST;
    }

    /** {@return how many errors there were so far; unchanged over a stretch means that the stretch was good} */
    int errors() {
        return errors;
    }

    /**
     * Reads one thing; if it ends in a mistake, the mistake is collected.
     *
     * @param reading the reading
     * @return what was read, or empty
     */
    <T> Optional<T> attempt(Supplier<T> reading) {
        try {
            return Optional.of(reading.get());
        } catch (Misread misread) {
            add(misread);
            return Optional.empty();
        }
    }

    /** Like {@link #attempt}, for readings that give nothing back. */
    void attempt(Runnable reading) {
        try {
            reading.run();
        } catch (Misread misread) {
            add(misread);
        }
    }

    /** {@return the problems, and a last one if there were too many to list} */
    List<Problem> problems() {
        List<Problem> all = new ArrayList<>(found);
        all.addAll(warnings);
        if (more) {
            all.add(Code.TOO_MANY.warn(
                    Span.ofFile(source), "only the first " + MOST + " warnings of this file are listed"));
        }
        if (isFull()) {
            all.add(Code.TOO_MANY.at(
                    Span.ofFile(source), "only the first " + MOST + " mistakes of this file are listed"));
        }
        return all;
    }
}
