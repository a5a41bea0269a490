package org.keeplit.electric.flow;

import com.google.common.collect.ImmutableList;
import java.util.Locale;
import org.keeplit.electric.complex.Complex;

/**
 * Looks for rated voltages that cannot be meant: a load that finds many times its rated voltage, or
 * next to nothing of it, mostly has its rating in another unit, or line-to-line where line-to-neutral
 * is asked. Nothing is wrong for certain, so that this is a question to the writer and no error.
 */
public final class RatingDoubts {
    /** Between line-to-line and line-to-neutral lies a factor of 1.73; no feeder runs 1.5 times high. */
    private static final double FACTOR = 1.5;

    private RatingDoubts() {}

    /**
     * The doubts about a solution; meant for the base state, where everything is in service.
     *
     * @param solution a solution
     * @return one sentence for each live load whose voltage is far from its rating, in the order of
     *     elements
     */
    public static ImmutableList<String> of(FlowSolution solution) {
        ImmutableList.Builder<String> doubts = ImmutableList.builder();
        for (Element element : solution.model().elements()) {
            if (element instanceof Load load
                    && (solution.isLive(load.terminal(0)) || solution.isLive(load.terminal(1)))) {
                Complex across = solution.voltageBetween(load.terminal(0), load.terminal(1));
                double ratio = across.abs() / load.ratedVolts();
                if (ratio > FACTOR || ratio < 1 / FACTOR) {
                    doubts.add(String.format(
                            Locale.ROOT,
                            "Load \"%s\" is rated %.0f V and finds %.0f V.",
                            load.name(), load.ratedVolts(), across.abs()));
                }
            }
        }
        return doubts.build();
    }
}
