package org.keeplit.text;

import java.util.ArrayList;
import java.util.List;

/**
 * One text file as read: its name as people know it, and its content.
 *
 * @param name the path as given on the command line, or a made-up name in tests
 * @param content the whole text
 */
public record Source(String name, String content) {
    /** A source for things that were not written in any file. */
    public static final Source NONE = new Source("", "");

    /**
     * The text of one line, without its line end.
     *
     * @param number the line number, from 1
     * @return the text, or the empty string if there is no such line
     */
    public String line(int number) {
        List<String> lines = new ArrayList<>(content.lines().skip(number - 1L).limit(1).toList());
        return lines.isEmpty() ? "" : lines.get(0);
    }
}
