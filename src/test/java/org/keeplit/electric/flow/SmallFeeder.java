package org.keeplit.electric.flow;

import static org.keeplit.electric.flow.FlowModel.GROUND;

import org.keeplit.electric.complex.Complex;
import org.keeplit.electric.complex.ComplexMatrix;

/** Pieces that the scenario tests put together: a stiff 7200 V source, a mile of line, contacts. */
final class SmallFeeder {
    static final double VOLTS = 7200;
    static final double LINE_VOLTS = VOLTS * Math.sqrt(3);
    static final ComplexMatrix MILE = ComplexMatrix.balanced(3, new Complex(0.35, 1.02), new Complex(0.15, 0.45));

    final FlowModelBuilder builder = FlowModel.builder();

    SmallFeeder() {
        builder.source("source", builder.terminals("s", "ABC"), GROUND, SourceImpedance.balanced(VOLTS, 0),
                SourceImpedance.ofSequences(new Complex(0, 1e-3), new Complex(0, 1e-3)));
    }

    int at(String name) {
        return builder.terminal(name);
    }

    void line(String from, String to) {
        builder.line(from + "-" + to, builder.terminals(from, "ABC"), builder.terminals(to, "ABC"), MILE, 1);
    }

    int contact(String from, String to, Complex impedance, boolean closed) {
        return builder.contact(from + ">" + to, at(from), to.equals("ground") ? GROUND : at(to), impedance, closed);
    }

    /** Three contacts of a milliohm, A to C. */
    int[] poles(String from, String to) {
        return poles(from, to, new Complex(0.001, 0));
    }

    int[] poles(String from, String to, Complex impedance) {
        int[] poles = new int[3];
        for (int k = 0; k < 3; k++) {
            String phase = "." + "ABC".charAt(k);
            poles[k] = contact(from + phase, to + phase, impedance, true);
        }
        return poles;
    }

    /** Three loads from phase to ground. */
    int[] loads(String node, LoadPower... powers) {
        int[] loads = new int[3];
        for (int k = 0; k < 3; k++) {
            String phase = "." + "ABC".charAt(k);
            loads[k] = builder.load("load " + node + phase, at(node + phase), GROUND, VOLTS,
                    powers[Math.min(k, powers.length - 1)]);
        }
        return loads;
    }

    static LoadPower impedance(double watts, double vars) {
        return LoadPower.constantImpedance(new Complex(watts, vars));
    }

    static LoadPower power(double watts, double vars) {
        return LoadPower.constantPower(new Complex(watts, vars));
    }

    static FlowSolution solve(FlowModel model, FlowState state) {
        return model.solver().solve(state).solution().orElseThrow();
    }

    static FlowSolution solve(FlowModel model) {
        return solve(model, model.baseState());
    }
}
