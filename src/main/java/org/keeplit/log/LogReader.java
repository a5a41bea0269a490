package org.keeplit.log;

import com.google.common.collect.ImmutableList;
import com.google.gson.stream.JsonReader;
import com.google.gson.stream.JsonToken;
import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/** Reads filled logs: CSV with a line of names, or JSON, an array of objects with the same names. */
final class LogReader {
    static final ImmutableList<String> COLUMNS = ImmutableList.of("step", "what", "time", "by", "item", "value");
    /** What a spreadsheet takes as a formula, or cells before it; apostrophes before it are part of how it is written. */
    private static final Pattern FORMULA = Pattern.compile("'*[=+@\\-\t\r]");
    private static final Pattern AT_LINE = Pattern.compile("at line (\\d+)");

    private final List<Entry> entries = new ArrayList<>();
    private final List<Difference> mistakes = new ArrayList<>();

    private LogReader() {}

    /** What a file holds. @param entries its lines @param mistakes what keeps it from being read */
    record Read(ImmutableList<Entry> entries, ImmutableList<Difference> mistakes) {}

    /** {@return what a file holds} @param text its content, JSON if it begins like that */
    static Read of(String text) {
        String content = text.startsWith("\uFEFF") ? text.substring(1) : text;
        LogReader reader = new LogReader();
        String start = content.stripLeading();
        if (start.startsWith("[") || start.startsWith("{")) {
            reader.json(content);
        } else {
            reader.csv(content);
        }
        return new Read(ImmutableList.copyOf(reader.entries), ImmutableList.copyOf(reader.mistakes));
    }

    /**
     * {@return a text as a cell that no spreadsheet takes as a formula: what one would begin with stands behind an apostrophe}
     *
     * @param text the text
     */
    static String cell(String text) {
        return FORMULA.matcher(text).lookingAt() ? "'" + text : text;
    }

    /** {@return the text of a cell} @param cell as it is in a file */
    static String text(String cell) {
        return cell.startsWith("'") && FORMULA.matcher(cell).lookingAt() ? cell.substring(1) : cell;
    }

    private void csv(String text) {
        String first = text.lines().findFirst().orElse("");
        // Where the comma is the decimal mark, spreadsheets write semicolons.
        char between = first.indexOf(';') >= 0 && first.indexOf(',') < 0 ? ';' : ',';
        CSVFormat format = CSVFormat.DEFAULT.builder()
                .setDelimiter(between)
                .setHeader()
                .setSkipHeaderRecord(true)
                .setTrim(true)
                .setIgnoreEmptyLines(true)
                .setAllowMissingColumnNames(true)
                .get();
        try (CSVParser parser = CSVParser.parse(new StringReader(text), format)) {
            for (String column : COLUMNS) {
                if (!column.equals("what") && !parser.getHeaderMap().containsKey(column)) {
                    mistakes.add(new Difference(1, "there is no column “" + column + "”; the first line names the columns: " + String.join(",", COLUMNS)));
                }
            }
            if (mistakes.isEmpty()) {
                for (CSVRecord row : parser) {
                    Map<String, String> cells = new LinkedHashMap<>();
                    row.toMap().forEach((column, cell) -> cells.put(column, text(cell)));
                    add((int) parser.getCurrentLineNumber(), cells);
                }
            }
        } catch (IOException | UncheckedIOException | IllegalArgumentException e) {
            mistakes.add(new Difference(line(e), "this is not the CSV of a log: " + e.getMessage()));
        }
    }

    private void json(String text) {
        try (JsonReader reader = new JsonReader(new StringReader(text))) {
            reader.beginArray();
            while (reader.hasNext()) {
                int line = line(reader.toString());
                Map<String, String> row = new LinkedHashMap<>();
                reader.beginObject();
                while (reader.hasNext()) {
                    String name = reader.nextName();
                    if (!COLUMNS.contains(name)) {
                        mistakes.add(new Difference(line(reader.toString()), "nothing is called “" + name + "” in a log; there are " + String.join(", ", COLUMNS)));
                        reader.skipValue();
                    } else if (reader.peek() == JsonToken.NULL) {
                        reader.nextNull();
                    } else {
                        row.put(name, reader.nextString().strip());
                    }
                }
                reader.endObject();
                add(line, row);
            }
            reader.endArray();
        } catch (IOException | IllegalStateException e) {
            mistakes.add(new Difference(line(e.getMessage()), "this is not the JSON of a log, an array of objects with "
                    + String.join(", ", COLUMNS) + ": " + e.getMessage().lines().findFirst().orElse("")));
        }
    }

    private static int line(Exception e) {
        return line(String.valueOf(e.getMessage()));
    }

    private static int line(String text) {
        Matcher matcher = AT_LINE.matcher(text);
        return matcher.find() ? Integer.parseInt(matcher.group(1)) : 1;
    }

    private void add(int line, Map<String, String> row) {
        Entry entry = new Entry(line, get(row, "step"), get(row, "time"), get(row, "by"), get(row, "item"), get(row, "value"));
        if (!entry.isEmpty()) {
            entries.add(entry);
        }
    }

    private static String get(Map<String, String> row, String name) {
        String value = row.get(name);
        return value == null ? "" : value.strip();
    }
}
