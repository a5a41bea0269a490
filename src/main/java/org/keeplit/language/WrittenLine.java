package org.keeplit.language;

import com.google.common.collect.ImmutableList;
import org.antlr.v4.runtime.CharStreams;
import org.antlr.v4.runtime.Token;
import org.keeplit.language.grammar.Words;

/**
 * One physical line as it stands in a file, nothing left out.
 *
 * @param words its words, numbers, texts and marks, {@code the} among them
 * @param comment the comment from its mark on, without spaces at its end; empty if there is none
 */
record WrittenLine(ImmutableList<Word> words, String comment) {
    /** A word. @param type its type in the lexer grammar @param text as written */
    record Word(int type, String text) {
        boolean is(String word) {
            return type != Words.STRING && text.equals(word);
        }

        boolean isText() {
            return type == Words.STRING;
        }
    }

    /** {@return a line taken apart} @param line the line, without its line end */
    static WrittenLine of(String line) {
        int mark = commentIn(line);
        Words lexer = new Words(CharStreams.fromString(line.substring(0, mark)));
        lexer.removeErrorListeners();
        ImmutableList.Builder<Word> words = ImmutableList.builder();
        for (Token token = lexer.nextToken(); token.getType() != Token.EOF; token = lexer.nextToken()) {
            words.add(new Word(token.getType(), token.getText()));
        }
        return new WrittenLine(words.build(), line.substring(mark).stripTrailing());
    }

    /** {@return where the comment of a line begins; its length if there is none} */
    static int commentIn(String line) {
        boolean inText = false;
        for (int i = 0; i < line.length(); i++) {
            if (line.charAt(i) == '"') {
                inText = !inText;
            } else if (line.charAt(i) == '#' && !inText) {
                return i;
            }
        }
        return line.length();
    }

    boolean isBlank() {
        return words.isEmpty() && comment.isEmpty();
    }

    /** {@return whether it begins with these words} */
    boolean starts(String... some) {
        if (words.size() < some.length) {
            return false;
        }
        for (int i = 0; i < some.length; i++) {
            if (!words.get(i).is(some[i])) {
                return false;
            }
        }
        return true;
    }
}
