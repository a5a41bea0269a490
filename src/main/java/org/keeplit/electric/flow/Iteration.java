package org.keeplit.electric.flow;

import org.keeplit.electric.complex.ComplexMatrix;

/**
 * Current injection: with the matrix factorised, loads become currents at the last voltages, until
 * the voltages across them stay. A load whose voltage falls below its lowest becomes an admittance in
 * the matrix as well, and only the rest of its current is injected; so a load that only leads back
 * through a floating winding, for instance, does not throw the iteration off.
 */
final class Iteration {
    private final FlowModel model;
    private final NodalMatrix matrix;
    private final LoadTable loads;
    private final FlowState state;
    /** Indices into the table of the loads that take part. */
    private final int[] active;
    private final boolean[] stamped;
    /** Voltages across the active loads. */
    private final double[] across;
    private double change;
    private int iterations;
    private int worst;

    Iteration(FlowModel model, NodalMatrix matrix, LoadTable loads, FlowState state, Zones.Live live) {
        this.model = model;
        this.matrix = matrix;
        this.loads = loads;
        this.state = state;
        int[] chosen = new int[loads.count];
        int count = 0;
        for (int k = 0; k < loads.count; k++) {
            Load load = (Load) model.elements().get(loads.element[k]);
            if (load.inService(state) && (live.at(load.terminal(0)) || live.at(load.terminal(1)))) {
                chosen[count++] = k;
            }
        }
        active = java.util.Arrays.copyOf(chosen, count);
        stamped = new boolean[count];
        across = new double[2 * count];
    }

    /**
     * Iterates.
     *
     * @param sources what the sources inject
     * @param linear voltages with every load as an impedance, which show who is short of voltage
     * @param start voltages to begin with
     * @return the voltages in elimination order, or null if they do not settle
     */
    double[] run(double[] sources, double[] linear, double[] start) {
        measure(linear);
        stampLow();
        measure(start);
        double[] voltages = new double[sources.length];
        double limit = model.options().tolerance();
        while (iterations < model.options().iterations()) {
            iterations++;
            System.arraycopy(sources, 0, voltages, 0, sources.length);
            inject(voltages);
            matrix.solve(voltages);
            change = measure(voltages);
            if (!(change < 1e6)) {
                return null;
            }
            boolean settled = !stampLow();
            if (settled && change <= limit) {
                return voltages;
            }
        }
        return null;
    }

    int iterations() {
        return iterations;
    }

    /** In plain words, why {@link #run} gave nothing. */
    String complaint() {
        return String.format(
                "The load flow did not settle in %d iterations: the voltage across \"%s\" still moved.",
                iterations, model.elements().get(loads.element[active[worst]]).name());
    }

    private void inject(double[] target) {
        for (int a = 0; a < active.length; a++) {
            int k = active[a];
            double re = across[2 * a];
            double im = across[2 * a + 1];
            double square = re * re + im * im;
            double lowest = loads.lowestVolts[k];
            double bounded = Math.max(square, lowest * lowest);
            double volts = Math.sqrt(bounded);
            double yRe = loads.power[2 * k] / bounded + loads.current[2 * k] / volts;
            double yIm = loads.power[2 * k + 1] / bounded + loads.current[2 * k + 1] / volts;
            if (stamped[a]) {
                yRe -= loads.power[2 * k] / (lowest * lowest) + loads.current[2 * k] / lowest;
                yIm -= loads.power[2 * k + 1] / (lowest * lowest) + loads.current[2 * k + 1] / lowest;
            }
            double iRe = re * yRe - im * yIm;
            double iIm = re * yIm + im * yRe;
            if (loads.from[k] >= 0) {
                target[2 * loads.from[k]] -= iRe;
                target[2 * loads.from[k] + 1] -= iIm;
            }
            if (loads.to[k] >= 0) {
                target[2 * loads.to[k]] += iRe;
                target[2 * loads.to[k] + 1] += iIm;
            }
        }
    }

    /** Takes the voltages across the loads; gives the largest change as a part of rated voltage. */
    private double measure(double[] voltages) {
        double largest = 0;
        for (int a = 0; a < active.length; a++) {
            int k = active[a];
            int from = loads.from[k];
            int to = loads.to[k];
            double re = (from < 0 ? 0 : voltages[2 * from]) - (to < 0 ? 0 : voltages[2 * to]);
            double im = (from < 0 ? 0 : voltages[2 * from + 1]) - (to < 0 ? 0 : voltages[2 * to + 1]);
            double moved = Math.max(Math.abs(re - across[2 * a]), Math.abs(im - across[2 * a + 1]))
                    / loads.ratedVolts[k];
            // Written so that a NaN stays the largest.
            if (!(moved <= largest)) {
                largest = moved;
                worst = a;
            }
            across[2 * a] = re;
            across[2 * a + 1] = im;
        }
        return largest;
    }

    /** Puts loads that are short of voltage into the matrix; says whether any was. */
    private boolean stampLow() {
        boolean any = false;
        for (int a = 0; a < active.length; a++) {
            int k = active[a];
            boolean low = across[2 * a] * across[2 * a] + across[2 * a + 1] * across[2 * a + 1]
                    < loads.lowestVolts[k] * loads.lowestVolts[k];
            if (low && !stamped[a] && !loads.follower[k]) {
                stamped[a] = true;
                any = true;
                matrix.set(loads.element[k], stamp((Load) model.elements().get(loads.element[k])));
            }
        }
        if (any) {
            matrix.refresh();
        }
        return any;
    }

    private ComplexMatrix stamp(Load load) {
        return Shunt.branch(load.slackAdmittance(state.loadCase(), load.lowestVolts())
                .plus(load.fixedAdmittance(state.loadCase())));
    }
}
