package org.keeplit.gridfile;

import com.google.common.collect.ImmutableList;
import java.util.Optional;
import org.keeplit.explore.Everywhere;
import org.keeplit.explore.Proving;
import org.keeplit.language.Library;
import org.keeplit.outcome.Limits;
import org.keeplit.outcome.Outcome;
import org.keeplit.outcome.Watcher;
import org.keeplit.page.InputHash;
import org.keeplit.page.Proof;
import org.keeplit.procedure.Instance;
import org.keeplit.text.Problems;

/** Switching plans of the procedures of a library, for programs that know the CIM Operations package. */
public final class SwitchingPlans {
    private SwitchingPlans() {}

    /**
     * What came of making a switching plan.
     *
     * @param instance the procedure, where it was explored and from which start
     * @param proof what was proved of it
     * @param plan the plan; only of what holds
     * @param reasons why there is none: what breaks, or which limit was reached, a sentence each
     */
    public record Planned(Instance instance, Proof proof, Optional<SwitchingPlan> plan, ImmutableList<String> reasons) {}

    /**
     * Makes a switching plan of every procedure of the given files that must hold and does, on every place that it names.
     *
     * @param library what was read
     * @param limits how far to go for each proof
     * @param watcher is told how each gets on; may stop it
     * @param problems collects what does not fit
     * @return what came of each procedure and place, in the order of the files
     */
    public static ImmutableList<Planned> of(Library library, Limits limits, Watcher watcher, Problems problems) {
        return Everywhere.whatMustHold(
                library.givenProcedures(), library.networks(), problems, (one, prepared) -> planned(one, prepared, limits, watcher));
    }

    private static Planned planned(Instance one, Proving.Prepared prepared, Limits limits, Watcher watcher) {
        Outcome outcome = Proving.proved(prepared, limits, watcher).outcome();
        Proof proof = Proof.of(outcome);
        ImmutableList.Builder<String> reasons = ImmutableList.builder();
        outcome.findings().forEach(f -> reasons.add(f.sentence()));
        outcome.cut().ifPresent(c -> reasons.add("a limit was reached before all states were looked at"));
        if (proof == Proof.NOT_PROVED) {
            reasons.add("no rule that stops came up");
        }
        Optional<SwitchingPlan> plan = proof == Proof.HOLDS
                ? Optional.of(SwitchingPlan.of(one, prepared.program(), InputHash.of(one)))
                : Optional.empty();
        return new Planned(one, proof, plan, reasons.build());
    }
}
