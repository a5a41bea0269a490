/**
 * Proves live-line switching procedures against a model of the feeder. Begin with {@link org.keeplit.Keeplit}.
 */
package org.keeplit;
