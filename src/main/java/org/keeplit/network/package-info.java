/**
 * What a feeder is: conductors, nodes, elements and the kinds of equipment that text files declare.
 *
 * <p>Everything here is an immutable value. Electrical meaning lives in {@code electric}, not here.
 */
package org.keeplit.network;
