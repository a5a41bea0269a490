/**
 * From a network as text describes it to amperes and volts: every place of the electrical graph becomes a terminal of the
 * load flow, every contact a switchable branch, and a set of closed contacts with taps a state of it.
 */
package org.keeplit.electric.power;
