/**
 * What a run is given and what comes of it, as values that do not change: limits and watchers; verdicts on rules, findings with their way
 * and their reasons; slips, orders, ways back, plans, sweeps and mends. Made by the rooms above, which nobody needs to know to read them.
 */
package org.keeplit.outcome;
