package org.keeplit.verdict;

import com.google.common.collect.ImmutableList;
import org.keeplit.outcome.Finding;
import org.keeplit.outcome.Outcome;
import org.keeplit.outcome.RuleResult;
import org.keeplit.procedure.Instance;
import org.keeplit.procedure.Procedure;
import org.keeplit.rule.Overridden;
import org.keeplit.rule.Rule;

/**
 * The verdict on one procedure on one network.
 *
 * @param instance the procedure, where it was run and from which start
 * @param outcome what the exploration found
 * @param status the verdict
 * @param differences for a procedure that must fail, how what was found differs from what it states
 */
public record Judgement(Instance instance, Outcome outcome, Status status, ImmutableList<String> differences) {

    /** A verdict. */
    public enum Status {
        /** Every rule that came up holds, in every state. */
        HOLDS,
        /** It must fail, and fails exactly as it states. */
        FAILS_AS_STATED,
        /** Something is broken, or a procedure that must fail fails otherwise. */
        BROKEN,
        /** The run was cut before anything was shown. */
        UNDECIDED,
        /** Nothing is broken, but no rule that stops came up: nothing was asked. */
        NOT_PROVED
    }

    /**
     * Judges an outcome.
     *
     * @param instance the procedure, where it was run and from which start
     * @param outcome what the exploration found
     * @return the verdict; a break beats a cut, but what a cut run has not found yet is no break
     */
    public static Judgement of(Instance instance, Outcome outcome) {
        Procedure procedure = instance.procedure();
        boolean mustFail = !procedure.mustFail().isEmpty();
        Expected.Differences differences = mustFail
                ? Expected.differences(procedure.mustFail(), counting(procedure, outcome))
                : Expected.Differences.NONE;
        boolean asStated = mustFail ? differences.all().isEmpty() : outcome.findings().isEmpty();
        boolean cut = outcome.cut().isPresent();
        Status status;
        if (cut && (asStated || mustFail && differences.mayVanish())) {
            status = Status.UNDECIDED;
        } else if (asStated) {
            boolean asked = mustFail || outcome.answer() == Outcome.Answer.HOLDS;
            status = mustFail ? Status.FAILS_AS_STATED : asked ? Status.HOLDS : Status.NOT_PROVED;
        } else {
            status = Status.BROKEN;
        }
        return new Judgement(instance, outcome, status, differences.all());
    }

    /** A variant that is there to show a caution names it; others do not count against it. */
    private static ImmutableList<Finding> counting(Procedure procedure, Outcome outcome) {
        ImmutableList.Builder<Finding> all = ImmutableList.<Finding>builder().addAll(outcome.findings());
        outcome.notes().stream()
                .filter(note -> procedure.mustFail().stream().anyMatch(m -> Expected.names(m, note)))
                .forEach(all::add);
        return all.build();
    }

    /** {@return the procedure} */
    public Procedure procedure() {
        return instance.procedure();
    }

    /** {@return the rules whose case never came up} */
    public ImmutableList<RuleResult> notExercised() {
        return outcome.rules().stream()
                .filter(r -> r.verdict() == RuleResult.Verdict.NOT_EXERCISED)
                .collect(ImmutableList.toImmutableList());
    }

    /** {@return what the verdict relies on: steps whose acts the writer takes as one, each with the reason} */
    public ImmutableList<String> reliances() {
        return outcome.steps().stream()
                .filter(step -> step.asOne().isPresent())
                .map(step -> step.label().orElse(step.sentence()) + " is done as one, because "
                        + step.asOne().get())
                .collect(ImmutableList.toImmutableList());
    }

    /** {@return what it rests on} */
    public Basis basis() {
        return Basis.of(instance, outcome);
    }

    /** {@return the rules of extended rulebooks that do not count as they stand there, each with the reason} */
    public ImmutableList<Overridden> overridden() {
        return procedure().keeps().stream()
                .flatMap(book -> book.overridden().stream())
                .collect(ImmutableList.toImmutableList());
    }

    /** {@return whether a rule that is a caution is broken} */
    public boolean isCautioned() {
        return outcome.notes().stream().anyMatch(n -> n.severity() == Rule.Severity.CAUTION);
    }

    /** {@return the findings that need a story: those of a broken procedure} */
    public ImmutableList<Finding> stories() {
        return status == Status.BROKEN ? outcome.findings() : ImmutableList.of();
    }
}
