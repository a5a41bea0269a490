package org.keeplit.text;

/**
 * A stretch of one line of a source.
 *
 * @param source the file
 * @param line the line, from 1; 0 when the whole file is meant
 * @param column the first column, from 1, in UTF-16 units
 * @param length how many UTF-16 units are meant; 0 at the end of a line
 */
public record Span(Source source, int line, int column, int length) {
    /** The place of things that no file mentions. */
    public static final Span NONE = new Span(Source.NONE, 0, 0, 0);

    /**
     * {@return the span of a whole file}
     *
     * @param source the file
     */
    public static Span ofFile(Source source) {
        return new Span(source, 0, 0, 0);
    }

    /**
     * The smallest span on this line that covers this one and another on the same line.
     *
     * @param other a span of the same source and line
     * @return the span from the first column of either to the last column of either
     */
    public Span to(Span other) {
        int from = Math.min(column, other.column);
        int end = Math.max(column + length, other.column + other.length);
        return new Span(source, line, from, end - from);
    }

    @Override
    public String toString() {
        return line == 0 ? source.name() : source.name() + ":" + line + ":" + column;
    }
}
