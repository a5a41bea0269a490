/** A drill: what may be done next, what of it is right, and what comes of the rest, all worked out from the proved text. */
package org.keeplit.drill;
