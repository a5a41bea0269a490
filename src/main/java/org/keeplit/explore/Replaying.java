package org.keeplit.explore;

import java.util.List;
import org.keeplit.network.Conductor;
import org.keeplit.program.Orders;
import org.keeplit.program.Reaction;

/** Does again what is known to have happened. */
final class Replaying {
    private final Machine machine;
    private final Scene moving;

    Replaying(Machine machine) {
        this.machine = machine;
        this.moving = machine.scene();
    }

    /** Is told of each change on the way. */
    interface Change {
        /** An act, or what came by itself after it. @param reaction what came by itself; null for the act */
        void from(Reaction reaction, long[] before, long[] after);
    }

    /** {@return the state that an edge leads to, replayed} */
    long[] after(long[] state, Edges.Edge edge) {
        return replay(state, edge, (reaction, before, after) -> {});
    }

    /** {@return the state that an act leads to with what followed by itself, replayed} @param reactions the reactions, by number */
    long[] after(long[] state, Orders.Move move, List<Integer> reactions) {
        return replay(state, move, reactions, (reaction, before, after) -> {});
    }

    /** Replays an edge. @param told is told of each change {@return the state that it leads to} */
    long[] replay(long[] state, Edges.Edge edge, Change told) {
        return replay(state, move(state, edge.act()), edge.reactions(), told);
    }

    private long[] replay(long[] state, Orders.Move move, List<Integer> reactions, Change told) {
        long[] now = machine.apply(move, moving.at(state));
        told.from(null, state, now);
        Reactions.Since since = machine.beginning(move.act());
        for (int id : reactions) {
            Reaction reaction = machine.world().program().reactions().get(id);
            List<Conductor> moved = Reactions.moved(reaction, moving.at(now), since);
            since = since.then(reaction, moved);
            long[] next = machine.react(reaction, moved, moving);
            told.from(reaction, now, next);
            now = next;
        }
        return now;
    }

    private Orders.Move move(long[] state, int act) {
        for (Orders.Move move : machine.orders().moves(state)) {
            if (move.act().id() == act && machine.isOpen(move, state)) {
                return move;
            }
        }
        for (Orders.Move move : machine.byChance()) {
            if (move.act().id() == act) {
                return move;
            }
        }
        throw new IllegalStateException("act " + act + " does not go on from here");
    }
}
