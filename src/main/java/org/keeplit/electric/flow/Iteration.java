package org.keeplit.electric.flow;

import java.util.Arrays;
import java.util.Locale;
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

    /** Strong feeders are done before mixing begins. */
    private static final int PLAIN_ITERATIONS = 6;

    private final FlowModel model;
    private final NodalMatrix matrix;
    private final LoadTable loads;
    /** Indices into the table of the loads that take part, the first {@link #count} of them. */
    private final int[] active;
    private final boolean[] stamped;
    /** Voltages across the active loads: those that currents are computed at, and those that come out. */
    private double[] across;
    private double[] found;
    private final double[] weights;
    /** Voltages across all loads in the base solution; null while there is none. */
    private double[] baseAcross;
    /** The zones that were alive when {@link #active} was filled; null if that has to be done anew. */
    private boolean[] liveZones;
    private final Mixing mixing = new Mixing();
    private double[] spare;

    private FlowState state;
    private SourceCurrents sources;
    private int count;
    private double change;
    private int worst;
    /** Whether the last injection met a load short of voltage, in the matrix or not. */
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
        found = new double[2 * loads.count];
        weights = new double[loads.count];
        spare = model.vector();
    }

    private void begin(FlowState newState, Zones.Live live) {
        state = newState;
        sources = new SourceCurrents(model, newState);
        iterations = 0;
        if (!Arrays.equals(liveZones, live.liveZone())) {
            choose(live);
        }
        Arrays.fill(stamped, 0, count, false);
        mixing.reset();
    }

    /** Finds the loads that take part. States with the same zones alive have the same, unless a generator is among them. */
    private void choose(Zones.Live live) {
        count = 0;
        boolean followers = false;
        for (int k = 0; k < loads.count; k++) {
            boolean connected = live.zone(loads.fromZone[k]) || live.zone(loads.toZone[k]);
            followers |= loads.follower[k];
            if (connected && (!loads.follower[k] || load(k).inService(state))) {
                weights[count] = loads.squareScale[k];
                active[count++] = k;
            }
        }
        liveZones = followers ? null : live.liveZone();
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
        measure(start, across);
        return iterate(start);
    }

    /**
     * Iterates from the base solution.
     *
     * @param newState the state
     * @param live what is alive in it
     * @param base the voltages of the base solution, always the same
     * @param change what is added to them to begin with, used up
     * @return the voltages in elimination order, or null if they do not settle
     */
    double[] run(FlowState newState, Zones.Live live, double[] base, double[] change) {
        begin(newState, live);
        if (baseAcross == null) {
            baseAcross = new double[2 * loads.count];
            for (int k = 0; k < loads.count; k++) {
                baseAcross[2 * k] = base[2 * loads.from[k]] - base[2 * loads.to[k]];
                baseAcross[2 * k + 1] = base[2 * loads.from[k] + 1] - base[2 * loads.to[k] + 1];
            }
        }
        for (int a = 0; a < count; a++) {
            int k = active[a];
            int from = 2 * loads.from[k];
            int to = 2 * loads.to[k];
            across[2 * a] = baseAcross[2 * k] + (change[from] - change[to]);
            across[2 * a + 1] = baseAcross[2 * k + 1] + (change[from + 1] - change[to + 1]);
        }
        return iterate(change);
    }

    private double[] iterate(double[] room) {
        double[] voltages = room;
        boolean settled = false;
        change = 0;
        while (!settled && iterations < model.options().iterations() && change < DIVERGED) {
            inject(spare);
            if (anyLow && stampLow()) {
                mixing.reset();
                inject(spare);
            }
            matrix.solve(spare);
            double[] swap = voltages;
            voltages = spare;
            spare = swap;
            iterations++;
            change = measure(voltages, found);
            settled = change <= model.options().tolerance();
            advance();
        }
        return settled ? voltages : null;
    }

    /** Takes the voltages just found, or after some iterations what mixing makes of the last few. */
    private void advance() {
        if (iterations < PLAIN_ITERATIONS) {
            double[] swap = across;
            across = found;
            found = swap;
        } else {
            mixing.mix(across, found, weights, 2 * count);
        }
    }

    int iterations() {
        return iterations;
    }

    /** In plain words, why {@link #run} gave nothing. */
    String complaint() {
        return String.format(Locale.ROOT,
                "The load flow did not settle in %d iterations: the voltage across \"%s\" still moved.",
                iterations, load(active[worst]).name());
    }

    /**
     * Takes the voltages across the loads.
     *
     * @param target where they go
     * @return their largest move from {@link #across}, as a part of rated voltage
     */
    private double measure(double[] voltages, double[] target) {
        double largest = 0;
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
            target[2 * a] = re;
            target[2 * a + 1] = im;
        }
        return Math.sqrt(largest);
    }

    /** What sources and loads push into the terminals, with the loads at the voltages across them. */
    private void inject(double[] target) {
        Arrays.fill(target, 0);
        sources.addTo(target);
        anyLow = false;
        for (int a = 0; a < count; a++) {
            int k = active[a];
            double re = across[2 * a];
            double im = across[2 * a + 1];
            double square = re * re + im * im;
            boolean low = square < loads.lowestSquare[k];
            anyLow |= low;
            double inverse = 1 / (low ? loads.lowestSquare[k] : square);
            double yRe = loads.power[2 * k] * inverse;
            double yIm = loads.power[2 * k + 1] * inverse;
            if (loads.mixed[k]) {
                double root = Math.sqrt(inverse);
                yRe += loads.current[2 * k] * root;
                yIm += loads.current[2 * k + 1] * root;
            }
            if (stamped[a]) {
                double lowest = Math.sqrt(loads.lowestSquare[k]);
                yRe -= loads.power[2 * k] / loads.lowestSquare[k] + loads.current[2 * k] / lowest;
                yIm -= loads.power[2 * k + 1] / loads.lowestSquare[k] + loads.current[2 * k + 1] / lowest;
            }
            double iRe = re * yRe - im * yIm;
            double iIm = re * yIm + im * yRe;
            int from = 2 * loads.from[k];
            int to = 2 * loads.to[k];
            target[from] -= iRe;
            target[from + 1] -= iIm;
            target[to] += iRe;
            target[to + 1] += iIm;
        }
        // Ground takes whatever comes.
        target[target.length - 2] = 0;
        target[target.length - 1] = 0;
    }

    /** Puts loads that are newly short of voltage into the matrix; says whether there were any. */
    private boolean stampLow() {
        boolean any = false;
        for (int a = 0; a < count; a++) {
            int k = active[a];
            double square = across[2 * a] * across[2 * a] + across[2 * a + 1] * across[2 * a + 1];
            if (square < loads.lowestSquare[k] && !stamped[a] && !loads.follower[k]) {
                stamped[a] = true;
                any = true;
                matrix.set(loads.element[k], stamp(load(k)));
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
