package org.keeplit.electric.power;

import java.util.BitSet;
import java.util.HashMap;
import java.util.Map;
import java.util.function.Predicate;
import org.keeplit.electric.Cells;
import org.keeplit.electric.Contact;
import org.keeplit.electric.flow.FlowResult;
import org.keeplit.electric.flow.FlowSolver;
import org.keeplit.electric.flow.FlowState;

/**
 * Load flows of sets of closed contacts, each worked out once. A solution is a pure function of its state; this only
 * keeps it. Not safe for several threads at once.
 */
public final class PowerStates {
    private final PowerModel model;
    private final Cells cells;
    private final FlowSolver solver;
    private final FlowState bare;
    private final Map<FlowState, FlowResult> known = new HashMap<>();

    /**
     * Prepares a model.
     *
     * @param model the model
     * @param cells the cells over whose kept contacts the sets are given
     * @param closedAtStart whether a contact that the cells drew together is closed
     */
    public PowerStates(PowerModel model, Cells cells, Predicate<Contact> closedAtStart) {
        this.model = model;
        this.cells = cells;
        this.solver = model.flow().solver();
        FlowState.Editor edit = model.flow().baseState().edit();
        for (Contact contact : cells.grid().contacts()) {
            edit.contact(model.element(contact), cells.index(contact.id()) < 0 && closedAtStart.test(contact));
        }
        this.bare = edit.state();
    }

    /** {@return the model} */
    public PowerModel model() {
        return model;
    }

    /**
     * The state of a set of closed contacts.
     *
     * @param closed the set, over {@link Cells#kept}
     * @param loadCase the number of the load case
     * @return the state, with taps as the network states them
     */
    public FlowState state(BitSet closed, int loadCase) {
        FlowState.Editor edit = bare.edit().loadCase(loadCase);
        for (int i = closed.nextSetBit(0); i >= 0; i = closed.nextSetBit(i + 1)) {
            edit.contact(model.element(cells.kept().get(i)), true);
        }
        return edit.state();
    }

    /**
     * The load flow of a set of closed contacts.
     *
     * @param closed the set, over {@link Cells#kept}
     * @param loadCase the number of the load case
     * @return a solution, or that there is none
     */
    public FlowResult solve(BitSet closed, int loadCase) {
        return known.computeIfAbsent(state(closed, loadCase), solver::solve);
    }

    /** {@return how many load flows were worked out} */
    public int size() {
        return known.size();
    }
}
