package org.keeplit.insight;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.keeplit.explore.Proving;
import org.keeplit.outcome.Finding;
import org.keeplit.outcome.Limits;
import org.keeplit.outcome.Outcome;
import org.keeplit.outcome.SlipResult;
import org.keeplit.outcome.Watcher;
import org.keeplit.program.Act;
import org.keeplit.program.Checking;
import org.keeplit.program.Program;
import org.keeplit.program.Slip;
import org.keeplit.program.Slipping;

/**
 * Finds for an exposed slip one look that catches it: before the step at which harm comes first, somebody looks whether the act was done as
 * it should be. It counts only if the slip is caught then on every way, and the procedure still holds without the slip.
 */
final class SlipCures {
    private final Proving.Prepared prepared;
    private final Limits limits;
    /** For each look at each place the procedure with it; nothing where it does not hold then. */
    private final Map<Asked, Optional<Program>> known = new HashMap<>();

    private record Asked(Checking.Check check, int before) {}

    SlipCures(Proving.Prepared prepared, Limits limits) {
        this.prepared = prepared;
        this.limits = limits;
    }

    /** {@return an exposed slip with the look that catches it, if there is one} @param slip the slip @param act the act at which it happens */
    SlipResult of(SlipResult exposed, Slip slip, Act act) {
        Finding harm = exposed.findings().get(0);
        int before = harm.stepNumber();
        for (Checking.Check check : Checking.of(prepared.program(), act)) {
            Optional<Program> checked = known.computeIfAbsent(new Asked(check, before), this::holding);
            Optional<Program> slipped = checked.flatMap(p -> Slipping.with(p, slip));
            if (slipped.isPresent()) {
                Outcome outcome = explore(slipped.get());
                if (Slips.result(slip, exposed.step(), outcome).ending() == SlipResult.Ending.CAUGHT) {
                    return exposed.with(new SlipResult.Cure(check.actor(), check.text(), before < 0 ? "" : harm.step()));
                }
            }
        }
        return exposed;
    }

    private Optional<Program> holding(Asked asked) {
        Program program = Checking.with(prepared.program(), asked.check, asked.before);
        Outcome outcome = explore(program);
        boolean holds = outcome.findings().isEmpty() && outcome.cut().isEmpty();
        return holds ? Optional.of(program) : Optional.empty();
    }

    private Outcome explore(Program program) {
        return Proving.explore(Proving.with(prepared, program), limits, Watcher.NOBODY);
    }
}
