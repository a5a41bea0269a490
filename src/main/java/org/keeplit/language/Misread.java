package org.keeplit.language;

import java.util.Optional;
import org.keeplit.text.Problem;

/**
 * Ends the reading of one line at its first mistake. It never leaves this package: whoever reads lines catches it,
 * collects the problem and goes on with the next line.
 */
final class Misread extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final transient Optional<Problem> problem;

    private Misread(Optional<Problem> problem) {
        super("a mistake in the input", null, false, false);
        this.problem = problem;
    }

    /** A mistake that nobody told yet. */
    Misread(Problem problem) {
        this(Optional.of(problem));
    }

    /** {@return one whose problem was collected already} */
    static Misread told() {
        return new Misread(Optional.empty());
    }

    Optional<Problem> problem() {
        return problem;
    }
}
