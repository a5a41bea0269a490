package org.keeplit.electric.flow;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.List;
import org.keeplit.electric.complex.Complex;

/**
 * A network for load flow and short circuit: terminals, elements, named load cases and the state
 * that it normally is in. Immutable and safe for use by several threads; what it computes once (the
 * analysis, the base factorisations, the base solutions) it keeps.
 */
public final class FlowModel {
    /** The terminal index of ground, where the voltage is zero by definition. */
    public static final int GROUND = -1;

    private final ImmutableList<String> terminals;
    private final ImmutableList<Element> elements;
    private final FlowState baseState;
    private final FlowOptions options;
    private final NodalPattern pattern;
    private final Zones zones;
    private final List<BaseCase> baseCases = new ArrayList<>();
    private NodalMatrix network;

    FlowModel(List<String> terminals, FlowState baseState, FlowOptions options) {
        this.terminals = ImmutableList.copyOf(terminals);
        this.elements = baseState.layout().elements();
        this.baseState = baseState;
        this.options = options;
        pattern = new NodalPattern(terminals.size(), elements);
        zones = new Zones(terminals.size(), elements, baseState.layout());
        for (int k = 0; k < loadCases().size(); k++) {
            baseCases.add(null);
        }
    }

    /**
     * Starts a model.
     *
     * @return an empty builder
     */
    public static FlowModelBuilder builder() {
        return new FlowModelBuilder();
    }

    /**
     * The names of the terminals, by index.
     *
     * @return the names
     */
    public ImmutableList<String> terminals() {
        return terminals;
    }

    /**
     * The elements, by index.
     *
     * @return the elements
     */
    public ImmutableList<Element> elements() {
        return elements;
    }

    /**
     * The names of the load cases, by index.
     *
     * @return the names
     */
    public ImmutableList<String> loadCases() {
        return baseState.layout().loadCases();
    }

    /**
     * The state that the model was built with, in its first load case.
     *
     * @return the base state
     */
    public FlowState baseState() {
        return baseState;
    }

    /**
     * The numbers of the method.
     *
     * @return the options given to the builder
     */
    public FlowOptions options() {
        return options;
    }

    /**
     * Makes a solver; each thread needs its own.
     *
     * @return a solver for this model
     */
    public FlowSolver solver() {
        return new FlowSolver(this);
    }

    /**
     * Makes a short-circuit solver; each thread needs its own.
     *
     * @param loads what becomes of loads
     * @return a solver for this model
     */
    public ShortCircuitSolver shortCircuit(FaultLoads loads) {
        return new ShortCircuitSolver(this, loads);
    }

    NodalPattern pattern() {
        return pattern;
    }

    /**
     * Room for a complex number for each terminal, in elimination order, re and im alternating; one
     * more at the end, always zero, stands for ground.
     */
    double[] vector() {
        return new double[2 * terminals.size() + 2];
    }

    /** A terminal's, or ground's, number in such a vector. */
    Complex at(double[] vector, int terminal) {
        int place = terminal == GROUND ? terminals.size() : pattern.symbolic().place(terminal);
        return new Complex(vector[2 * place], vector[2 * place + 1]);
    }

    Zones zones() {
        return zones;
    }

    /** The base factorisations and solution of a load case, computed at the first request. */
    synchronized BaseCase baseCase(int loadCase) {
        if (baseCases.get(loadCase) == null) {
            baseCases.set(loadCase, new BaseCase(this, loadCase));
        }
        return baseCases.get(loadCase);
    }

    /** The base factorisation without any load. */
    synchronized NodalMatrix network() {
        if (network == null) {
            network = new NodalMatrix(this, element -> element.admittance(baseState));
        }
        return network;
    }
}
