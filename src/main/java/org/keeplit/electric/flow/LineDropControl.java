package org.keeplit.electric.flow;

import org.keeplit.electric.complex.Complex;

/**
 * The control of one step regulator: it holds the voltage that its line-drop compensator shows within
 * a band.
 *
 * @param regulator the regulator's element index
 * @param voltageRatio the voltage transformer's ratio, such as 20 for 2400 to 120 V
 * @param currentRating the current transformer's primary rating, amperes
 * @param setting compensator R + jX, volts at that current
 * @param level the voltage to hold, volts of the control
 * @param bandwidth the whole band around the level, volts of the control
 */
public record LineDropControl(
        int regulator,
        double voltageRatio,
        double currentRating,
        Complex setting,
        double level,
        double bandwidth) {

    /**
     * What the control sees.
     *
     * @param solution a solution
     * @return volts of the control
     */
    public double seen(FlowSolution solution) {
        Element element = solution.model().elements().get(regulator);
        Complex volts = solution.voltageBetween(element.terminal(1), element.terminal(2))
                .times(1 / voltageRatio);
        Complex amperes = solution.current(regulator, 1).negate().times(1 / currentRating);
        return volts.minus(setting.times(amperes)).abs();
    }

    /** The step that the control would make: -1, 0 or 1. */
    int step(FlowSolution solution) {
        double seen = seen(solution);
        return seen < level - bandwidth / 2 ? 1 : seen > level + bandwidth / 2 ? -1 : 0;
    }
}
