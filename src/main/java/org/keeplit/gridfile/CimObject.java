package org.keeplit.gridfile;

import com.google.common.base.CharMatcher;
import java.util.Arrays;
import java.util.Optional;

/** One object of a grid file: its class, its attributes and where it begins. Kept small, since a file has hundreds of thousands. */
final class CimObject {
    private static final CharMatcher BREAKS = CharMatcher.whitespace().or(CharMatcher.javaIsoControl());

    private final String id;
    private final String type;
    private final int file;
    private final int line;
    private String[] keys = new String[8];
    private String[] values = new String[8];
    private int[] lines = new int[8];
    private int size;

    /**
     * An object without attributes.
     *
     * @param id its mRID, without prefixes
     * @param type its class, without a namespace prefix if it is one of the standard's
     * @param file the number of its file
     * @param line the line where it begins
     */
    CimObject(String id, String type, int file, int line) {
        this.id = id;
        this.type = type;
        this.file = file;
        this.line = line;
    }

    void add(String key, String value, int at) {
        if (size == keys.length) {
            // Nothing is left of one that was there without attributes, and is told more of later.
            int room = Math.max(8, 2 * size);
            keys = Arrays.copyOf(keys, room);
            values = Arrays.copyOf(values, room);
            lines = Arrays.copyOf(lines, room);
        }
        keys[size] = key;
        values[size] = value;
        lines[size] = at;
        size++;
    }

    /** Gives back what it took for attributes to come. */
    void trim() {
        keys = Arrays.copyOf(keys, size);
        values = Arrays.copyOf(values, size);
        lines = Arrays.copyOf(lines, size);
    }

    String id() {
        return id;
    }

    String type() {
        return type;
    }

    int file() {
        return file;
    }

    int line() {
        return line;
    }

    int size() {
        return size;
    }

    /** {@return an attribute's full name} @param index which */
    String key(int index) {
        return keys[index];
    }

    String value(int index) {
        return values[index];
    }

    /** {@return the line of an attribute} @param index which */
    int line(int index) {
        return lines[index];
    }

    /** {@return which attribute has that name behind its class's, or -1} @param attribute such as {@code nominalVoltage} */
    int find(String attribute) {
        for (int i = 0; i < size; i++) {
            String key = keys[i];
            int dot = key.length() - attribute.length() - 1;
            if (dot >= 0 && key.charAt(dot) == '.' && key.endsWith(attribute)) {
                return i;
            }
        }
        return -1;
    }

    private Optional<String> named() {
        int index = find("name");
        return index < 0 ? Optional.empty() : Optional.of(values[index]);
    }

    /** {@return its name on one line, else its mRID} */
    String name() {
        return named().map(n -> BREAKS.trimAndCollapseFrom(n, ' ')).filter(n -> !n.isBlank()).orElse(id);
    }

    @Override
    public String toString() {
        return type + " " + name();
    }
}
