package org.keeplit.language;

import com.google.common.collect.ImmutableList;
import java.util.List;
import org.keeplit.text.Span;

/**
 * One statement's line, continuation lines joined to it, comments and the word {@code the} left out.
 *
 * @param lexemes what stands on it, at least one
 * @param spoiled whether a mistake in its letters was already reported, so that nothing more is read from it
 */
record Line(ImmutableList<Lexeme> lexemes, boolean spoiled) {
    Lexeme head() {
        return lexemes.get(0);
    }

    Lexeme last() {
        return lexemes.get(lexemes.size() - 1);
    }

    /** {@return whether it starts with these words} */
    boolean starts(String... words) {
        if (lexemes.size() < words.length) {
            return false;
        }
        for (int i = 0; i < words.length; i++) {
            if (!lexemes.get(i).is(words[i])) {
                return false;
            }
        }
        return true;
    }

    /** {@return whether it ends with these two words, which open a block of conditions} */
    boolean ends(String first, String second) {
        int size = lexemes.size();
        return size >= 2
                && lexemes.get(size - 2).is(first)
                && lexemes.get(size - 1).is(second);
    }

    /** {@return the stretch that it takes on its first physical line} */
    Span span() {
        return spanOf(lexemes);
    }

    /** {@return the stretch of some lexemes, as far as they stand on one physical line} */
    static Span spanOf(List<Lexeme> some) {
        Span first = some.get(0).span();
        Span last = first;
        for (Lexeme lexeme : some) {
            if (lexeme.span().line() == first.line()) {
                last = lexeme.span();
            }
        }
        return first.to(last);
    }

    /** {@return some lexemes as they were written, from the first to the last, comments left out} */
    static String written(List<Lexeme> some) {
        StringBuilder text = new StringBuilder();
        int from = 0;
        while (from < some.size()) {
            Span first = some.get(from).span();
            int to = from;
            while (to + 1 < some.size() && some.get(to + 1).span().line() == first.line()) {
                to++;
            }
            Span last = some.get(to).span();
            text.append(text.isEmpty() ? "" : " ")
                    .append(some.get(from).raw(), first.column() - 1, last.column() - 1 + last.length());
            from = to + 1;
        }
        return text.toString();
    }
}
