/**
 * Direct solution of sparse complex symmetric systems: a fill-reducing order, one symbolic analysis
 * a pattern, and a numeric L D L^T factorisation that can be brought up to date column by column
 * when a few entries change.
 */
package org.keeplit.electric.sparse;
