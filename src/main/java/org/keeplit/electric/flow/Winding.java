package org.keeplit.electric.flow;

import org.keeplit.electric.complex.Complex;

/**
 * One winding of a transformer unit; all windings of a unit share one core.
 *
 * @param from the terminal of the polarity mark, or {@link FlowModel#GROUND}
 * @param to the terminal of the other end, or {@link FlowModel#GROUND}
 * @param ratedVolts the rated voltage; only ratios matter
 * @param leakage the winding's own leakage impedance in ohm, seen at its own voltage
 */
public record Winding(int from, int to, double ratedVolts, Complex leakage) {}
