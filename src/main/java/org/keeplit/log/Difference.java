package org.keeplit.log;

import java.util.Comparator;

/**
 * Something in a log that is not as it should be.
 *
 * @param line the line of the file; 0 where it is about the whole
 * @param words what, in plain words
 */
public record Difference(int line, String words) {
    /** By line; what is about the whole comes last. */
    static final Comparator<Difference> ORDER = Comparator.comparing((Difference d) -> d.line() == 0 ? Integer.MAX_VALUE : d.line());
}
