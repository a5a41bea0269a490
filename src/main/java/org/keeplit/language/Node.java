package org.keeplit.language;

import java.util.ArrayList;
import java.util.List;
import org.keeplit.text.Span;

/** A line with the lines that belong to it: a section's, a group's, or the clauses below a statement. */
final class Node {
    private final Line line;
    private final List<Node> children = new ArrayList<>();
    private Node otherwise;
    private boolean unclosed;

    Node(Line line) {
        this.line = line;
    }

    Line line() {
        return line;
    }

    Lexeme head() {
        return line.head();
    }

    Span span() {
        return line.span();
    }

    List<Node> children() {
        return children;
    }

    /** {@return the second half of a choice, or null} */
    Node otherwise() {
        return otherwise;
    }

    void otherwise(Node half) {
        otherwise = half;
    }

    /** {@return whether its {@code end} is missing, so that what is inside cannot be trusted} */
    boolean unclosed() {
        return unclosed;
    }

    void leaveUnclosed() {
        unclosed = true;
    }

    /** {@return whether its line can be read at all} */
    boolean readable() {
        return !line.spoiled();
    }
}
