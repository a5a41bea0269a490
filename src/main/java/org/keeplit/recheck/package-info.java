/**
 * Re-checks what was proved, with the plain evaluator alone: a written proof names every state, and this goes through the procedure anew to
 * see that these are all the states there are, and that nothing is broken in any. Sees nothing of the search that wrote the proof.
 */
package org.keeplit.recheck;
