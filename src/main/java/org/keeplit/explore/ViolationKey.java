package org.keeplit.explore;

import java.util.Optional;
import org.keeplit.network.Conductor;
import org.keeplit.outcome.Finding;
import org.keeplit.program.Act;
import org.keeplit.program.Program;
import org.keeplit.rule.Rule;

/**
 * What tells a violation from others: what sort it is, which rule, and where it came up. Names play no part in it, since rules of two
 * rulebooks may share one.
 *
 * @param kind what sort it is
 * @param rule the number of the rule in the run; -1 where it is no rule
 * @param part which line of {@code ends with}; 0 for all else
 * @param step the name of the step, and the line where it is written; empty where it is not at a step. A step that is done several
 *     times, or an event that may come to several things, is one
 * @param phase the phase, if it has one
 */
record ViolationKey(Finding.Kind kind, int rule, int part, String step, Optional<Conductor> phase) {
    /** {@return what tells a violation from others} @param found the violation @param program what was done */
    static ViolationKey of(Judging.Break found, Program program) {
        int rule = found.instance() == null ? -1 : found.instance().number();
        if (found.at().because() != null || found.severity() != Rule.Severity.STOP) {
            // Told once: what follows another break, and a caution, which stays so in the states that follow.
            return new ViolationKey(found.kind(), rule, 0, "", Optional.empty());
        }
        Optional<Act> act =
                found.at().act() < 0 ? Optional.empty() : Optional.of(program.acts().get(found.at().act()));
        return new ViolationKey(
                found.kind(),
                rule,
                found.kind() == Finding.Kind.ENDING ? found.part() : 0,
                act.map(a -> a.stepName() + ":" + a.step().span().line()).orElse(""),
                BreakWords.phase(found, act));
    }
}
