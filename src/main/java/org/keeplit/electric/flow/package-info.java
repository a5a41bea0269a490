/**
 * Three-phase unbalanced load flow and short circuit in phase coordinates.
 *
 * <p>A {@link org.keeplit.electric.flow.FlowModel} is built once from terminals (one conductor at
 * one node, voltages counted from ground) and elements. A {@link
 * org.keeplit.electric.flow.FlowState} says what may change: contacts, taps, generators, load case,
 * contact impedances. A {@link org.keeplit.electric.flow.FlowSolver} gives for each state a result
 * that depends on model and state only, a {@link org.keeplit.electric.flow.ShortCircuitSolver} the
 * currents of a fault. Volts, amperes (rms), ohms, siemens and voltamperes throughout.
 *
 * <h2>Method</h2>
 *
 * <p>Every element is an admittance between its terminals: lines and sources by the inverse of their
 * impedance matrices, transformers and regulators by ideal ratios and a leakage, contacts by a small
 * impedance or nothing. All are reciprocal, so that the nodal matrix is complex symmetric; it is
 * analysed once, with every contact as if closed. In a state only those columns of the factor are
 * computed anew that the changed elements reach in the elimination tree, which gives the very factor
 * of the changed matrix; nothing is subtracted that was added before, since that loses all digits
 * when a contact opens that was the only way. Loads are injected currents at the last voltages; slow
 * iterations are sped up by Anderson's mixing.
 *
 * <h2>What is assumed</h2>
 *
 * <ul>
 *   <li>A terminal is <em>live</em> if a running source reaches it along conductors, closed contacts,
 *       transformers, regulators, and loads or capacitors between two conductors. All else is dead:
 *       exactly zero volts. What a line induces in a dead neighbour does not make that alive.
 *   <li>A load keeps power or current down to its lowest voltage, and below that the impedance that it
 *       has there; {@link org.keeplit.electric.flow.FlowSolution#softened} names such loads.
 *   <li>A stray conductance from each terminal to ground (a nanosiemens unless set) settles the
 *       common voltage of islands that nothing else refers to ground.
 *   <li>A generator either holds its voltage behind an impedance, and then an island by itself, or
 *       follows the voltage that it finds, and then feeds nothing by itself.
 *   <li>Short circuits are linear: sources behind their impedances, loads left out or as impedances.
 * </ul>
 */
package org.keeplit.electric.flow;
