package org.keeplit.explore;

import com.google.common.collect.ImmutableList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import org.keeplit.condition.Condition;
import org.keeplit.network.Conductor;
import org.keeplit.outcome.Finding;
import org.keeplit.outcome.Found;
import org.keeplit.outcome.Outcome;
import org.keeplit.outcome.RuleAtStep;
import org.keeplit.outcome.RuleSeen;
import org.keeplit.outcome.Why;
import org.keeplit.procedure.Bound;
import org.keeplit.procedure.Permit;
import org.keeplit.procedure.Temporary;
import org.keeplit.program.Program;

/** What an exploration found, kept so that more can be asked of it. It belongs to one thread. */
public final class Explored implements Found {
    private final Machine machine;
    private final StateStore store;
    private final Tally tally;
    private final Reporting reporting;
    private final Explorer explorer;
    private final Outcome outcome;

    Explored(Machine machine, StateStore store, Tally tally, Reporting reporting, Explorer explorer) {
        this.machine = machine;
        this.store = store;
        this.tally = tally;
        this.reporting = reporting;
        this.explorer = explorer;
        this.outcome = reporting.outcome(explorer, tally);
    }

    @Override
    public Outcome outcome() {
        return outcome;
    }

    /** {@return what was explored} */
    public Program program() {
        return machine.world().program();
    }

    /**
     * Goes through the states, in the order in which they were found.
     *
     * @param to is told each state as the program packs it, in an array that it may keep
     */
    public void states(Consumer<long[]> to) {
        for (int number = 0; number < store.size(); number++) {
            long[] state = new long[machine.world().program().layout().words()];
            store.load(number, state);
            to.accept(state);
        }
    }

    @Override
    public ImmutableList<RuleSeen> seen() {
        return new Covering(machine).over(new StateWalk(machine, store));
    }

    @Override
    public Optional<ImmutableList<Why>> reasons(
            Finding finding, Map<String, String> bindings, List<Condition> conditions) {
        return reporting.root(finding).byBinding().entrySet().stream()
                .filter(one -> binds(one.getKey(), bindings))
                .findFirst()
                .map(one -> reporting.reasons(one.getValue(), declared(one.getKey()), conditions));
    }

    /** {@return the names that the procedure declares, and before them those of a rule} */
    private Environment declared(Environment own) {
        Bound bound = machine.world().program().bound();
        Environment all = Environment.EMPTY;
        for (Temporary temporary : bound.temporaries()) {
            all = all.with(temporary.name(), new Obj.Family(temporary));
        }
        for (Permit permit : bound.permits()) {
            all = all.with(permit.name(), new Obj.Paper(permit));
        }
        for (Map.Entry<String, Obj> entry : own.objects().entrySet()) {
            all = all.with(entry.getKey(), entry.getValue());
        }
        return all;
    }

    private static boolean binds(Environment environment, Map<String, String> bindings) {
        return bindings.entrySet().stream().allMatch(entry -> {
            Obj object = environment.get(entry.getKey());
            return object != null && object.words().equals(entry.getValue());
        });
    }

    /**
     * Explains a rule at a step, before the step begins and after its last act, on one shortest way there.
     *
     * @param rule the rule's name
     * @param step the step's label, or its sentence if it has none
     * @param phase the phase, if only the acts on it are meant
     * @return the explanation; nothing if no way leads through the step, or there is no such rule
     */
    public Optional<RuleAtStep> at(String rule, String step, Optional<Conductor> phase) {
        return new StepFinder(machine, store, explorer, reporting).find(rule, step, phase);
    }

    /**
     * The way to a finding, state by state.
     *
     * @param finding one of the findings or notes of the outcome
     * @return the start and every act up to the one at which it came up, as it would change things even if it was refused
     */
    public ImmutableList<Frame> story(Finding finding) {
        Judging.Break broken = reporting.root(finding).nearest();
        Tracer tracer = reporting.tracer();
        return frames(tracer).of(tracer.way(broken.at().state(), new Edges.Edge(broken.at().act(), broken.at().reactions())));
    }

    /**
     * Ways through the procedure in the order of its text, state by state.
     *
     * @return a way that takes the first branch of every choice, then others until every act is on one of them as far as that goes;
     *     each up to the end, or to what goes wrong
     */
    public ImmutableList<ImmutableList<Frame>> asWritten() {
        Frames frames = frames(reporting.tracer());
        return frames.asWritten().stream().map(frames::of).collect(ImmutableList.toImmutableList());
    }

    private Frames frames(Tracer tracer) {
        return new Frames(machine, tracer);
    }

    /** {@return where people may be once an act is done, over all orders in which nothing is broken} */
    public Whereabouts whereabouts() {
        return Whereabouts.of(machine, store, explorer);
    }
}
