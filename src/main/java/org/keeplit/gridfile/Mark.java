package org.keeplit.gridfile;

/**
 * A mistake in a grid file, before the line that it is in is fetched: files are large, and most lines are never shown.
 *
 * @param code its code
 * @param file the number of the file
 * @param line the line, 0 for the whole file
 * @param message one sentence
 * @param help what was probably meant, perhaps empty
 */
record Mark(String code, int file, int line, String message, String help) {}
