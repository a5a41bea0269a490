/** Rulebooks and rules as typed trees. */
package org.keeplit.rule;
