/**
 * Mends broken procedures: changes their text a little and proves it anew.
 *
 * <p>Works on text, since that is what its reader changes; what a changed text means is read and proved as any other.
 */
package org.keeplit.mend;
