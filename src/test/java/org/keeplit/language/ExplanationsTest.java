package org.keeplit.language;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Every code has a page, and every code is shown by some wrong file or by a test of hostile input. */
class ExplanationsTest {
    /** Codes of files and folders; {@code HostileTest} shows them. */
    private static final List<String> OF_FILES = List.of(
            "bad-utf-8",
            "empty-folder",
            "file-too-large",
            "folder-named-as-file",
            "skipped",
            "line-too-long",
            "missing-file",
            "too-deep",
            "too-many",
            "unknown-file-kind",
            "unreadable");

    @Test
    void everyCodeHasAPage() {
        var pages = Explanations.pages();
        assertEquals(
                Arrays.stream(Code.values()).map(Code::id).toList(),
                pages.keySet().asList());
        pages.forEach((code, page) -> assertTrue(page.length() > 30, code));
    }

    @Test
    void everyCodeIsShownBySomeWrongFile() throws IOException {
        TreeSet<String> missing = new TreeSet<>(Explanations.pages().keySet());
        missing.removeAll(OF_FILES);
        try (Stream<Path> all = Files.list(Samples.ROOT.resolve("src/test/resources/mistakes"))) {
            for (Path file : all.filter(p -> p.toString().endsWith(".expected")).toList()) {
                String text = Files.readString(file);
                missing.removeIf(code -> text.contains("[" + code + "]"));
            }
        }
        assertEquals(new TreeSet<>(), missing);
    }
}
