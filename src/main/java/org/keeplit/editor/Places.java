package org.keeplit.editor;

import java.nio.file.Path;
import java.util.Map;
import org.eclipse.lsp4j.Location;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.Range;
import org.keeplit.text.Span;

/** Places of this program as places of the protocol: lines and columns from 0, files as references. */
final class Places {
    private final Map<Path, String> uris;

    /** Begins. @param uris how the editor calls the files that are open */
    Places(Map<Path, String> uris) {
        this.uris = uris;
    }

    static Range range(Span span) {
        int line = Math.max(0, span.line() - 1);
        int from = Math.max(0, span.column() - 1);
        return new Range(new Position(line, from), new Position(line, from + span.length()));
    }

    /** {@return a range over whole lines} @param from the first line, from 1 @param to the last */
    static Range lines(int from, int to, int length) {
        return new Range(new Position(from - 1, 0), new Position(to - 1, length));
    }

    Location location(Span span) {
        return new Location(uri(span.source().name()), range(span));
    }

    String uri(String file) {
        Path path = Path.of(file);
        return uris.getOrDefault(path, path.toUri().toString());
    }
}
