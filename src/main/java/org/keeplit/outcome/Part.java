package org.keeplit.outcome;

/**
 * A step of a procedure, or a choice with all that hangs on it: what could change places as a whole.
 *
 * @param number its number in the order of the text, from 0
 * @param name the name of its step, with the phase if it is done on one only
 * @param line the line of the procedure file on which it begins
 */
public record Part(int number, String name, int line) {}
