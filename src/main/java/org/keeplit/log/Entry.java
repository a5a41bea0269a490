package org.keeplit.log;

/**
 * One line of a filled log, as it was written.
 *
 * @param line the line of the file
 * @param step the number of the step; empty where it is about the whole job
 * @param time when
 * @param by who
 * @param item what is written down; empty where the step itself is done
 * @param value what was written
 */
record Entry(int line, String step, String time, String by, String item, String value) {
    boolean isEmpty() {
        return time.isEmpty() && value.isEmpty();
    }
}
