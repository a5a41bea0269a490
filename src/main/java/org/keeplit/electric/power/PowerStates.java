package org.keeplit.electric.power;

import com.google.common.collect.ImmutableList;
import com.google.common.primitives.Doubles;
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
import org.keeplit.electric.flow.FaultSweep;
import org.keeplit.electric.flow.FlowModel;
import org.keeplit.electric.flow.FlowResult;
import org.keeplit.electric.flow.FlowSolver;
import org.keeplit.electric.flow.FlowState;
import org.keeplit.electric.flow.ShortCircuitSolver;
import org.keeplit.electric.flow.TapSettlement;
import org.keeplit.network.Conductor;
import org.keeplit.network.Phases;
import org.keeplit.program.Vertex;

/**
 * Load flows of sets of closed contacts, each worked out once. A solution is a pure function of its state; this only
 * keeps it. Safe for several threads at once, which wait for each other.
 */
public final class PowerStates {
    /** How many solutions are kept before all are forgotten; each holds the voltages of the whole network. */
    private static final int KEPT = 5_000;
    /** How many bytes they may take, at sixteen a terminal; of a large network fewer are kept. */
    private static final long KEPT_BYTES = 256L << 20;
    /** In ohm; a kilometre of dead conductor has some 300 000 by its charging. */
    private static final double FLOATING = 1e7;
    /** As a part of nominal voltage: less has only what is coupled or stray. */
    private static final double ALIVE = 0.1;
    /** The most steps of all controls at once; sixteen bring a bank from neutral to the end of its range. */
    private static final int ROUNDS = 100;
    /** Of less than this part of a fault a device sees nothing. */
    private static final double SHARE = 0.01;

