package org.keeplit.explore;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.keeplit.outcome.TraceStep;
import org.keeplit.program.Act;
import org.keeplit.program.Primitive;
import org.keeplit.program.Reaction;

/** Replays the way to a state and says what each act changed. */
final class Tracer {
    private final Machine machine;
    private final StateStore store;
    private final Edges edges;
    private final StateWords words;
    private final Replaying replaying;
    private final Scene was;
    private final Scene is;

    Tracer(Machine machine, StateStore store, Edges edges) {
        this.machine = machine;
        this.store = store;
        this.edges = edges;
        this.words = new StateWords(machine.world().program());
        this.replaying = new Replaying(machine);
        this.was = machine.scene();
        this.is = machine.scene();
    }

    /**
     * The way to a state and one edge further.
     *
     * @param state the number of the state
     * @param last the act that is tried there with what follows by itself, or act -1
     * @return the acts with what they changed; the last one as it would change it, even if it was refused
     */
    ImmutableList<TraceStep> trace(int state, Edges.Edge last) {
        List<TraceStep> steps = new ArrayList<>();
        follow(way(state, last), (step, edge, reaction, before, after) -> steps.add(step));
        return ImmutableList.copyOf(steps);
    }

    /** {@return the edges to a state and one further} @param last the further one; none if its act is -1 */
    List<Edges.Edge> way(int state, Edges.Edge last) {
        List<Edges.Edge> way = new ArrayList<>();
        for (int at = state; store.parent(at) >= 0; at = store.parent(at)) {
            way.add(edges.edge(store.edge(at)));
        }
        Collections.reverse(way);
        if (last.act() >= 0) {
            way.add(last);
        }
        return way;
    }

    /** Is told of each act of a way and of what came by itself after it. */
    interface Told {
        /** One of them. @param reaction what came by itself; null for the act */
        void of(TraceStep step, Edges.Edge edge, Reaction reaction, long[] before, long[] after);
    }

    /** Replays a way from the start. */
    void follow(List<Edges.Edge> way, Told told) {
        long[] now = machine.world().program().layout().initial();
        int[] number = {0};
        for (Edges.Edge edge : way) {
            Act act = machine.world().program().acts().get(edge.act());
            now = replaying.replay(now, edge, (reaction, before, after) ->
                    told.of(step(++number[0], reaction, act, before, after), edge, reaction, before, after));
        }
    }

    /** {@return the state that an edge leads to, replayed} */
    long[] after(long[] state, Edges.Edge edge) {
        return replaying.after(state, edge);
    }

    /** {@return a step of a trace} @param reaction what came by itself after the act; null for the act */
    private TraceStep step(int number, Reaction reaction, Act act, long[] before, long[] after) {
        List<String> changes = new ArrayList<>(words.changes(before, after));
        was.at(before);
        is.at(after);
        // After a flash the model is void: what it says of voltages and supply would only mislead.
        boolean flash = is.analysis().status().shortedAnywhere();
        if (flash) {
            changes.add("two voltages, or a voltage and a ground, meet: nothing after this is known");
        } else {
            changes.addAll(LevelWords.changes(machine.world().grid(), was.analysis(), is.analysis()));
        }
        return new TraceStep(
                number,
                reaction != null,
                reaction == null ? act.actor() : reaction.device().name(),
                reaction == null ? act.text() : machine.reactions().words(reaction, was, isFault(act)),
                act.stepName(),
                act.step().span().line(),
                ImmutableList.copyOf(changes),
                flash ? ImmutableList.of() : Supply.lost(machine.world(), was.analysis(), is.analysis()));
    }

    private static boolean isFault(Act act) {
        return act.primitives().stream().anyMatch(Primitive.Fault.class::isInstance);
    }
}
