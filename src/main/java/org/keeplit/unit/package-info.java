/** Quantities with units: one {@link org.keeplit.unit.Quantity} at the edge, SI doubles inside. */
package org.keeplit.unit;
