package org.keeplit.drill;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.keeplit.explore.Stepper;
import org.keeplit.outcome.Finding;
import org.keeplit.outcome.Harm;
import org.keeplit.outcome.TraceStep;
import org.keeplit.program.Astray;
import org.keeplit.program.Orders;
import org.keeplit.rule.Rule;

/** Finds what comes of a wrong choice: it is done, and then all else in the order of the text, until something goes wrong or all is over. */
final class Consequence {
    private static final Set<Finding.Kind> HARM = Set.of(
            Finding.Kind.RULE, Finding.Kind.FLASH, Finding.Kind.REQUIREMENT, Finding.Kind.EXPECTATION, Finding.Kind.ENDING,
            Finding.Kind.STUCK);

    private final Stepper stepper;
    private final Astray astray;

    Consequence(Stepper stepper, Astray astray) {
        this.stepper = stepper;
        this.astray = astray;
    }

    /**
     * What came of it.
     *
     * @param at how many acts after the wrong one it came up
     * @param state the state that is shown: with the harm, or after the wrong acts
     */
    record Came(
            Drill.Ending ending, ImmutableList<String> now, String told, String why, String by, int at,
            ImmutableList<TraceStep.Lost> lost, long[] state) {}

    /** {@return what comes of some acts that are done one after another from a state} @param early acts that are not done again in their turn */
    Came of(long[] from, List<Orders.Move> wrong, Set<Integer> early) {
        long[] state = from;
        long[] done = from;
        int acts = -wrong.size();
        List<Orders.Move> open = new ArrayList<>(wrong);
        while (true) {
            boolean choosing = !open.isEmpty();
            Orders.Move move = choosing ? open.remove(0) : next(state, early);
            if (move == null) {
                return atEnd(from, state, done, Math.max(0, acts));
            }
            Stepper.Tried tried = stepper.attempt(state, move);
            acts++;
            if (tried.trouble().isPresent()) {
                return new Came(Drill.Ending.UNKNOWN, ImmutableList.of(), tried.trouble().get(), "", "", Math.max(0, acts), ImmutableList.of(), state);
            } else if (!tried.harms().isEmpty()) {
                long[] worst = tried.worst().get().orElse(state);
                return harmed(from, choosing ? worst : done, worst, first(tried.harms()), Math.max(0, acts));
            }
            state = tried.states().get(0);
            done = choosing ? state : done;
        }
    }

    /** {@return what comes next in the order of the text; null at the end or where everything waits} */
    private Orders.Move next(long[] state, Set<Integer> early) {
        List<Orders.Move> moves = stepper.moves(state);
        Set<Integer> skipped = new HashSet<>();
        early.forEach(act -> skipped.add(astray.leftOut().get(act)));
        for (Orders.Move move : moves) {
            int act = move.act().id();
            boolean wrong = astray.slips().containsKey(act) && !skipped.contains(act);
            if (!wrong && !early.contains(act)) {
                return move;
            }
        }
        return null;
    }

    private static Harm first(List<Harm> harms) {
        return harms.stream().filter(h -> HARM.contains(h.kind())).findFirst().orElse(harms.get(0));
    }

    private Came harmed(long[] from, long[] done, long[] worst, Harm harm, int at) {
        Drill.Ending ending = HARM.contains(harm.kind())
                ? Drill.Ending.COSTS
                : harm.kind() == Finding.Kind.STOP ? Drill.Ending.CAUGHT : Drill.Ending.NOTICED;
        Optional<Rule> rule = harm.rule();
        boolean refused = ending != Drill.Ending.COSTS && at == 0;
        return new Came(
                ending,
                refused ? ImmutableList.of() : stepper.changes(from, done),
                harm.sentence(),
                rule.map(r -> r.because() + " (" + r.citation().orElse("common practice, no source") + ")").orElse(""),
                rule.map(r -> "rule " + r.name()).orElse(ending == Drill.Ending.CAUGHT ? "step " + harm.step() : ""),
                at,
                ending == Drill.Ending.COSTS ? stepper.lost(from, worst) : ImmutableList.of(),
                refused ? from : ending == Drill.Ending.COSTS ? worst : done);
    }

    private Came atEnd(long[] from, long[] state, long[] done, int at) {
        if (!stepper.isOver(state)) {
            return new Came(
                    Drill.Ending.NOTICED, stepper.changes(from, done), "somebody waits for what never comes", "", "", at, ImmutableList.of(), done);
        }
        List<Harm> harms = stepper.atEnd(state);
        return harms.isEmpty()
                ? new Came(Drill.Ending.HARMLESS, stepper.changes(from, done), "", "", "", at, ImmutableList.of(), done)
                : harmed(from, done, state, first(harms), at);
    }
}
