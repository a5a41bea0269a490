/** Crews, steps, groups and whole procedures as typed trees. */
package org.keeplit.procedure;
