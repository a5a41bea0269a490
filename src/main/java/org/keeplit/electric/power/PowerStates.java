package org.keeplit.electric.power;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import org.keeplit.electric.Cells;
import org.keeplit.electric.Contact;
import org.keeplit.electric.complex.Complex;
import org.keeplit.electric.flow.Fault;
import org.keeplit.electric.flow.FaultLoads;
import org.keeplit.electric.flow.FaultSolution;
import org.keeplit.electric.flow.FlowModel;
import org.keeplit.electric.flow.FlowResult;
import org.keeplit.electric.flow.FlowSolver;
import org.keeplit.electric.flow.FlowState;
import org.keeplit.electric.flow.ShortCircuitSolver;
import org.keeplit.network.Conductor;
import org.keeplit.network.Phases;
import org.keeplit.program.Vertex;

/**
 * Load flows of sets of closed contacts, each worked out once. A solution is a pure function of its state; this only
 * keeps it. Not safe for several threads at once.
 */
public final class PowerStates {
    /** How many solutions are kept before all are forgotten; each holds the voltages of the whole network. */
    private static final int KEPT = 5_000;
    /** In ohm; a kilometre of dead conductor has some 300 000 by its charging. */
    private static final double FLOATING = 1e7;

    private final PowerModel model;
    private final Cells cells;
    private final FlowSolver solver;
    private final FlowState bare;
    private final Map<FlowState, FlowResult> known = new HashMap<>();
    private final Map<Place, Double> faults = new HashMap<>();

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
     * The load flow of a set of closed contacts, less some.
     *
     * @param closed the set, over {@link Cells#kept}
     * @param opened contacts that are taken as open
     * @param loadCase the number of the load case
     * @return a solution, or that there is none
     */
    public FlowResult solveWithout(BitSet closed, List<Contact> opened, int loadCase) {
        FlowState.Editor edit = state(closed, loadCase).edit();
        opened.forEach(contact -> edit.contact(model.element(contact), false));
        return solve(edit.state());
    }

    /**
     * The load flow of a set of closed contacts.
     *
     * @param closed the set, over {@link Cells#kept}
     * @param loadCase the number of the load case
     * @return a solution, or that there is none
     */
    public FlowResult solve(BitSet closed, int loadCase) {
        return solve(state(closed, loadCase));
    }

    private FlowResult solve(FlowState state) {
        if (known.size() >= KEPT) {
            known.clear();
        }
        return known.computeIfAbsent(state, solver::solve);
    }

    /**
     * The largest current of a bolted three-phase, line-to-line or line-to-ground fault, with generators off.
     *
     * @param closed the set of closed contacts, over {@link Cells#kept}
     * @param vertex where
     * @return the current in the faulted conductor of that vertex, in ampere
     */
    public double faultCurrent(BitSet closed, int vertex) {
        FlowState state = state(closed, 0);
        return faults.computeIfAbsent(new Place(state, vertex), p -> largestFault(state, vertex));
    }

    private double largestFault(FlowState state, int vertex) {
        int here = model.terminal(vertex);
        if (here == FlowModel.GROUND) {
            return 0;
        }
        Vertex there = cells.grid().vertices().get(vertex);
        ShortCircuitSolver solver = model.flow().shortCircuit(FaultLoads.IGNORED);
        if (floats(solver, state, here)) {
            return 0;
        }
        double most = current(solver.solve(state, Fault.lineToGround(here, Complex.ZERO)));
        List<Integer> others = new ArrayList<>();
        for (Conductor phase : Phases.ABC) {
            cells.grid()
                    .number(beside(there, phase))
                    .map(model::terminal)
                    .filter(t -> t != here && t != FlowModel.GROUND && !floats(solver, state, t))
                    .ifPresent(others::add);
        }
        for (int other : others) {
            most = Math.max(most, current(solver.solve(state, Fault.lineToLine(here, other, Complex.ZERO))));
        }
        if (others.size() == 2) {
            Fault three = Fault.threePhase(here, others.get(0), others.get(1), Complex.ZERO);
            most = Math.max(most, current(solver.solve(state, three)));
        }
        return most;
    }

    /** {@return whether only stray conductance holds a terminal; two such, tied together, would be one to the solver} */
    private static boolean floats(ShortCircuitSolver solver, FlowState state, int terminal) {
        return solver.thevenin(state, terminal).impedance().at(0, 0).abs() > FLOATING;
    }

    /** {@return the same place on another phase} */
    private static Vertex beside(Vertex vertex, Conductor phase) {
        if (vertex instanceof Vertex.AtNode node) {
            return new Vertex.AtNode(node.node(), phase);
        } else if (vertex instanceof Vertex.Lead lead) {
            return new Vertex.Lead(lead.device(), lead.side(), phase);
        } else if (vertex instanceof Vertex.Bushing bushing) {
            return new Vertex.Bushing(bushing.device(), bushing.side(), phase);
        } else if (vertex instanceof Vertex.Temporary piece) {
            return new Vertex.Temporary(piece.family(), phase);
        }
        return vertex;
    }

    private static double current(FaultSolution solution) {
        return solution.faultCurrents().get(0).abs();
    }

    private record Place(FlowState state, int vertex) {}

    /** {@return how many load flows were worked out} */
    public int size() {
        return known.size();
    }
}
