package org.keeplit.text;

import com.google.common.collect.ImmutableMap;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;

/** The pages that explain the codes of problems: the code at the start of a line, its page below it, set in. */
public final class Pages {
    private static final String FILE = "problems.txt";

    private Pages() {}

    /**
     * {@return the pages of a room by code, in the order of its file}
     *
     * @param room a class of the room
     */
    public static ImmutableMap<String, String> of(Class<?> room) {
        Map<String, StringBuilder> pages = new LinkedHashMap<>();
        try (InputStream in = room.getResourceAsStream(FILE);
                BufferedReader reader = new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))) {
            StringBuilder page = new StringBuilder();
            for (String line = reader.readLine(); line != null; line = reader.readLine()) {
                if (line.startsWith("    ")) {
                    page.append(line.substring(4)).append('\n');
                } else if (!line.isEmpty() && !line.startsWith("#")) {
                    page = new StringBuilder();
                    pages.put(line, page);
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        ImmutableMap.Builder<String, String> all = ImmutableMap.builder();
        pages.forEach((code, page) -> all.put(code, page.toString()));
        return all.buildOrThrow();
    }
}
