package org.keeplit.language;

import java.util.List;

/**
 * One network, equipment list, rulebook, procedure or variant, as it stands in its file.
 *
 * @param kind what it is
 * @param name its name, as its first line says
 * @param head its first line
 * @param sections the lines after the first
 * @param report where its mistakes go
 */
record Item(FileKind kind, Lexeme name, Node head, List<Node> sections, Report report) {
    boolean isVariant() {
        return head.line().starts("variant");
    }
}
