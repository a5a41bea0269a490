package org.keeplit.explore;

import java.util.ArrayDeque;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.keeplit.condition.Truth;
import org.keeplit.network.Conductor;
import org.keeplit.program.Orders;
import org.keeplit.program.Reaction;
import org.keeplit.program.StateKey;

/**
 * Lets the events of a run happen at its start, with nobody doing anything, and has {@link Judging} keep which rules they break: what an
 * event does by itself is told apart from what the procedure makes of it.
 */
final class EventsAlone {
    private final Machine machine;
    private final Scene scene;
    private final Judging judging;
    private final Set<StateKey> met = new HashSet<>();
    private final ArrayDeque<long[]> open = new ArrayDeque<>();

    private EventsAlone(Machine machine, Scene scene, Judging judging) {
        this.machine = machine;
        this.scene = scene;
        this.judging = judging;
    }

    static void judge(Machine machine, Scene scene, Judging judging) {
        if (!machine.byChance().isEmpty()) {
            new EventsAlone(machine, scene, judging).from(machine.world().program().layout().initial());
        }
    }

    private void from(long[] start) {
        open.add(start);
        while (!open.isEmpty()) {
            long[] state = open.poll();
            for (Orders.Move move : machine.byChance()) {
                if (machine.act(move.act().id()).possible().eval(scene.at(state)) != Truth.FALSE) {
                    settle(machine.apply(move, scene), machine.beginning(move.act()));
                }
            }
        }
    }

    /** Lets come what comes by itself; judges every state on the way, and goes on from those at rest. */
    private void settle(long[] raw, Reactions.Since beginning) {
        record Now(long[] state, Reactions.Since since) {}
        ArrayDeque<Now> settling = new ArrayDeque<>(List.of(new Now(raw, beginning)));
        Set<Object> passed = new HashSet<>();
        while (!settling.isEmpty()) {
            Now now = settling.poll();
            scene.at(now.state);
            judging.alone();
            if (scene.analysis().status().shortedAnywhere()) {
                continue;
            }
            Reactions.Options options = machine.reactions().isIdle()
                    ? Reactions.Options.REST
                    : machine.reactions().options(scene, now.since);
            if (options == null) {
                continue;
            }
            if (options.atRest() && met.add(StateKey.of(now.state))) {
                open.add(now.state);
            }
            for (Reaction reaction : options.next()) {
                List<Conductor> moved = Reactions.moved(reaction, scene.at(now.state), now.since);
                Reactions.Since since = now.since.then(reaction, moved);
                long[] next = machine.react(reaction, moved, scene);
                if (passed.add(List.of(since.unordered(), StateKey.of(next)))) {
                    settling.add(new Now(next, since));
                }
            }
        }
    }
}
