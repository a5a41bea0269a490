package org.keeplit.language;

import java.util.ArrayList;
import java.util.List;
import org.keeplit.language.grammar.Words;

/** Puts the words of each line one space apart, and what stands in a column below what stands there above. */
final class Columns {
    /** How wide the kind and the name of an element are at least. */
    private static final int ELEMENT = 12;
    /** How wide the words are at least that begin the header of a procedure. */
    private static final int HEADER = 6;

    private final List<WrittenLine> lines;
    private final Indents.Place[] placeOf;

    Columns(List<WrittenLine> lines, Indents.Place[] placeOf) {
        this.lines = lines;
        this.placeOf = placeOf;
    }

    /**
     * A way in which lines that follow one another are set in columns.
     *
     * @param name what such lines are
     * @param at before which word the column stands
     */
    private record Column(String name, int at) {}

    /** {@return the code of each line, without what it is set in by, and without its comment} */
    List<String> codes() {
        List<String> codes = new ArrayList<>();
        int from = 0;
        while (from < lines.size()) {
            Column column = column(from);
            int to = from + 1;
            int widest = column == null ? 0 : width(from, column);
            while (column != null && to < lines.size() && column(to) != null && column(to).name().equals(column.name())) {
                widest = Math.max(widest, width(to, column(to)));
                to++;
            }
            for (int i = from; i < to; i++) {
                codes.add((column == null ? code(i) : inColumn(i, column(i), widest)).stripTrailing());
            }
            from = to;
        }
        return codes;
    }

    private int width(int line, Column column) {
        return text(lines.get(line).words().subList(0, column.at()), lines.get(line)).length();
    }

    private String inColumn(int number, Column column, int widest) {
        WrittenLine line = lines.get(number);
        String before = text(line.words().subList(0, column.at()), line);
        String after = text(line.words().subList(column.at(), line.words().size()), line);
        return before + " ".repeat(widest - before.length() + 2) + after;
    }

    /** {@return the column of a line that goes with its neighbours, or null} */
    private Column column(int number) {
        WrittenLine line = lines.get(number);
        int size = line.words().size();
        if (placeOf[number] == null || !placeOf[number].first() || size < 2) {
            return null;
        }
        if (line.starts("mode") && size > 2) {
            return new Column("mode", 2);
        } else if (line.starts("conductor") && size > 2) {
            return new Column("conductor", 2);
        } else if (line.starts("spacing") && size > 2) {
            return new Column("spacing", 2);
        } else if (line.starts("verb")) {
            int at = effects(line);
            return at < 0 ? null : new Column("verb", at);
        }
        boolean person = placeOf[number].item() != Indents.Item.NETWORK
                && placeOf[number].depth() > 0
                && line.words().get(0).type() == Words.WORD
                && line.words().get(1).isText()
                && (size == 2 || line.words().get(2).is(","));
        return person ? new Column("person", 1) : null;
    }

    /** {@return before which word of a verb's line its effects stand: behind the second form, which ends like the first} */
    private static int effects(WrittenLine line) {
        int object = 0;
        int slash = 0;
        int again = 0;
        for (int i = 1; i < line.words().size(); i++) {
            if (line.words().get(i).is("/")) {
                slash = i;
            } else if (line.words().get(i).is("X")) {
                again = slash > 0 && again == 0 ? i : again;
                object = slash == 0 && object == 0 ? i : object;
            }
        }
        int tail = slash - object - 1;
        int at = again + tail + 1;
        return object > 0 && slash > object && again > slash && at < line.words().size() ? at : -1;
    }

    /** {@return a line that stands for itself} */
    private String code(int number) {
        WrittenLine line = lines.get(number);
        List<WrittenLine.Word> words = line.words();
        if (placeOf[number] == null || !placeOf[number].first()) {
            return text(words, line);
        }
        Indents.Item item = placeOf[number].item();
        boolean element = item == Indents.Item.NETWORK
                && words.size() > 3
                && (words.get(2).type() == Words.FROM || words.get(2).type() == Words.AT);
        if (element) {
            String named = padded(words.get(0).text(), ELEMENT + 1) + words.get(1).text();
            return padded(named, 2 * (ELEMENT + 1)) + text(words.subList(2, words.size()), line);
        }
        boolean header = item == Indents.Item.PROCEDURE
                && placeOf[number].depth() == 0
                && (line.starts("title") || line.starts("keeps") || line.starts("for"));
        if (header) {
            return padded(words.get(0).text(), HEADER + 1) + text(words.subList(1, words.size()), line);
        } else if (line.starts("breaks") || line.starts("makes")) {
            return padded(words.get(0).text(), 8) + text(words.subList(1, words.size()), line);
        } else if (line.starts("leads", "break") || line.starts("leads", "make")) {
            return padded("leads " + words.get(1).text(), 13) + text(words.subList(2, words.size()), line);
        }
        return placeOf[number].depth() == 0 ? head(line) : text(words, line);
    }

    /** A head has two spaces on both sides of its title, and before what follows its name. */
    private static String head(WrittenLine line) {
        List<WrittenLine.Word> words = line.words();
        if (line.starts("example") && words.size() > 2) {
            return text(words.subList(0, 2), line) + "  " + text(words.subList(2, words.size()), line);
        }
        boolean named = line.starts("network") || line.starts("equipment") || line.starts("rulebook") || line.starts("procedure")
                || line.starts("variant") || line.starts("examples");
        if (!named || words.size() < 3) {
            return text(words, line);
        }
        String start = text(words.subList(0, 2), line) + "  ";
        boolean titled = line.starts("variant") && words.get(2).isText() && words.size() > 3;
        return titled
                ? start + words.get(2).text() + "  " + text(words.subList(3, words.size()), line)
                : start + text(words.subList(2, words.size()), line);
    }

    /** {@return words with at least one space behind them} */
    private static String padded(String words, int width) {
        return words + " ".repeat(Math.max(1, width - words.length()));
    }

    private static String text(List<WrittenLine.Word> words, WrittenLine line) {
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < words.size(); i++) {
            text.append(i > 0 && isApart(words.get(i - 1), words.get(i), line) ? " " : "").append(words.get(i).text());
        }
        return text.toString();
    }

    /** A comma and a colon belong to the word before; the stroke of a qualified name to both. */
    private static boolean isApart(WrittenLine.Word before, WrittenLine.Word word, WrittenLine line) {
        boolean stroke = word.type() == Words.SLASH || before.type() == Words.SLASH;
        return word.type() != Words.COMMA && word.type() != Words.COLON && (!stroke || line.starts("verb"));
    }
}
