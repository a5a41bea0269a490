package org.keeplit.editor;

import java.util.List;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.TextEdit;
import org.keeplit.language.Formatter;

/** A page in its one canonical form; one that cannot be told apart for certain stays as it is. */
final class Formatting {
    private Formatting() {}

    static List<TextEdit> of(Page page) {
        return Formatter.format(page.sketch().source())
                .text()
                .filter(text -> !text.equals(page.text()))
                .map(text -> List.of(new TextEdit(whole(page.text()), text)))
                .orElse(List.of());
    }

    private static Range whole(String text) {
        return new Range(new Position(0, 0), new Position((int) text.lines().count() + 1, 0));
    }
}
