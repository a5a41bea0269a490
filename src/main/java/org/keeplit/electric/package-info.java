/**
 * What a network does electrically, by connectivity: which places are alive, from which supply and at which
 * angle, what is grounded, and what opening or closing a contact would ask of it. Knows nothing of syntax.
 */
package org.keeplit.electric;
