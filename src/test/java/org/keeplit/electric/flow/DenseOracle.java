package org.keeplit.electric.flow;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.IntPredicate;
import org.keeplit.electric.complex.Complex;
import org.keeplit.electric.complex.ComplexMatrix;
import org.keeplit.electric.complex.DenseSolver;

/**
 * An independent load flow for small networks: every branch current is an unknown of its own, beside
 * the voltages; transformers and regulators are constraints; loads are impedances that follow their
 * voltage. Shares no formula with the solver but the load law.
 */
final class DenseOracle {
    private final int terminals;
    private final List<RandomNetwork.Part> parts;
    private final FlowState state;
    private final double[][] matrix;
    private final double[] right;
    private final Map<Integer, Integer> unknownOfContact = new HashMap<>();
    private int next;

    /** What the oracle finds: voltages by terminal, and the current of each contact. */
    record Solved(Complex[] voltages, Map<Integer, Complex> currents) {}

    private DenseOracle(RandomNetwork network, FlowState state) {
        terminals = network.model.terminals().size();
        parts = network.parts;
        this.state = state;
        int unknowns = terminals;
        for (RandomNetwork.Part part : parts) {
            unknowns += branches(part);
        }
        matrix = new double[unknowns][2 * unknowns];
        right = new double[2 * unknowns];
        next = terminals;
        for (int t = 0; t < terminals; t++) {
            add(t, t, Complex.real(network.model.options().strayConductance()));
        }
        parts.forEach(part -> enter(part, network));
    }

    /**
     * Solves a state; null if the impedances of the loads do not settle.
     *
     * @param live terminals that are alive; between dead ones only the constant-impedance part of a
     *     load is there, as in the solver
     */
    static Solved solve(RandomNetwork network, FlowState state, IntPredicate live) {
        Complex[] last = null;
        for (int round = 0; round < 200; round++) {
            DenseOracle oracle = new DenseOracle(network, state);
            oracle.enterLoads(last, live);
            double[] x = DenseSolver.solve(oracle.matrix, oracle.right);
            Complex[] found = new Complex[oracle.terminals];
            double change = last == null ? 1 : 0;
            for (int t = 0; t < found.length; t++) {
                found[t] = new Complex(x[2 * t], x[2 * t + 1]);
            }
            for (RandomNetwork.Part part : network.parts) {
                if (last != null && part instanceof RandomNetwork.Draw d) {
                    Complex moved = across(found, d.from(), d.to()).minus(across(last, d.from(), d.to()));
                    change = Math.max(change, moved.abs() / d.rated());
                }
            }
            last = found;
            if (change < 1e-11) {
                Map<Integer, Complex> currents = new HashMap<>();
                oracle.unknownOfContact.forEach(
                        (element, u) -> currents.put(element, new Complex(x[2 * u], x[2 * u + 1])));
                return new Solved(found, currents);
            }
        }
        return null;
    }

    private int branches(RandomNetwork.Part part) {
        if (part instanceof RandomNetwork.Line line) {
            return line.from().length;
        }
        if (part instanceof RandomNetwork.Emf emf) {
            return emf.phases().length;
        }
        if (part instanceof RandomNetwork.Unit unit) {
            return unit.windings().length + 1;
        }
        return part instanceof RandomNetwork.Pole || part instanceof RandomNetwork.Step ? 1 : 0;
    }

    private void enter(RandomNetwork.Part part, RandomNetwork network) {
        if (part instanceof RandomNetwork.Line line) {
            enterLine(line);
        } else if (part instanceof RandomNetwork.Emf emf) {
            enterEmf(emf, emf.generator() < 0 || state.isRunning(network.generators.get(emf.generator())));
        } else if (part instanceof RandomNetwork.Pole pole) {
            enterPole(pole);
        } else if (part instanceof RandomNetwork.Unit unit) {
            enterUnit(unit);
        } else if (part instanceof RandomNetwork.Step step) {
            enterStep(step);
        } else if (part instanceof RandomNetwork.Fixed fixed) {
            enterAdmittance(fixed.from(), fixed.to(), fixed.siemens());
        }
    }

    private void enterLine(RandomNetwork.Line line) {
        int n = line.from().length;
        for (int i = 0; i < n; i++) {
            leave(line.from()[i], next + i, 1);
            leave(line.to()[i], next + i, -1);
            addVoltage(next + i, line.from()[i], 1);
            addVoltage(next + i, line.to()[i], -1);
            for (int j = 0; j < n; j++) {
                add(next + i, next + j, line.impedance().at(i, j).negate());
                Complex half = line.shunt().at(i, j).times(0.5);
                add(line.from()[i], line.from()[j], half);
                add(line.to()[i], line.to()[j], half);
            }
        }
        next += n;
    }

