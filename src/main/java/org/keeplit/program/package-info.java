/**
 * A bound procedure lowered to what the explorer runs on: fields with finite domains, atomic acts that change
 * them, and the automaton of the orders in which the acts may come.
 */
package org.keeplit.program;
