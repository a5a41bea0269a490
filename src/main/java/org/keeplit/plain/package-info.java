/**
 * A second opinion: a slow, plain evaluator of bound procedures that shares no code with the fast one. It interprets
 * the typed trees as they stand: what is left to do is a term, a state is a map, every look at the network goes
 * through the whole of it, and every rule binds its variables anew in every state.
 */
package org.keeplit.plain;
