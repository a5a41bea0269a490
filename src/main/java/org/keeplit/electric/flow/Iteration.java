package org.keeplit.electric.flow;

import java.util.Arrays;
import org.keeplit.electric.complex.ComplexMatrix;

/**
 * Current injection: with the matrix factorised, loads become currents at the last voltages, until
 * the voltages across them stay. A load whose voltage falls below its lowest becomes an admittance in
 * the matrix as well, and only the rest of its current is injected; so a load that only leads back
 * through a floating winding, for instance, does not throw the iteration off.
 */
final class Iteration {
    /** A voltage that moves by this many times the rated one will not come back. */
    private static final double DIVERGED = 1e6;

    private final FlowModel model;
    private final NodalMatrix matrix;
    private final LoadTable loads;
    /** Indices into the table of the loads that take part, the first {@link #count} of them. */
    private final int[] active;
    private final boolean[] stamped;
    /** Voltages across the active loads. */
    private final double[] across;
    private double[] spare;

    private FlowState state;
    private SourceCurrents sources;
    private int count;
    private double change;
    private int worst;
    private boolean anyLow;
    private int iterations;

    /**
     * Makes room once for many runs.
     *
     * @param matrix the matrix of the iteration; each run finds it with its state applied
     * @param loads the loads of the matrix's load case
     */
    Iteration(FlowModel model, NodalMatrix matrix, LoadTable loads) {
        this.model = model;
        this.matrix = matrix;
        this.loads = loads;
        active = new int[loads.count];
        stamped = new boolean[loads.count];
        across = new double[2 * loads.count];
        spare = model.vector();
    }

    private void begin(FlowState newState, Zones.Live live) {
        state = newState;
        sources = new SourceCurrents(model, newState);
        iterations = 0;
        count = 0;
        for (int k = 0; k < loads.count; k++) {
            boolean connected = live.zone(loads.fromZone[k]) || live.zone(loads.toZone[k]);
            if (connected && (!loads.follower[k] || load(k).inService(state))) {
                active[count++] = k;
            }
        }
        Arrays.fill(stamped, 0, count, false);
    }

    private Load load(int k) {
        return (Load) model.elements().get(loads.element[k]);
    }

    /**
     * Iterates.
     *
     * @param newState the state
     * @param live what is alive in it
     * @param start voltages to begin with, used up
     * @return the voltages in elimination order, or null if they do not settle
     */
    double[] run(FlowState newState, Zones.Live live, double[] start) {
        begin(newState, live);
        double[] last = start;
        double[] next = spare;
        prepare(last, next);
        boolean settled = false;
        while (!settled && iterations < model.options().iterations() && change < DIVERGED) {
            while (anyLow) {
                stampLow();
                prepare(last, next);
            }
            iterations++;
            matrix.solve(next);
            double[] swap = last;
            last = next;
            next = swap;
            prepare(last, next);
            settled = !anyLow && change <= model.options().tolerance();
        }
        spare = next;
        return settled ? last : null;
    }

    int iterations() {
        return iterations;
    }

    /** In plain words, why {@link #run} gave nothing. */
    String complaint() {
        return String.format(
                "The load flow did not settle in %d iterations: the voltage across \"%s\" still moved.",
                iterations, load(active[worst]).name());
    }

    /**
     * One pass over the loads at given voltages: what they inject goes into {@code target} with the
     * sources' currents, and {@link #change} becomes the largest move of a voltage across a load since
     * the last pass, as a part of its rated voltage.
     */
    private void prepare(double[] voltages, double[] target) {
        Arrays.fill(target, 0);
        sources.addTo(target);
        double largest = 0;
        anyLow = false;
        for (int a = 0; a < count; a++) {
            int k = active[a];
            int from = 2 * loads.from[k];
            int to = 2 * loads.to[k];
            double re = voltages[from] - voltages[to];
            double im = voltages[from + 1] - voltages[to + 1];
            double moveRe = re - across[2 * a];
            double moveIm = im - across[2 * a + 1];
            double moved = (moveRe * moveRe + moveIm * moveIm) * loads.squareScale[k];
            // Written so that a NaN stays the largest.
            if (!(moved <= largest)) {
                largest = moved;
                worst = a;
            }
            across[2 * a] = re;
            across[2 * a + 1] = im;
            double square = re * re + im * im;
            double lowest = loads.lowestSquare[k];
            if (square < lowest) {
                square = lowest;
                anyLow |= !stamped[a] && !loads.follower[k];
            }
            double yRe = loads.power[2 * k] / square;
            double yIm = loads.power[2 * k + 1] / square;
            if (loads.mixed[k]) {
                double volts = Math.sqrt(square);
                yRe += loads.current[2 * k] / volts;
                yIm += loads.current[2 * k + 1] / volts;
            }
            if (stamped[a]) {
                double volts = Math.sqrt(lowest);
                yRe -= loads.power[2 * k] / lowest + loads.current[2 * k] / volts;
                yIm -= loads.power[2 * k + 1] / lowest + loads.current[2 * k + 1] / volts;
            }
            double iRe = re * yRe - im * yIm;
            double iIm = re * yIm + im * yRe;
            target[from] -= iRe;
            target[from + 1] -= iIm;
            target[to] += iRe;
            target[to + 1] += iIm;
        }
        change = Math.sqrt(largest);
        target[target.length - 2] = 0;
        target[target.length - 1] = 0;
    }

    /** Puts loads that are short of voltage into the matrix. */
    private void stampLow() {
        for (int a = 0; a < count; a++) {
            int k = active[a];
            double square = across[2 * a] * across[2 * a] + across[2 * a + 1] * across[2 * a + 1];
            if (square < loads.lowestSquare[k] && !stamped[a] && !loads.follower[k]) {
                stamped[a] = true;
                matrix.set(loads.element[k], stamp(load(k)));
            }
        }
        matrix.refresh();
    }

    private ComplexMatrix stamp(Load load) {
        return Shunt.branch(load.slackAdmittance(state.loadCase(), load.lowestVolts())
                .plus(load.fixedAdmittance(state.loadCase())));
    }
}