    private final PowerModel model;
    private final Cells cells;
    private final FlowSolver solver;
    private final int kept;
    private final ShortCircuitSolver shortCircuit;
    private final FlowState bare;
    private final List<int[]> restingTaps = new ArrayList<>();
    private int solved;
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
        this.kept = (int) Math.max(16, Math.min(KEPT, KEPT_BYTES / (16L * model.flow().terminals().size() + 1)));
        this.shortCircuit = model.flow().shortCircuit(FaultLoads.IGNORED);
        FlowState.Editor edit = model.flow().baseState().edit();
        for (Contact contact : cells.grid().contacts()) {
            edit.contact(model.element(contact), cells.index(contact.id()) < 0 && closedAtStart.test(contact));
        }
        this.bare = edit.state();
        if (!model.controls().isEmpty()) {
            for (Contact contact : cells.grid().contacts()) {
                edit.contact(model.element(contact), closedAtStart.test(contact));
            }
            settle(edit.state());
        }
    }

    /** Finds where controls come to rest at the start of the run, from neutral on, in each case. */
    private void settle(FlowState start) {
        for (int i = 0; i < model.cases().size(); i++) {
            TapSettlement rest = TapSettlement.settle(solver, inCase(start, i), model.controls(), ROUNDS);
            if (!rest.atRest()) {
                throw new PowerException("in the case " + model.cases().get(i)
                        + " the controls of the regulators come to no rest: look at their settings and bandwidths");
            }
            restingTaps.add(model.controls().stream()
                    .mapToInt(c -> rest.result().state().tap(c.regulator()))
                    .toArray());
        }
    }

    private FlowState inCase(FlowState state, int number) {
        int loads = model.flow().loadCases().size();
        FlowState.Editor edit = state.edit().loadCase(number % loads);
        model.generators().forEach(g -> edit.generator(g, number >= loads));
        return edit.state();
    }

    /** {@return the model} */
    public PowerModel model() {
        return model;
    }

    /** Tells which taps are known to stand on neutral. */
    public interface Taps {
        /** None: each stands where the network or its control says. */
        Taps AS_STATED = (regulator, phase) -> false;

        /** {@return whether it does} @param regulator the regulator @param phase the phase */
        boolean neutral(String regulator, Conductor phase);
    }

    /**
     * The state of a set of closed contacts.
     *
     * @param closed the set, over {@link Cells#kept}
     * @param loadCase the number of the case, see {@link PowerModel#cases}
     * @param taps which taps stand on neutral; the others stand where the network or the control says
     * @return the state
     */
    public FlowState state(BitSet closed, int loadCase, Taps taps) {
        FlowState.Editor edit = inCase(bare, loadCase).edit();
        for (int k = 0; k < model.controls().size(); k++) {
            edit.tap(model.controls().get(k).regulator(), restingTaps.get(loadCase)[k]);
        }
        for (int i = closed.nextSetBit(0); i >= 0; i = closed.nextSetBit(i + 1)) {
            edit.contact(model.element(cells.kept().get(i)), true);
        }
        for (PowerModel.Tap tap : model.taps()) {
            if (taps.neutral(tap.regulator(), tap.phase())) {
                edit.tap(tap.element(), 0);
            }
        }
        return edit.state();
    }

    /**
     * A state with a contact opened or closed, and all that one field moves with it.
     *
     * @param state the state
     * @param contact the contact
     * @param closed whether it is closed then
     * @return the other state
     */
    public FlowState switched(FlowState state, Contact contact, boolean closed) {
        FlowState.Editor edit = state.edit();
        for (Contact one : cells.grid().contacts(contact.key())) {
            edit.contact(model.element(one), closed && one.value() == contact.value());
        }
        return edit.state();
    }

    /** {@return a state with some contacts open} @param state the state @param opened the contacts */
    public FlowState without(FlowState state, List<Contact> opened) {
        FlowState.Editor edit = state.edit();
        opened.forEach(contact -> edit.contact(model.element(contact), false));
        return edit.state();
    }

    /** {@return the load flow of a state: a solution, or that there is none} @param state the state */
    public synchronized FlowResult solve(FlowState state) {
        if (known.size() >= kept) {
            known.clear();
        }
        FlowResult result = known.get(state);
        if (result == null) {
            solved++;
            result = solver.solve(state);
            known.put(state, result);
        }
        return result;
    }

    /**
     * The largest current of a bolted three-phase, line-to-line or line-to-ground fault, with generators off and no load.
     *
     * @param state the state
     * @param vertex where
     * @return the current in the faulted conductor of that vertex, in ampere
     */
    public synchronized double faultCurrent(FlowState state, int vertex) {
        return faults.computeIfAbsent(new Place(state, vertex), p -> largestFault(state, vertex));
    }

    private double largestFault(FlowState state, int vertex) {
        int here = model.terminal(vertex);
        if (here == FlowModel.GROUND) {
            return 0;
        }
        Vertex there = cells.grid().vertices().get(vertex);
        if (floats(shortCircuit, state, here)) {
            return 0;
        }
        double most = current(shortCircuit.solve(state, Fault.lineToGround(here, Complex.ZERO)));
        List<Integer> others = new ArrayList<>();
        for (Conductor phase : Phases.LIVE) {
            cells.grid()
                    .number(beside(there, phase))
                    .map(model::terminal)
                    .filter(t -> t != here && t != FlowModel.GROUND && !floats(shortCircuit, state, t))
                    .ifPresent(others::add);
        }
        for (int other : others) {
            most = Math.max(most, current(shortCircuit.solve(state, Fault.lineToLine(here, other, Complex.ZERO))));
        }
        if (others.size() == 2) {
            Fault three = Fault.threePhase(here, others.get(0), others.get(1), Complex.ZERO);
            most = Math.max(most, current(shortCircuit.solve(state, three)));
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

    /**
     * The least that some poles see of faults at any of some places, with no load. Of a fault of which they carry less than a
     * hundredth they see nothing, nor need to: another device stands between it and its source.
     *
     * @param phase of a bolted fault between two phases: the largest of the poles' currents, in ampere
     * @param ground of a fault from one phase to ground: the sum of the poles' currents, in ampere; each infinite where there
     *     is none to see
     */
    public record Least(double phase, double ground) {}

    /**
     * Finds the least that some poles see.
     *
     * @param state the state
     * @param vertices where the fault may be, line vertices
     * @param poles the closed poles of a device, one a phase
     * @param ohms the resistance of a fault to ground
     * @return the least of both sorts of fault
     */
    public synchronized Least leastFault(FlowState state, List<Integer> vertices, List<Contact> poles, double ohms) {
        double phase = Double.POSITIVE_INFINITY;
        double ground = Double.POSITIVE_INFINITY;
        int[] terminals = vertices.stream().mapToInt(model::terminal).toArray();
        FaultSweep sweep = shortCircuit.sweep(state, terminals, poles.stream().mapToInt(model::element).toArray());
        for (int i = 0; i < terminals.length; i++) {
            if (!isAlive(sweep, i, vertices.get(i))) {
                continue;
            }
            ground = Math.min(ground, sweep.toGround(i, ohms, SHARE));
            // Vertices of one node stand near one another, but need not be neighbours.
            for (int j = i + 1; j < terminals.length; j++) {
                if (sameNode(vertices.get(i), vertices.get(j)) && isAlive(sweep, j, vertices.get(j))) {
                    phase = Math.min(phase, sweep.between(i, j, SHARE));
                }
            }
        }
        return new Least(phase, ground);
    }

    /**
     * The most that some poles see of bolted faults, to ground and between two phases.
     *
     * @param phase for each pole, in ampere
     * @param ground of a fault to ground the sum of the poles' currents, in ampere
     */
    public record Most(ImmutableList<Double> phase, double ground) {}

    /**
     * Finds the most that the poles of some devices see, with no load. A pole that carries less than a hundredth of a fault sees
     * nothing of it.
     *
     * @param state the state
     * @param vertices where the fault may be: each alone to ground, and two of one node together
     * @param poles for each device its closed poles
     * @return for each device the most of all these faults
     */
    public synchronized ImmutableList<Most> mostFault(FlowState state, List<Integer> vertices, List<List<Contact>> poles) {
        int[] terminals = vertices.stream().mapToInt(model::terminal).toArray();
        int[] contacts = poles.stream().flatMap(List::stream).mapToInt(model::element).toArray();
        double[] phase = new double[contacts.length];
        double[] ground = new double[poles.size()];
        FaultSweep sweep = shortCircuit.sweep(state, terminals, contacts);
        for (int i = 0; i < terminals.length; i++) {
            for (int j = i; j < terminals.length && isAlive(sweep, i, vertices.get(i)); j++) {
                boolean together = i == j || sameNode(vertices.get(i), vertices.get(j)) && isAlive(sweep, j, vertices.get(j));
                if (!together) {
                    continue;
                }
                Complex[] seen = sweep.currents(i, j, SHARE);
                int c = 0;
                for (int d = 0; d < ground.length; d++) {
                    Complex sum = Complex.ZERO;
                    for (int end = c + poles.get(d).size(); c < end; c++) {
                        phase[c] = Math.max(phase[c], seen[c].abs());
                        sum = sum.plus(seen[c]);
                    }
                    ground[d] = i == j ? Math.max(ground[d], sum.abs()) : ground[d];
                }
            }
        }
        ImmutableList.Builder<Most> all = ImmutableList.builder();
        int c = 0;
        for (int d = 0; d < ground.length; d++) {
            int end = c + poles.get(d).size();
            all.add(new Most(ImmutableList.copyOf(Doubles.asList(phase).subList(c, end)), ground[d]));
            c = end;
        }
        return all.build();
    }

    private boolean isAlive(FaultSweep sweep, int place, int vertex) {
        return sweep.impedance(place, place).abs() <= FLOATING
                && sweep.before(place).abs() > ALIVE * model.nominal(vertex);
    }

    private boolean sameNode(int one, int other) {
        return cells.grid().vertices().get(one) instanceof Vertex.AtNode a
                && cells.grid().vertices().get(other) instanceof Vertex.AtNode b
                && a.node().equals(b.node());
    }

    /** {@return how many load flows were worked out, one that was forgotten and asked again counted twice} */
    public synchronized int solved() {
        return solved;
    }
}
