package org.keeplit.explore;

import java.util.List;
import org.keeplit.condition.Truth;
import org.keeplit.program.Orders;

/** Goes through the states of a finished search once more, and through every act that was tried from them. */
final class StateWalk {
    /** Is told what the walk comes to; the scene looks at the state that is meant. */
    interface Visitor {
        /** A state. */
        default void state(int number, Scene scene) {}

        /** A state in which the procedure ends. */
        default void ending(Scene scene) {}

        /** A state in which an act is tried. */
        default void before(int act, Scene scene) {}

        /** The state that an act leads to, before anything follows by itself. */
        default void after(int act, Scene scene) {}
    }

    private final Machine machine;
    private final StateStore store;
    private final Scene scene;

    StateWalk(Machine machine, StateStore store) {
        this.machine = machine;
        this.store = store;
        this.scene = machine.scene();
    }

    void walk(Visitor visitor) {
        for (int number = 0; number < store.size(); number++) {
            long[] state = new long[machine.world().program().layout().words()];
            store.load(number, state);
            visitor.state(number, scene.at(state));
            if (!scene.analysis().status().shortedAnywhere()) {
                acts(state, visitor);
            }
        }
    }

    private void acts(long[] state, Visitor visitor) {
        List<Orders.Move> moves = machine.orders().moves(state);
        if (moves.isEmpty()) {
            visitor.ending(scene);
            return;
        }
        for (Orders.Move move : moves) {
            scene.at(state);
            int act = move.act().id();
            if (!isTried(move)) {
                continue;
            }
            visitor.before(act, scene);
            if (scene.trouble() == null && goesOn(move)) {
                machine.apply(move, scene);
                visitor.after(act, scene);
            }
        }
    }

    private boolean isTried(Orders.Move move) {
        ActCompiler.Compiled act = machine.act(move.act().id());
        return machine.isOpen(move, scene.state())
                && act.awaited().eval(scene) == Truth.TRUE
                && act.possible().eval(scene) != Truth.FALSE;
    }

    /** {@return whether what the step requires is so, and nobody who looks must stop} */
    private boolean goesOn(Orders.Move move) {
        boolean first = machine.orders().isFirst(move, scene.state());
        boolean required = !first
                || machine.requires(move.act().stepNumber()).stream().allMatch(n -> n.eval(scene) == Truth.TRUE);
        return required && machine.seen(move.act().id(), scene) != Truth.FALSE;
    }
}
