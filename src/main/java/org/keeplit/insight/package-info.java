/**
 * What follows from the states that a procedure can reach besides whether it holds: what single human slips do.
 *
 * <p>Sees programs and explorations, and knows nothing of text.
 */
package org.keeplit.insight;
