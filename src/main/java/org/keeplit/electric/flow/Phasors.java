package org.keeplit.electric.flow;

import org.keeplit.electric.complex.Complex;
import org.keeplit.electric.complex.ComplexMatrix;

/**
 * Voltages and currents of a network in one state. Voltages are counted from ground, currents into
 * the element at the position. Whatever no running source reaches is dead: exactly zero.
 */
public abstract sealed class Phasors permits FlowSolution, FaultSolution {
    private final FlowModel model;
    private final FlowState state;
    private final Zones.Live live;
    /** By place in elimination order, re and im alternating. */
    private final double[] voltages;

    Phasors(FlowModel model, FlowState state, Zones.Live live, double[] voltages) {
        this.model = model;
        this.state = state;
        this.live = live;
        this.voltages = voltages;
    }

    /** The current from a load's from end to its to end. */
    abstract Complex loadCurrent(Load load, Complex voltage);

    /**
     * The model.
     *
     * @return the model that was solved
     */
    public final FlowModel model() {
        return model;
    }

    /**
     * The state.
     *
     * @return the state that was solved
     */
    public final FlowState state() {
        return state;
    }

    /**
     * Says whether a running source reaches a terminal: along conductors, through transformers, and
     * through loads and capacitors between conductors.
     *
     * @param terminal a terminal or ground
     * @return true if it is alive; false for ground
     */
    public final boolean isLive(int terminal) {
        return live.at(terminal);
    }

    /**
     * The voltage at a terminal.
     *
     * @param terminal a terminal or ground
     * @return volts to ground; exactly zero if dead
     */
    public final Complex voltage(int terminal) {
        return live.at(terminal) ? rawVoltage(terminal) : Complex.ZERO;
    }

    /**
     * The voltage that lines induce in a terminal of a dead island, for information: where nothing
     * but induction and stray conductance sets it, it says little. At a live terminal the same as
     * {@link #voltage}.
     *
     * @param terminal a terminal or ground
     * @return volts to ground
     */
    public final Complex rawVoltage(int terminal) {
        return model.at(voltages, terminal);
    }

    /**
     * The voltage between two terminals.
     *
     * @param from a terminal or ground
     * @param to a terminal or ground
     * @return volts of {@code from} over {@code to}
     */
    public final Complex voltageBetween(int from, int to) {
        return voltage(from).minus(voltage(to));
    }

    /**
     * The current into an element at one of its positions. For a contact or a load, position 0 gives
     * the current from its from end to its to end.
     *
     * @param element the element's index
     * @param position the position
     * @return amperes; exactly zero at a dead terminal
     */
    public final Complex current(int element, int position) {
        Element e = model.elements().get(element);
        boolean dead = e.terminal(position) == FlowModel.GROUND ? !anyLive(e) : !live.at(e.terminal(position));
        if (dead) {
            return Complex.ZERO;
        }
        if (e instanceof Load load) {
            Complex across = rawVoltage(load.terminal(0)).minus(rawVoltage(load.terminal(1)));
            Complex current = loadCurrent(load, across);
            return position == 0 ? current : current.negate();
        }
        ComplexMatrix admittance = e.admittance(state);
        double re = 0;
        double im = 0;
        for (int q = 0; q < e.positions(); q++) {
            Complex v = rawVoltage(e.terminal(q));
            double yRe = admittance.re(position, q);
            double yIm = admittance.im(position, q);
            re += yRe * v.re() - yIm * v.im();
            im += yRe * v.im() + yIm * v.re();
        }
        Complex drawn = new Complex(re, im);
        return e instanceof Source source ? drawn.minus(source.injection(position, state)) : drawn;
    }

    private boolean anyLive(Element e) {
        for (int p = 0; p < e.positions(); p++) {
            if (live.at(e.terminal(p))) {
                return true;
            }
        }
        return false;
    }

    /**
     * The residual current of several poles, as a ground trip sees it.
     *
     * @param contacts the element indices, one a phase
     * @return the sum of the currents from their from ends to their to ends, amperes
     */
    public final Complex residual(int... contacts) {
        Complex sum = Complex.ZERO;
        for (int contact : contacts) {
            sum = sum.plus(current(contact, 0));
        }
        return sum;
    }

    /**
     * The power into an element at one position.
     *
     * @param element the element's index
     * @param position the position
     * @return P + jQ, VA
     */
    public final Complex power(int element, int position) {
        int terminal = model.elements().get(element).terminal(position);
        return voltage(terminal).times(current(element, position).conjugate());
    }

    /**
     * The power into an element at all its positions: what a load draws, what a line or transformer
     * loses, less than zero for what a source delivers.
     *
     * @param element the element's index
     * @return P + jQ, VA
     */
    public final Complex power(int element) {
        Complex sum = Complex.ZERO;
        for (int p = 0; p < model.elements().get(element).positions(); p++) {
            sum = sum.plus(power(element, p));
        }
        return sum;
    }

    /**
     * What lines, transformers, regulators and contacts lose.
     *
     * @return P + jQ, VA
     */
    public final Complex losses() {
        Complex sum = Complex.ZERO;
        for (int e = 0; e < model.elements().size(); e++) {
            Element element = model.elements().get(e);
            if (!(element instanceof Load || element instanceof Source || element instanceof Shunt)) {
                sum = sum.plus(power(e));
            }
        }
        return sum;
    }

    /**
     * What the loads draw, less what followers deliver.
     *
     * @return P + jQ, VA
     */
    public final Complex loadPower() {
        Complex sum = Complex.ZERO;
        for (int e = 0; e < model.elements().size(); e++) {
            if (model.elements().get(e) instanceof Load) {
                sum = sum.plus(power(e));
            }
        }
        return sum;
    }
}
