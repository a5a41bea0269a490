package org.keeplit.command;

import java.util.List;
import java.util.OptionalInt;
import org.keeplit.explore.AtOnePlace;
import org.keeplit.procedure.Unjudged;
import org.keeplit.text.Problem;
import org.keeplit.text.Problems;
import org.keeplit.verdict.Coverage;
import org.keeplit.verdict.ExampleJudgement;
import org.keeplit.verdict.Judgement;

/** The exit codes; they are part of the interface and do not change. */
final class ExitCode {
    /** Everything is proved. */
    static final int PROVED = 0;
    /** Something is broken, or an example failed; under {@code --strict} a caution, too. */
    static final int BROKEN = 1;
    /** The command line cannot be understood, or a file that it names cannot be read or written: the disk is full, something is there already. */
    static final int USAGE = 2;
    /** The input has mistakes. */
    static final int MISTAKES = 3;
    /** A limit was reached, or a figure could not be worked out. */
    static final int UNDECIDED = 4;
    /** Nothing was asked of a procedure; under {@code --strict} also: a rule was not exercised, or examples leave something of it unshown. */
    static final int NOT_PROVED = 5;
    /** A fault of this program. */
    static final int FAULT = 70;

    private ExitCode() {}

    /** {@return the code where something is wrong: a fault of this program before mistakes before limits; none where nothing is} */
    static OptionalInt of(Problems problems) {
        List<Problem> errors = problems.sorted().stream()
                .filter(p -> p.severity() == Problem.Severity.ERROR)
                .toList();
        if (errors.isEmpty()) {
            return OptionalInt.empty();
        } else if (errors.stream().anyMatch(p -> p.code().equals(AtOnePlace.FAULT))) {
            return OptionalInt.of(FAULT);
        }
        return OptionalInt.of(errors.stream().allMatch(AtOnePlace::isNotOfTheFiles) ? UNDECIDED : MISTAKES);
    }

    /** {@return the code for many verdicts: mistakes before broken before undecided before not exercised} */
    static int of(List<Judgement> judgements, List<Unjudged> unjudged, Problems problems, boolean strict) {
        OptionalInt wrong = of(problems);
        if (wrong.isPresent() && wrong.getAsInt() != UNDECIDED) {
            return wrong.getAsInt();
        }
        if (judgements.stream().anyMatch(j -> j.status() == Judgement.Status.BROKEN || strict && j.isCautioned())) {
            return BROKEN;
        }
        if (wrong.isPresent() || judgements.stream().anyMatch(j -> j.status() == Judgement.Status.UNDECIDED)) {
            return UNDECIDED;
        }
        boolean silent = judgements.stream()
                .anyMatch(j -> j.status() == Judgement.Status.HOLDS
                        && !j.notExercised().isEmpty());
        boolean unasked = !unjudged.isEmpty() || judgements.stream().anyMatch(j -> j.status() == Judgement.Status.NOT_PROVED);
        return unasked || strict && silent ? NOT_PROVED : PROVED;
    }

    /** {@return the code for many examples, in the same order: mistakes, failed, undecided, not shown} */
    static int ofExamples(List<ExampleJudgement> examples, Coverage coverage, Problems problems, boolean strict) {
        OptionalInt wrong = of(problems);
        if (wrong.isPresent() && wrong.getAsInt() != UNDECIDED) {
            return wrong.getAsInt();
        }
        if (examples.stream().anyMatch(e -> !e.differences().isEmpty())) {
            return BROKEN;
        }
        if (wrong.isPresent() || examples.stream().anyMatch(ExampleJudgement::isUndecided)) {
            return UNDECIDED;
        }
        return strict && !coverage.isComplete() ? NOT_PROVED : PROVED;
    }
}
