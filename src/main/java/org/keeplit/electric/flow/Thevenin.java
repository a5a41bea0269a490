package org.keeplit.electric.flow;

import com.google.common.collect.ImmutableList;
import org.keeplit.electric.complex.Complex;
import org.keeplit.electric.complex.ComplexMatrix;

/**
 * What the network is to something connected at some terminals.
 *
 * @param voltages the voltages before anything is connected, volts to ground
 * @param impedance the drop at the terminal of the row for a current out of the terminal of the column, ohm
 */
public record Thevenin(ImmutableList<Complex> voltages, ComplexMatrix impedance) {}
