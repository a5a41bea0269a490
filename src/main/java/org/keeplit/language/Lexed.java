package org.keeplit.language;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.antlr.v4.runtime.CharStreams;
import org.antlr.v4.runtime.Token;
import org.keeplit.language.grammar.Words;

/**
 * What the lexer makes of lines, kept by the lines' texts. Where a file is read again, most lines are as they were, and many are alike. It
 * belongs to one thread, and keeps the lines of the last two readings.
 */
final class Lexed {
    /** A word of a line. @param start where it begins, in UTF-16 units from 0 */
    record Word(int type, String text, int start) {}

    private final Words lexer = new Words(CharStreams.fromString(""));
    private final boolean keeps;
    /** Each text of a word once: most words of a file come often. */
    private final Map<String, String> texts = new HashMap<>();
    private Map<String, List<Word>> before = new HashMap<>();
    private Map<String, List<Word>> now = new HashMap<>();

    Lexed() {
        this(true);
    }

    private Lexed(boolean keeps) {
        this.keeps = keeps;
        lexer.removeErrorListeners();
    }

    /** {@return what keeps no lines, for a file that is read once} */
    static Lexed once() {
        return new Lexed(false);
    }

    /** Begins another reading: what is not asked for in it is forgotten with the next. */
    void turn() {
        before = now;
        texts.clear();
        now = new HashMap<>();
    }

    /** {@return the words of a line, {@code the} among them} @param text the line */
    List<Word> words(String text) {
        if (!keeps) {
            return lex(text);
        }
        List<Word> known = now.get(text);
        if (known == null) {
            known = before.get(text);
            known = known == null ? lex(text) : known;
            now.put(text, known);
        }
        return known;
    }

    private List<Word> lex(String text) {
        boolean wide = text.length() != text.codePointCount(0, text.length());
        lexer.setInputStream(CharStreams.fromString(text));
        List<Word> words = new ArrayList<>();
        for (Token token = lexer.nextToken(); token.getType() != Token.EOF; token = lexer.nextToken()) {
            // The lexer counts code points, a span counts UTF-16 units.
            int start = wide ? text.offsetByCodePoints(0, token.getStartIndex()) : token.getStartIndex();
            words.add(new Word(token.getType(), once(token.getText()), start));
        }
        return List.copyOf(words);
    }

    private String once(String text) {
        String before = texts.putIfAbsent(text, text);
        return before == null ? text : before;
    }
}
