package org.keeplit.explore;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.keeplit.condition.Truth;
import org.keeplit.network.Conductor;
import org.keeplit.outcome.RuleAtStep;
import org.keeplit.outcome.TraceStep;
import org.keeplit.outcome.Why;
import org.keeplit.program.Act;
import org.keeplit.program.Orders;
import org.keeplit.rule.Rule;

/** Finds a shortest way through a step, and explains a rule at both ends of the step. */
final class StepFinder {
    private final Machine machine;
    private final StateStore store;
    private final Explorer explorer;
    private final Reporting reporting;
    private final Scene scene;

    StepFinder(Machine machine, StateStore store, Explorer explorer, Reporting reporting) {
        this.machine = machine;
        this.store = store;
        this.explorer = explorer;
        this.reporting = reporting;
        this.scene = machine.scene();
    }

    /** The end of a step. @param state the number of the state that its last act leaves @param move that act */
    private record End(int state, Orders.Move move) {}

    Optional<RuleAtStep> find(String rule, String step, Optional<Conductor> phase) {
        Optional<Rule> wanted =
                machine.rules().stream().filter(r -> r.name().equals(rule)).findFirst();
        return wanted.flatMap(r -> nearest(step, phase).map(end -> explain(r, step, phase, end)));
    }

    /** {@return where the step ends first, without a break before if that is possible} */
    private Optional<End> nearest(String step, Optional<Conductor> phase) {
        End best = null;
        for (int number = 0; number < store.size(); number++) {
            boolean better = best == null || rank(number) < rank(best.state);
            if (better) {
                Orders.Move move = last(number, step, phase);
                best = move == null ? best : new End(number, move);
            }
        }
        return Optional.ofNullable(best);
    }

    private long rank(int number) {
        return explorer.depth(number) + (explorer.isAfterBreak(number) ? 1L << 32 : 0);
    }

    private Orders.Move last(int number, String step, Optional<Conductor> phase) {
        long[] state = load(number);
        if (scene.at(state).analysis().status().shortedAnywhere()) {
            return null;
        }
        for (Orders.Move move : machine.orders().moves(state)) {
            boolean here = isMeant(move.act(), step, phase)
                    && (phase.isPresent() || machine.orders().isLast(move, state));
            if (here
                    && machine.isOpen(move, state)
                    && machine.act(move.act().id()).possible().eval(scene.at(state)) != Truth.FALSE) {
                return move;
            }
        }
        return null;
    }

    private static boolean isMeant(Act act, String step, Optional<Conductor> phase) {
        return act.stepName().equals(step) && (phase.isEmpty() || phase.equals(act.phase()));
    }

    private RuleAtStep explain(Rule rule, String step, Optional<Conductor> phase, End end) {
        List<Integer> states = new ArrayList<>();
        List<Act> acts = new ArrayList<>(List.of(end.move.act()));
        for (int at = end.state; at >= 0; at = store.parent(at)) {
            states.add(at);
            if (store.parent(at) >= 0) {
                acts.add(machine.world().program().acts().get(reporting.act(at)));
            }
        }
        Collections.reverse(states);
        Collections.reverse(acts);
        int first = acts.size() - 1;
        for (int i = acts.size() - 1; i >= 0; i--) {
            boolean same = acts.get(i).stepNumber() == end.move.act().stepNumber();
            first = same && isMeant(acts.get(i), step, phase) ? i : first;
        }
        long[] before = load(states.get(first));
        long[] after = machine.apply(end.move, scene.at(load(end.state)));
        List<RuleInstance> instances = instances(rule, acts.subList(first, acts.size()), before, after);
        ImmutableList<TraceStep> way = reporting.way(end.state, end.move.act().id());
        int number = way.stream().filter(t -> !t.byItself()).skip(first).findFirst().orElseThrow().number();
        return new RuleAtStep(
                rule, step, way, number, !explorer.isAfterBreak(end.state), trees(instances, before), trees(instances, after));
    }

    private ImmutableList<Why> trees(List<RuleInstance> instances, long[] state) {
        scene.at(state);
        return instances.stream().map(i -> reporting.tree(i, scene)).collect(ImmutableList.toImmutableList());
    }

    /** {@return the rule's bindings that some act of the step brings up, or that count before or after it} */
    private List<RuleInstance> instances(Rule rule, List<Act> acts, long[] before, long[] after) {
        List<RuleInstance> all = new ArrayList<>();
        for (Act act : acts) {
            all.addAll(machine.before(act.id()));
            all.addAll(machine.after(act.id()));
        }
        List<RuleInstance> counting = new ArrayList<>();
        for (RuleInstance instance : machine.inStates()) {
            boolean counts = instance.scope().eval(scene.at(before)) != Truth.FALSE;
            counts |= instance.scope().eval(scene.at(after)) != Truth.FALSE;
            if (counts) {
                counting.add(instance);
            }
        }
        all.addAll(counting);
        return all.stream().filter(i -> i.rule() == rule).distinct().toList();
    }

    private long[] load(int number) {
        long[] state = new long[machine.world().program().layout().words()];
        store.load(number, state);
        return state;
    }
}
