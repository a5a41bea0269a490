package org.keeplit.verdict;

import com.google.common.collect.ImmutableList;
import org.keeplit.explore.Finding;
import org.keeplit.explore.Outcome;
import org.keeplit.explore.RuleResult;
import org.keeplit.network.Network;
import org.keeplit.procedure.Procedure;
import org.keeplit.rule.Overridden;
import org.keeplit.rule.Rule;

/**
 * The verdict on one procedure on one network.
 *
 * @param procedure the procedure
 * @param network the network
 * @param proof which objects its parameters stood for
 * @param start in which ways it started, in words; empty if there is only one
 * @param outcome what the exploration found
 * @param status the verdict
 * @param differences for a procedure that must fail, how what was found differs from what it states
 */
public record Judgement(
        Procedure procedure,
        Network network,
        Procedure.Proof proof,
        String start,
        Outcome outcome,
        Status status,
        ImmutableList<String> differences) {

    /** A verdict. */
    public enum Status {
        /** Every rule that came up holds, in every state. */
        HOLDS,
        /** It must fail, and fails exactly as it states. */
        FAILS_AS_STATED,
        /** Something is broken, or a procedure that must fail fails otherwise. */
        BROKEN,
        /** The run was cut before anything was shown. */
        UNDECIDED
    }

    /**
     * Judges an outcome.
     *
     * @param procedure the procedure
     * @param network the network
     * @param proof which objects its parameters stood for
     * @param outcome what the exploration found
     * @return the verdict; a break beats a cut
     */
    public static Judgement of(Procedure procedure, Network network, Procedure.Proof proof, Outcome outcome) {
        return of(procedure, network, proof, "", outcome);
    }

    /**
     * Like {@link #of(Procedure, Network, Procedure.Proof, Outcome)}, for one of several starts.
     *
     * @param start in which ways it started, in words
     */
    public static Judgement of(
            Procedure procedure, Network network, Procedure.Proof proof, String start, Outcome outcome) {
        ImmutableList<String> differences = procedure.mustFail().isEmpty()
                ? ImmutableList.of()
                : Expected.differences(procedure.mustFail(), counting(procedure, outcome));
        Status status;
        if (!procedure.mustFail().isEmpty()) {
            status = differences.isEmpty() ? Status.FAILS_AS_STATED : Status.BROKEN;
        } else {
            status = outcome.findings().isEmpty() ? Status.HOLDS : Status.BROKEN;
        }
        if (outcome.cut().isPresent() && (status == Status.HOLDS || status == Status.FAILS_AS_STATED)) {
            status = Status.UNDECIDED;
        }
        return new Judgement(procedure, network, proof, start, outcome, status, differences);
    }

    /** A variant that is there to show a caution names it; others do not count against it. */
    private static ImmutableList<Finding> counting(Procedure procedure, Outcome outcome) {
        ImmutableList.Builder<Finding> all = ImmutableList.<Finding>builder().addAll(outcome.findings());
        outcome.notes().stream()
                .filter(note -> procedure.mustFail().stream().anyMatch(m -> m.rule().equals(note.name())))
                .forEach(all::add);
        return all.build();
    }

    /** {@return where it was run, in words: the network, what stood for the parameters, the start} */
    public String place() {
        return TextReport.place(this);
    }

    /** {@return the rules whose case never came up} */
    public ImmutableList<RuleResult> notExercised() {
        return outcome.rules().stream()
                .filter(r -> r.verdict() == RuleResult.Verdict.NOT_EXERCISED)
                .collect(ImmutableList.toImmutableList());
    }

    /** {@return what the verdict relies on: steps whose acts the writer takes as one, each with the reason} */
    public ImmutableList<String> reliances() {
        return outcome.program().steps().stream()
                .filter(step -> step.asOne().isPresent())
                .map(step -> step.label().orElse(step.sentence()) + " is done as one, because "
                        + step.asOne().get())
                .collect(ImmutableList.toImmutableList());
    }

    /** {@return the rules of extended rulebooks that do not count as they stand there, each with the reason} */
    public ImmutableList<Overridden> overridden() {
        return procedure.keeps().stream()
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
