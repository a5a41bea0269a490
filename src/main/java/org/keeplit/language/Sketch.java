package org.keeplit.language;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.keeplit.language.grammar.Words;
import org.keeplit.text.Source;
import org.keeplit.text.Span;
import org.keeplit.unit.Unit;

/**
 * A file as far as its lines show it, for editors: words with their places, and how deep each line stands. Nothing of it is resolved, so
 * it is there however broken the text is.
 *
 * @param source the file
 * @param rows the lines that have words on them
 * @param comments the comments, each from its mark on
 */
public record Sketch(Source source, ImmutableList<Row> rows, ImmutableList<Span> comments) {
    /** What a word is by its looks. */
    public enum Sort {
        /** A word of the language. */
        RESERVED,
        /** Any other word. */
        WORD,
        /** A word that begins with a capital and is no phase. */
        VARIABLE,
        /** The letters of phases. */
        PHASES,
        /** A number. */
        NUMBER,
        /** The unit after a number. */
        UNIT,
        /** A text in quotes. */
        TEXT,
        /** A comma, a colon, a stroke, or anything else. */
        MARK
    }

    /**
     * A word.
     *
     * @param sort what it is
     * @param text as written
     * @param span where
     */
    public record Token(Sort sort, String text, Span span) {
        /** {@return the name that it says, without quotes} */
        public String name() {
            return sort == Sort.TEXT && text.length() > 1 && text.endsWith("\"") ? text.substring(1, text.length() - 1) : text;
        }
    }

    /**
     * A line.
     *
     * @param number its number, from 1
     * @param depth how deep it stands
     * @param section the first word of the section in which it is, as {@code crew} or {@code stage}; its own, if it begins one
     * @param item the first word of the item in which it is, as {@code procedure} or {@code network}
     * @param itemName the name of that item
     * @param tokens its words
     */
    public record Row(int number, int depth, String section, String item, String itemName, ImmutableList<Token> tokens) {
        /**
         * {@return whether it begins with these words}
         *
         * @param words the words
         */
        public boolean starts(String... words) {
            if (tokens.size() < words.length) {
                return false;
            }
            for (int i = 0; i < words.length; i++) {
                if (tokens.get(i).sort() == Sort.TEXT || !tokens.get(i).text().equals(words[i])) {
                    return false;
                }
            }
            return true;
        }

        /**
         * {@return the word at a column}
         *
         * @param column the column, from 1; the place behind a word counts as the word
         */
        public Optional<Token> at(int column) {
            return tokens.stream()
                    .filter(t -> t.span().column() <= column && column <= t.span().column() + t.span().length())
                    .reduce((a, b) -> b.span().column() == column && b.sort() == Sort.MARK ? a : b);
        }
    }

    /**
     * {@return a file as its lines show it}
     *
     * @param source the file; its name tells its kind
     */
    public static Sketch of(Source source) {
        return of(source, new Lexed());
    }

    /** {@return the same} @param lexed its lines, as far as they were read before */
    static Sketch of(Source source, Lexed lexed) {
        FileKind kind = FileKind.of(source.name()).orElse(FileKind.PROCEDURE);
        List<Line> lines = new LineReader(source, new Report(source), lexed).read();
        Indents.Place[] places = new Indents.Place[(int) source.content().lines().count() + 1];
        new Indents(kind).of(lines).forEach(place -> places[place.number()] = place);
        List<Row> rows = new ArrayList<>();
        String section = "";
        String item = "";
        String name = "";
        for (Line line : lines) {
            Role role = kind.roleOf(line);
            boolean begins = role == Role.SECTION || role == Role.SECTION_GROUP;
            section = begins ? line.head().getText() : section;
            boolean head = kind.isHead(line) || kind == FileKind.EXAMPLES && line.starts("example");
            item = head ? section : item;
            name = head && line.lexemes().size() > 1 ? line.lexemes().get(1).value() : name;
            int from = 0;
            while (from < line.lexemes().size()) {
                int number = line.lexemes().get(from).span().line();
                int to = from;
                while (to < line.lexemes().size() && line.lexemes().get(to).span().line() == number) {
                    to++;
                }
                rows.add(new Row(number, places[number].depth(), section, item, name, tokens(line.lexemes().subList(from, to))));
                from = to;
            }
        }
        return new Sketch(source, ImmutableList.copyOf(rows), comments(source));
    }

    private static ImmutableList<Span> comments(Source source) {
        ImmutableList.Builder<Span> all = ImmutableList.builder();
        int number = 0;
        for (String line : (Iterable<String>) source.content().lines()::iterator) {
            number++;
            int mark = WrittenLine.commentIn(line);
            if (mark < line.length()) {
                all.add(new Span(source, number, mark + 1, line.length() - mark));
            }
        }
        return all.build();
    }

    private static ImmutableList<Token> tokens(List<Lexeme> lexemes) {
        ImmutableList.Builder<Token> tokens = ImmutableList.builder();
        boolean number = false;
        for (Lexeme lexeme : lexemes) {
            tokens.add(new Token(number && isUnit(lexeme) ? Sort.UNIT : sort(lexeme), lexeme.getText(), lexeme.span()));
            number = lexeme.isNumber();
        }
        return tokens.build();
    }

    private static boolean isUnit(Lexeme lexeme) {
        return lexeme.getType() == Words.PERCENT || Unit.of(lexeme.getText()).isPresent();
    }

    private static Sort sort(Lexeme lexeme) {
        if (lexeme.isText() || lexeme.getType() == Words.OPEN_STRING) {
            return Sort.TEXT;
        } else if (lexeme.isNumber()) {
            return Sort.NUMBER;
        } else if (lexeme.isPhases()) {
            return Sort.PHASES;
        } else if (lexeme.isVariable()) {
            return Sort.VARIABLE;
        }
        return lexeme.getType() == Words.WORD ? Sort.WORD : lexeme.isReserved() ? Sort.RESERVED : Sort.MARK;
    }

    /**
     * {@return the line of a number, if it has words on it}
     *
     * @param number the number, from 1
     */
    public Optional<Row> row(int number) {
        return rows.stream().filter(r -> r.number() == number).findFirst();
    }

    /**
     * {@return the word at a place}
     *
     * @param line the line, from 1
     * @param column the column, from 1
     */
    public Optional<Token> at(int line, int column) {
        return row(line).flatMap(r -> r.at(column));
    }
}
