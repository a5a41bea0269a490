package org.keeplit.language;

import java.util.List;
import org.keeplit.text.Problem;
import org.keeplit.text.Span;

/** A place in the lexemes of a line, moving on word by word. */
final class Cursor {
    private final List<Lexeme> all;
    private final Span end;
    private int at;

    /**
     * A cursor at the start of some lexemes.
     *
     * @param all the lexemes
     * @param end the place just after them, for messages on what is missing
     */
    Cursor(List<Lexeme> all, Span end) {
        this.all = all;
        this.end = end;
        all.forEach(Lexeme::markRead);
    }

    /** {@return a cursor over a whole line} */
    static Cursor over(Line line) {
        return over(line.lexemes());
    }

    /** {@return a cursor over some lexemes, at least one} */
    static Cursor over(List<Lexeme> some) {
        Span last = some.get(some.size() - 1).span();
        return new Cursor(some, new Span(last.source(), last.line(), last.column() + last.length(), 0));
    }

    boolean done() {
        return at >= all.size();
    }

    int index() {
        return at;
    }

    void moveTo(int index) {
        at = index;
    }

    /** {@return the lexeme here} @throws Misread at the end of the line, saying what is missing */
    Lexeme need(String what) {
        if (done()) {
            throw new Misread(Code.UNFINISHED.at(end, what + " is missing here"));
        }
        return all.get(at);
    }

    /** {@return the lexeme here, moving past it} @throws Misread at the end of the line, saying what is missing */
    Lexeme next(String what) {
        Lexeme lexeme = need(what);
        at++;
        return lexeme;
    }

    /** {@return whether there is a lexeme so far ahead, and it is this word} */
    boolean sees(int ahead, String word) {
        return at + ahead < all.size() && all.get(at + ahead).is(word);
    }

    /** {@return the lexeme so far ahead, or null beyond the end} */
    Lexeme peek(int ahead) {
        return at + ahead < all.size() && at + ahead >= 0 ? all.get(at + ahead) : null;
    }

    /** {@return whether these words follow} */
    boolean sees(List<String> words) {
        for (int i = 0; i < words.size(); i++) {
            if (!sees(i, words.get(i))) {
                return false;
            }
        }
        return true;
    }

    /** Moves past these words if they follow. @return whether they did */
    boolean take(String... words) {
        if (!sees(List.of(words))) {
            return false;
        }
        at += words.length;
        return true;
    }

    /** Moves past these words. @throws Misread if something else follows */
    void expect(String what, String... words) {
        if (!take(words)) {
            throw unexpected(what);
        }
    }

    /** {@return the mistake that something other than this stands here} */
    Misread unexpected(String what) {
        Lexeme here = need(what);
        return new Misread(
                Code.UNEXPECTED.at(here.span(), "“" + shown(here) + "” stands where " + what + " should follow"));
    }

    /** @throws Misread if anything is left on the line */
    void finish(String after) {
        if (!done()) {
            Span rest = Line.spanOf(all.subList(at, all.size()));
            throw new Misread(Code.LEFT_OVER.at(
                    rest, "“" + clip(Line.written(all.subList(at, all.size()))) + "” is left over after " + after));
        }
    }

    /** {@return the stretch from a lexeme to the last one passed} */
    Span from(int start) {
        return start >= at ? here() : Line.spanOf(all.subList(start, at));
    }

    /** {@return the stretch of the lexeme here, or the end of the line} */
    Span here() {
        return done() ? end : all.get(at).span();
    }

    /** {@return the words from a lexeme to the last one passed, as written} */
    String words(int start) {
        return start >= at ? "" : clip(Line.written(all.subList(start, at)));
    }

    /** {@return all lexemes from here on} */
    List<Lexeme> rest() {
        return all.subList(Math.min(at, all.size()), all.size());
    }

    /** {@return the problem at the lexeme here} */
    Problem problem(Code code, String message) {
        return code.at(here(), message);
    }

    private static String shown(Lexeme lexeme) {
        return clip(lexeme.getText());
    }

    /** {@return words short enough for a message} */
    static String clip(String words) {
        return words.length() <= 60 ? words : words.substring(0, 57) + "…";
    }
}
