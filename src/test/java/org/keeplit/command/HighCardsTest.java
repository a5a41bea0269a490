package org.keeplit.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Pictures and texts that are higher than a page are divided. */
class HighCardsTest {
    @TempDir
    Path folder;

    private void assertPrinted(Path file, String... more) {
        assertPrinted("cards", file, more);
    }

    private void assertPrinted(String into, Path file, String... more) {
        Stream<String> words = Stream.concat(
                Stream.of("cards", "--out", folder.resolve(into).toString(), "--date", "2026-03-02", file.toString()), Stream.of(more));
        Told.Ran ran = Told.run(words.toArray(String[]::new));
        assertEquals(0, ran.code(), ran.err());
        assertTrue(ran.out().contains("The proof holds"), ran::out);
        assertTrue(Files.exists(folder.resolve(into)));
    }

    @ParameterizedTest
    @ValueSource(strings = {"transfer", "station-breaker"})
    void cardsDiedBecauseAPieceWasHigherThanAPage(String procedure) {
        assertPrinted(Path.of("procedures", procedure + ".procedure"));
    }

    @Tag("long")
    @ParameterizedTest
    @MethodSource("shipped")
    void everyShippedProcedurePrintsOnBothPapers(Path procedure) {
        assertPrinted(procedure, "--paper", "half-letter");
        assertPrinted("a5", procedure, "--paper", "a5");
    }

    static Stream<Path> shipped() throws IOException {
        try (Stream<Path> all = Files.list(Path.of("procedures"))) {
            return all.filter(f -> f.toString().endsWith(".procedure")
                            && !f.toString().contains("variants"))
                    .sorted()
                    .toList()
                    .stream();
        }
    }

    @Test
    void textsAsLongAsALineMayBeGoOnOverSheets() throws IOException {
        Spur spur = new Spur(folder, 2);
        String text = "a word of warning ".repeat(200).strip();
        StringBuilder steps = new StringBuilder("  west opens gang-1\n    caution \"" + text + "\"\n    because \"" + text + "\"\n");
        for (int i = 0; i < 60; i++) {
            steps.append("    records \"reading ").append(i).append("\"\n");
        }
        assertPrinted(spur.procedure("P-1", "supply", steps.toString()));
        try (Stream<Path> all = Files.walk(folder.resolve("cards"))) {
            Path crew = all.filter(f -> f.endsWith("crew.html")).findFirst().orElseThrow();
            String html = Files.readString(crew);
            for (int i = 0; i < 60; i++) {
                assertTrue(html.contains("<b>Record:</b> reading " + i + " <span"), "reading " + i);
            }
            assertTrue(html.contains("continued"));
        }
    }
}
