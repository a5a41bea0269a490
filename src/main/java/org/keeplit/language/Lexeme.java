package org.keeplit.language;

import org.antlr.v4.runtime.CommonToken;
import org.keeplit.language.grammar.Words;
import org.keeplit.network.Phases;
import org.keeplit.text.Span;

/** A word, number, text or mark of a line, with its place in the file. */
final class Lexeme extends CommonToken {
    private final transient Span span;
    private final String raw;
    private transient boolean read;

    /**
     * Makes a lexeme.
     *
     * @param type its type in the lexer grammar
     * @param text as written
     * @param span where
     * @param raw the whole line that it stands on
     */
    Lexeme(int type, String text, Span span, String raw) {
        super(type, text);
        this.span = span;
        this.raw = raw;
        setLine(span.line());
        setCharPositionInLine(span.column() - 1);
    }

    Span span() {
        return span;
    }

    /** Notes that a reader has it before its eyes. */
    void markRead() {
        read = true;
    }

    /** {@return whether any reader had it before its eyes} */
    boolean isRead() {
        return read;
    }

    /** {@return the whole line on which it stands} */
    String raw() {
        return raw;
    }

    /** {@return whether it is this word, not in quotes} */
    boolean is(String word) {
        return getType() != Words.STRING && getText().equals(word);
    }

    boolean isText() {
        return getType() == Words.STRING;
    }

    boolean isNumber() {
        return getType() == Words.NUMBER;
    }

    /** {@return whether it can name something: a free word, or any words in quotes} */
    boolean isName() {
        return getType() == Words.WORD || isText();
    }

    /** {@return whether it is a word of the language, which a name cannot be without quotes} */
    boolean isReserved() {
        return getType() != Words.WORD && Character.isLetter(getText().charAt(0));
    }

    /** {@return whether it looks like a variable: a capital first, and not the letters of phases} */
    boolean isVariable() {
        return getType() == Words.WORD && Character.isUpperCase(getText().charAt(0)) && !isPhases();
    }

    /** {@return whether it is the letters of phases or of the neutral, such as {@code B}, {@code CA} or {@code ABCN}} */
    boolean isPhases() {
        return getType() == Words.WORD && Phases.parse(getText()).isPresent();
    }

    /** {@return what is written, without quotes} */
    String value() {
        return isText() ? getText().substring(1, getText().length() - 1) : getText();
    }
}
