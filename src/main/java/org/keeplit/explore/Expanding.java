package org.keeplit.explore;

import java.util.List;
import org.keeplit.condition.Truth;
import org.keeplit.outcome.Finding;
import org.keeplit.program.Orders;

/** Tries everything that may come next from a state. It belongs to one thread. */
final class Expanding {
    private final Machine machine;
    private final Scene scene;
    private final Judging judging;
    private final Trying trying;
    private final Ends ends;

    /** Is told of the states in which the procedure ends. */
    interface Ends {
        /** {@return whether nothing is gone on from a state, because a figure could not be worked out} @param number the state's */
        boolean isNumberless(int number);

        /** A state is an end. @param number the state's */
        void end(int number);
    }

    Expanding(Machine machine, Scene scene, Judging judging, Trying.Reached reached, Ends ends) {
        this.machine = machine;
        this.scene = scene;
        this.judging = judging;
        this.trying = new Trying(machine, scene, judging, reached);
        this.ends = ends;
    }

    /** {@return how many acts were tried, and how many reactions followed} */
    long transitions() {
        return trying.transitions();
    }

    /**
     * Tries everything.
     *
     * @param number the number of the state
     * @param state the state
     * @param depth how long the way to it is
     * @param because the rule that was broken on the way, or null
     */
    void expand(int number, long[] state, int depth, String because) {
        List<Orders.Move> moves = machine.orders().moves(state);
        if (moves.isEmpty()) {
            end(number, state, depth, because);
        }
        if (ends.isNumberless(number)) {
            return;
        }
        byChance(number, state, depth, because);
        int waits = -1;
        boolean goes = false;
        for (Orders.Move move : moves) {
            scene.at(state);
            if (!machine.isOpen(move, state)) {
                continue;
            }
            int act = move.act().id();
            if (machine.waits(move, scene)) {
                waits = waits < 0 ? act : waits;
                continue;
            }
            goes = true;
            trying.attempt(move, because == null ? state : null, new Judging.At(number, act, depth + 1, because));
        }
        if (waits >= 0 && !goes) {
            judging.found(Finding.Kind.STUCK, new Judging.At(number, waits, depth, because));
        }
    }

    /** Whatever may happen with nobody doing it may happen in every state. */
    private void byChance(int number, long[] state, int depth, String because) {
        for (Orders.Move move : machine.byChance()) {
            int act = move.act().id();
            if (machine.act(act).possible().eval(scene.at(state)) != Truth.FALSE) {
                trying.attempt(move, because == null ? state : null, new Judging.At(number, act, depth + 1, because));
            }
        }
    }

    private void end(int number, long[] state, int depth, String because) {
        ends.end(number);
        scene.at(state);
        Judging.At at = new Judging.At(number, -1, depth, because);
        judging.rules(machine.atEnd(), at);
        judging.stated(Finding.Kind.ENDING, machine.ends(), at);
    }
}
