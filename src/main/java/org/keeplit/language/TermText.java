package org.keeplit.language;

import org.keeplit.network.Side;
import org.keeplit.text.Span;

/** A term as it stands on the line, before its sort is known. */
sealed interface TermText {
    Span span();

    /** {@return the words, for messages} */
    String words();

    /** A name or a variable. */
    record Ref(Lexeme name) implements TermText {
        @Override
        public Span span() {
            return name.span();
        }

        @Override
        public String words() {
            return Cursor.clip(name.value());
        }
    }

    /** What a part of something is called. */
    enum PartKind {
        LINE,
        LEAD,
        BUSHING,
        NODE,
        SITE
    }

    /** A part of something; it binds to the right. */
    record Part(PartKind part, Side side, TermText of, Span span, String words) implements TermText {}
}
