package org.keeplit.insight;

import com.google.common.collect.ImmutableList;
import java.util.List;
import java.util.Optional;
import org.keeplit.explore.Proving;
import org.keeplit.outcome.Finding;
import org.keeplit.outcome.Limits;
import org.keeplit.outcome.Outcome;
import org.keeplit.outcome.SlipResult;
import org.keeplit.outcome.SlipTable;
import org.keeplit.outcome.Watcher;
import org.keeplit.procedure.Instance;
import org.keeplit.program.Act;
import org.keeplit.program.Program;
import org.keeplit.program.Slip;
import org.keeplit.program.Slipping;

/** Tries every single slip in a procedure that holds. */
public final class Slips {
    private Slips() {}

    /**
     * Tries every slip.
     *
     * @param instance the procedure, where it is tried and from which start
     * @param prepared the same, ready to be explored
     * @param limits how far to go for each slip
     * @param watcher is told how it gets on; may stop it
     * @return how each slip ends, in the order of the acts; nothing is tried of what does not hold without a slip
     */
    public static SlipTable of(Instance instance, Proving.Prepared prepared, Limits limits, Watcher watcher) {
        List<Slip> slips = Slipping.of(prepared.program());
        Outcome plain = Proving.explore(prepared, limits, (states, open) -> watcher.goOn(0, slips.size()));
        if (plain.answer() != Outcome.Answer.HOLDS) {
            return new SlipTable(instance, false, plain.answer() == Outcome.Answer.UNDECIDED, ImmutableList.of());
        }
        return all(instance, prepared, slips, limits, watcher);
    }

    private static SlipTable all(
            Instance instance, Proving.Prepared prepared, List<Slip> slips, Limits limits, Watcher watcher) {
        ImmutableList.Builder<SlipResult> all = ImmutableList.builder();
        SlipCures cures = new SlipCures(prepared, limits);
        for (int i = 0; i < slips.size(); i++) {
            if (!watcher.goOn(i, slips.size() - i)) {
                return new SlipTable(instance, true, true, all.build());
            }
            int done = i;
            Slip slip = slips.get(i);
            Optional<Program> program = Slipping.with(prepared.program(), slip);
            if (program.isPresent()) {
                Outcome outcome = Proving.explore(
                        Proving.with(prepared, program.get()), limits, (states, open) -> watcher.goOn(done, slips.size() - done));
                Act act = prepared.program().acts().get(slip.act());
                SlipResult result = result(slip, act.stepName(), outcome);
                all.add(result.ending() == SlipResult.Ending.EXPOSED ? cures.of(result, slip, act) : result);
            }
        }
        return new SlipTable(instance, true, all.build());
    }

    /** What breaks a rule, or what a step or the end requires, counts before what a check stops. */
    static SlipResult result(Slip slip, String step, Outcome outcome) {
        ImmutableList<Finding> harm = of(outcome, Finding.Kind.RULE, Finding.Kind.FLASH, Finding.Kind.REQUIREMENT,
                Finding.Kind.ENDING, Finding.Kind.EXPECTATION, Finding.Kind.STUCK);
        if (!harm.isEmpty()) {
            return ended(slip, step, SlipResult.Ending.EXPOSED, harm);
        } else if (outcome.cut().isPresent()) {
            return ended(slip, step, SlipResult.Ending.UNDECIDED, ImmutableList.of());
        }
        ImmutableList<Finding> stops = of(outcome, Finding.Kind.STOP);
        ImmutableList<Finding> cannot = of(outcome, Finding.Kind.CANNOT);
        if (!stops.isEmpty()) {
            return ended(slip, step, SlipResult.Ending.CAUGHT, stops);
        }
        return cannot.isEmpty()
                ? ended(slip, step, SlipResult.Ending.HARMLESS, ImmutableList.of())
                : ended(slip, step, SlipResult.Ending.NOTICED, cannot);
    }

    private static SlipResult ended(Slip slip, String step, SlipResult.Ending ending, ImmutableList<Finding> findings) {
        return new SlipResult(slip.kind(), slip.act(), slip.words(), step, ending, findings, Optional.empty());
    }

    private static ImmutableList<Finding> of(Outcome outcome, Finding.Kind... kinds) {
        List<Finding.Kind> wanted = List.of(kinds);
        return outcome.findings().stream()
                .filter(f -> wanted.contains(f.kind()))
                .collect(ImmutableList.toImmutableList());
    }
}
