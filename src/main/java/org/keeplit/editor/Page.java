package org.keeplit.editor;

import java.nio.file.Path;
import java.util.List;
import org.keeplit.language.Library;
import org.keeplit.language.Sketch;
import org.keeplit.text.Problem;

/**
 * A file that is open in the editor, as it was last read.
 *
 * @param uri its name in the protocol
 * @param path where it lies
 * @param version the editor's number of this text
 * @param text its text
 * @param sketch its lines
 * @param library what it says, with all that it refers to
 */
record Page(String uri, Path path, int version, String text, Sketch sketch, Library library) {
    /** {@return the name under which its places know it} */
    String name() {
        return sketch.source().name();
    }

    /** {@return what is wrong with it} */
    List<Problem> problems() {
        return library.problems().stream()
                .filter(p -> p.span().source().name().equals(name()))
                .toList();
    }
}
