/** Complex scalars and small dense complex matrices, as values. */
package org.keeplit.electric.complex;
