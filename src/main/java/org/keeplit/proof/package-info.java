/** Writes what was proved, state by state, in words that another evaluator reads. */
package org.keeplit.proof;
