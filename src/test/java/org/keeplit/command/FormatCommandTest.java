package org.keeplit.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code format} as a user calls it. */
class FormatCommandTest {
    private static final String UNTIDY = "language 1\r\nequipment e \"E\"\r\nkind   line is a line section\r\n";
    private static final String TIDY = "language 1\r\nequipment e  \"E\"\r\nkind line is a line section\r\n";
    private static final String BROKEN = "language 1\nequipment   b \"B\n";

    @TempDir
    Path folder;

    @Test
    void shippedFilesAreInTheirCanonicalForm() {
        Told.Ran ran = Told.run("format", "--check", "procedures", "shared");
        assertEquals(ExitCode.PROVED, ran.code(), ran.out() + ran.err());
    }

    @Test
    void aCheckWritesNothing() throws IOException {
        Path file = Files.writeString(folder.resolve("e.equipment"), UNTIDY);
        Told.Ran ran = Told.run("format", "--check", folder.toString());
        assertEquals(ExitCode.BROKEN, ran.code());
        assertEquals("is not in its canonical form: " + file + "\n1 file, 1 to be written anew\n", ran.out().replace(System.lineSeparator(), "\n"));
        assertEquals(UNTIDY, Files.readString(file));
    }

    @Test
    void filesAreReplacedAndBrokenOnesAreLeft() throws IOException {
        Path file = Files.writeString(folder.resolve("e.equipment"), UNTIDY);
        Path broken = Files.writeString(folder.resolve("b.equipment"), BROKEN);
        Told.Ran ran = Told.run("format", folder.toString());
        assertEquals(ExitCode.MISTAKES, ran.code());
        assertTrue(ran.err().contains("missing-quote"), ran.err());
        assertEquals(TIDY, Files.readString(file));
        assertEquals(BROKEN, Files.readString(broken));
        try (Stream<Path> left = Files.list(folder)) {
            assertEquals(2, left.count());
        }
        assertEquals(ExitCode.PROVED, Told.run("format", "--check", file.toString()).code());
    }
}