    /** The current runs out of the source. */
    private void enterEmf(RandomNetwork.Emf emf, boolean runs) {
        for (int i = 0; i < emf.phases().length; i++) {
            leave(emf.phases()[i], next + i, -1);
            if (!runs) {
                add(next + i, next + i, Complex.ONE);
                continue;
            }
            addVoltage(next + i, emf.phases()[i], 1);
            for (int j = 0; j < emf.phases().length; j++) {
                add(next + i, next + j, emf.impedance().at(i, j));
            }
            right[2 * (next + i)] = emf.volts()[i].re();
            right[2 * (next + i) + 1] = emf.volts()[i].im();
        }
        next += emf.phases().length;
    }

    private void enterPole(RandomNetwork.Pole pole) {
        unknownOfContact.put(pole.element(), next);
        leave(pole.from(), next, 1);
        leave(pole.to(), next, -1);
        if (state.isClosed(pole.element())) {
            addVoltage(next, pole.from(), 1);
            addVoltage(next, pole.to(), -1);
            Contact contact = (Contact) state.layout().elements().get(pole.element());
            Complex other = state.override(contact.ordinal());
            add(next, next, (other == null ? pole.impedance() : other).negate());
        } else {
            add(next, next, Complex.ONE);
        }
        next++;
    }

    /** v = rated e + z i for each winding, and no magnetomotive force in sum. */
    private void enterUnit(RandomNetwork.Unit unit) {
        int n = unit.windings().length;
        for (int k = 0; k < n; k++) {
            Winding w = unit.windings()[k];
            leave(w.from(), next + k, 1);
            leave(w.to(), next + k, -1);
            addVoltage(next + k, w.from(), 1);
            addVoltage(next + k, w.to(), -1);
            add(next + k, next + n, Complex.real(-w.ratedVolts()));
            add(next + k, next + k, w.leakage().negate());
            add(next + n, next + k, Complex.real(w.ratedVolts()));
        }
        next += n + 1;
    }

    private void enterStep(RandomNetwork.Step step) {
        double ratio = step.kind().ratio(state.tap(step.element()));
        leave(step.load(), next, 1);
        leave(step.source(), next, -ratio);
        leave(step.common(), next, ratio - 1);
        addVoltage(next, step.load(), 1);
        addVoltage(next, step.source(), -ratio);
        addVoltage(next, step.common(), ratio - 1);
        add(next, next, step.impedance().negate());
        next++;
    }

    private void enterLoads(Complex[] last, IntPredicate live) {
        for (RandomNetwork.Part part : parts) {
            if (part instanceof RandomNetwork.Draw d && (d.follower() < 0 || state.isRunning(d.follower()))) {
                Complex y = d.power().constantImpedance().conjugate().times(1 / (d.rated() * d.rated()));
                if (live.test(d.from()) || live.test(d.to())) {
                    double volts = last == null ? d.rated() : across(last, d.from(), d.to()).abs();
                    double at = Math.max(volts, d.lowest());
                    y = y.plus(d.power().constantPower().conjugate().times(1 / (at * at)))
                            .plus(d.power().constantCurrent().conjugate().times(1 / (at * d.rated())));
                }
                enterAdmittance(d.from(), d.to(), y);
            }
        }
    }

    static Complex across(Complex[] voltages, int from, int to) {
        Complex high = from < 0 ? Complex.ZERO : voltages[from];
        return to < 0 ? high : high.minus(voltages[to]);
    }

    private void enterAdmittance(int from, int to, Complex y) {
        ComplexMatrix branch = ComplexMatrix.balanced(2, y, y.negate());
        int[] ends = {from, to};
        for (int i = 0; i < 2; i++) {
            for (int j = 0; j < 2; j++) {
                if (ends[i] >= 0 && ends[j] >= 0) {
                    add(ends[i], ends[j], branch.at(i, j));
                }
            }
        }
    }

    /** An unknown current leaves a terminal. */
    private void leave(int terminal, int unknown, double factor) {
        if (terminal >= 0) {
            add(terminal, unknown, Complex.real(factor));
        }
    }

    private void addVoltage(int equation, int terminal, double factor) {
        if (terminal >= 0) {
            add(equation, terminal, Complex.real(factor));
        }
    }

    private void add(int row, int column, Complex value) {
        matrix[row][2 * column] += value.re();
        matrix[row][2 * column + 1] += value.im();
    }
}
