package org.keeplit.language;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.List;
import org.keeplit.language.grammar.Words;
import org.keeplit.text.Problem;
import org.keeplit.text.Source;
import org.keeplit.text.Span;
import org.keeplit.text.Unseen;

/** Cuts a source into lines of lexemes. */
final class LineReader {
    /** No honest line is longer. */
    static final int LONGEST = 4000;
    /** No honest statement has more words, continuation lines included. */
    static final int WORDIEST = 800;

    private final Source source;
    private final Report report;
    private final Lexed lexed;

    LineReader(Source source, Report report) {
        this(source, report, Lexed.once());
    }

    /** Like the other. @param lexed the lines of readings before */
    LineReader(Source source, Report report, Lexed lexed) {
        this.source = source;
        this.report = report;
        this.lexed = lexed;
    }

    /** {@return the lines that have anything on them, continuation lines joined} */
    ImmutableList<Line> read() {
        List<Line> lines = new ArrayList<>();
        int number = 0;
        for (String text : (Iterable<String>) source.content().lines()::iterator) {
            number++;
            if (text.length() > LONGEST) {
                report.add(Code.LINE_TOO_LONG.at(
                        new Span(source, number, 1, 1),
                        "this line has " + text.length() + " characters; the longest that is read has " + LONGEST));
                continue;
            }
            Line line = lex(text, number);
            if (line != null) {
                add(lines, line);
            }
        }
        return ImmutableList.copyOf(lines);
    }

    private void add(List<Line> lines, Line line) {
        boolean continues = line.head().is("and") || line.head().is("or");
        if (!continues) {
            lines.add(line);
        } else if (lines.isEmpty()) {
            report.add(Code.UNEXPECTED.at(
                    line.head().span(), "“" + line.head().getText() + "” continues a line, but no line stands above"));
        } else {
            Line before = lines.remove(lines.size() - 1);
            lines.add(join(before, line));
        }
    }

    private Line join(Line before, Line more) {
        if (before.lexemes().size() + more.lexemes().size() > WORDIEST) {
            if (!before.spoiled()) {
                report.add(Code.LINE_TOO_LONG.at(
                        before.head().span(), "this statement runs over more than " + WORDIEST + " words"));
            }
            return new Line(before.lexemes(), true);
        }
        ImmutableList<Lexeme> all = ImmutableList.<Lexeme>builder()
                .addAll(before.lexemes())
                .addAll(more.lexemes())
                .build();
        return new Line(all, before.spoiled() || more.spoiled());
    }

    /** {@return the lexemes of one physical line, or null if there are none} */
    private Line lex(String text, int number) {
        ImmutableList.Builder<Lexeme> lexemes = ImmutableList.builder();
        boolean any = false;
        boolean spoiled = false;
        int end = 0;
        for (Lexed.Word word : lexed.words(text)) {
            end = word.start() + word.text().length();
            Span span = new Span(source, number, word.start() + 1, word.text().length());
            Problem mistake = mistake(word, span);
            if (mistake != null && !spoiled) {
                report.add(mistake);
                spoiled = true;
            }
            if (word.type() != Words.THE) {
                lexemes.add(new Lexeme(word.type(), word.text(), span, text));
                any = true;
            }
        }
        int comment = text.indexOf('#', end);
        Problem strange = comment < 0 || spoiled ? null : unseen(text.substring(comment), source, number, comment + 1, "comment");
        if (strange != null) {
            report.add(strange);
            spoiled = true;
        }
        return any ? new Line(lexemes.build(), spoiled) : null;
    }

    /**
     * {@return the lexemes of some words inside a text in quotes}
     *
     * @param words the words
     * @param place where they stand
     */
    static List<Lexeme> inside(String words, Span place) {
        List<Lexeme> lexemes = new ArrayList<>();
        for (Lexed.Word word : Lexed.once().words(words)) {
            if (word.type() != Words.THE) {
                Span span = new Span(place.source(), place.line(), place.column() + word.start(), word.text().length());
                lexemes.add(new Lexeme(word.type(), word.text(), span, place.source().line(place.line())));
            }
        }
        return lexemes;
    }

    /** {@return the mistake if a text or a comment has a character in it that nobody sees; null if not} @param column where it begins */
    private static Problem unseen(String text, Source source, int line, int column, String what) {
        for (int i = 0; i < text.length(); i += Character.charCount(text.codePointAt(i))) {
            int c = text.codePointAt(i);
            if (Unseen.is(c)) {
                return Code.STRANGE_CHARACTER
                        .at(new Span(source, line, column + i, 1), "this " + what + " has a character that cannot be seen, or that changes how others are shown: " + Unseen.words(c))
                        .help("take it out; what is proved and what is read must be the same");
            }
        }
        return null;
    }

    private static Problem mistake(Lexed.Word word, Span span) {
        return switch (word.type()) {
            case Words.OPEN_STRING -> Code.MISSING_QUOTE
                    .at(span, "this text has no closing quote on its line")
                    .help("close it with \" where it ends");
            case Words.OTHER -> Letters.stranger(word.text().codePointAt(0), span);
            case Words.STRING -> unseen(word.text(), span.source(), span.line(), span.column(), "text");
            case Words.WORD -> Letters.inWord(word.text(), span).orElse(null);
            default -> null;
        };
    }
}
