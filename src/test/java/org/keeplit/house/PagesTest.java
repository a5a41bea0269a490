package org.keeplit.house;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Every code that comes up after reading has its page, and no page explains what never comes up. */
class PagesTest {
    private static final Pattern CODE = Pattern.compile("Problem\\.(?:error|warning)\\(\\s*\"([a-z-]+)\"");

    @Test
    void codesAndPagesAreTheSame() throws IOException {
        Set<String> codes = new TreeSet<>();
        for (String room : new String[] {"procedure", "program", "explore"}) {
            try (Stream<Path> files = Files.walk(Path.of("src/main/java/org/keeplit", room))) {
                files.filter(f -> f.toString().endsWith(".java")).forEach(f -> CODE.matcher(text(f))
                        .results()
                        .forEach(r -> codes.add(r.group(1))));
            }
        }
        String pages = text(Path.of("src/main/resources/org/keeplit/explore/problems.txt"));
        Set<String> explained = pages.lines()
                .filter(line -> line.matches("[a-z-]+"))
                .collect(Collectors.toCollection(TreeSet::new));
        assertTrue(codes.size() > 5);
        assertEquals(codes, explained);
    }

    private static String text(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
