/** Verdicts as values, and how they are told. */
package org.keeplit.verdict;
