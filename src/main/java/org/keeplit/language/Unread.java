package org.keeplit.language;

import java.util.List;

/**
 * Tells the lines of an item that no reader had before its eyes: whatever a reader leaves out without a word would be missing from what is
 * judged.
 */
final class Unread {
    private Unread() {}

    /** Adds a problem for each line that was not read, unless a mistake in its file explains it. */
    static void tell(Item item) {
        if (item.report().errors() == 0) {
            nodes(List.of(item.head()), item.report());
            nodes(item.sections(), item.report());
        }
    }

    private static void nodes(List<Node> nodes, Report report) {
        for (Node node : nodes) {
            if (node.line().lexemes().stream().noneMatch(Lexeme::isRead)) {
                report.add(Code.UNKNOWN_LINE
                        .at(node.span(), "nothing reads this line where it stands")
                        .help("take it out, or move it to what it is about"));
            }
            nodes(node.children(), report);
            if (node.otherwise() != null) {
                nodes(node.otherwise().children(), report);
            }
        }
    }
}
