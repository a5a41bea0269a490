package org.keeplit.language;

import com.google.common.collect.ImmutableSet;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.keeplit.condition.PhaseTerm;
import org.keeplit.condition.Term;
import org.keeplit.condition.Type;
import org.keeplit.network.LeadEnd;
import org.keeplit.procedure.Action;

/** The steps that move leads and protective grounds. */
final class LeadSteps {
    private LeadSteps() {}

    static List<StepPattern> patterns() {
        List<StepPattern> all = new ArrayList<>();
        for (LeadEnd end : LeadEnd.values()) {
            String at = " {term} at " + end.word() + " end";
            all.add(StepPattern.of("takes|take off" + at, (m, s) -> lead(m, s, end, false)));
            all.add(StepPattern.of("puts|put on" + at, (m, s) -> lead(m, s, end, true)));
        }
        all.add(StepPattern.of("applies|apply {term} to {term}", LeadSteps::apply));
        return all;
    }

    private static List<Action> lead(StepPattern.Match match, StepText step, LeadEnd end, boolean on) {
        Term term = step.resolve(match.term(0), ImmutableSet.of(Type.POINT, Type.DEVICE), "this step");
        if (!(term instanceof Term.LeadOf lead)) {
            String words = match.term(0).words();
            throw new Misread(Code.WRONG_SORT
                    .at(match.term(0).span(), "only a lead comes off and goes on at its ends")
                    .help("say which: the source lead of " + words + ", or the load lead of " + words));
        }
        // Rolled leads: the line end goes on another phase than the lead's own.
        Optional<PhaseTerm> onto = on && end == LeadEnd.LINE && step.option("onto", "phase")
                ? Optional.of(PhaseReader.term(step.cursor(), step.scope()))
                : Optional.empty();
        return List.of(new Action.MoveLead(lead.of(), lead.side(), end, on, onto));
    }

    private static List<Action> apply(StepPattern.Match match, StepText step) {
        Term ground = step.resolve(match.term(0), ImmutableSet.of(Type.GROUND), "“applies”");
        Term point = step.resolve(match.term(1), ImmutableSet.of(Type.POINT), "“applies … to”");
        return List.of(new Action.ApplyGround(ground, point, groundOrder(step)));
    }

    /** {@return which end of a ground moves first, as far as the step says it} */
    static Action.Order groundOrder(StepText step) {
        if (step.option("ground", "end", "first")) {
            return Action.Order.GROUND_END;
        }
        return step.option("line", "end", "first") ? Action.Order.LINE_END : Action.Order.EITHER;
    }
}
