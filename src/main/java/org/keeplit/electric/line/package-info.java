/**
 * Impedances of overhead lines and cables from conductors and their positions: Carson's equations as
 * modified for distribution work, and Kron reduction (W. H. Kersting, Distribution System Modeling
 * and Analysis, chapters 4 and 5). Ohm per mile and siemens per mile, since the tables are in those.
 */
package org.keeplit.electric.line;
