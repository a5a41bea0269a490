/**
 * Three-phase unbalanced load flow and short circuit in phase coordinates.
 *
 * <p>A {@link org.keeplit.electric.flow.FlowModel} is built once from terminals (one conductor at
 * one node, voltages counted from ground) and elements. A {@link
 * org.keeplit.electric.flow.FlowState} says what may change: contacts, taps, generators, load case,
 * contact impedances. A {@link org.keeplit.electric.flow.FlowSolver} gives for each state a result
 * that depends on model and state only. Volts, amperes (rms), ohms, siemens and voltamperes
 * throughout.
 */
package org.keeplit.electric.flow;
