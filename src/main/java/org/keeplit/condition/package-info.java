/**
 * Terms and conditions, the part of the language that rules and steps share. Typed trees only: what a
 * condition means in a state is decided by the fast engine in {@code explore} and by the plain one in
 * {@code plain}, independently.
 */
package org.keeplit.condition;
