package org.keeplit.electric.flow;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** Small tables of published data: comment lines, a heading, rows. */
final class Csv {
    private Csv() {}

    /** A row by column name. */
    record Row(Map<String, String> fields) {
        String text(String column) {
            return fields.get(column);
        }

        double number(String column) {
            return Double.parseDouble(fields.get(column));
        }
    }

    static List<Row> read(String resource) {
        try (BufferedReader reader = new BufferedReader(new InputStreamReader(
                Csv.class.getResourceAsStream("/feeders/" + resource), StandardCharsets.UTF_8))) {
            List<String> lines =
                    reader.lines().filter(line -> !line.startsWith("#") && !line.isBlank()).toList();
            String[] heading = lines.get(0).split(",", -1);
            return lines.stream().skip(1).map(line -> row(heading, line.split(",", -1))).toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Row row(String[] heading, String[] cells) {
        Map<String, String> fields = new TreeMap<>();
        for (int k = 0; k < heading.length; k++) {
            fields.put(heading[k], cells[k]);
        }
        return new Row(fields);
    }
}
