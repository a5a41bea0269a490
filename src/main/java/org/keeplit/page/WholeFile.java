package org.keeplit.page;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/** A new file, written whole or not at all. */
public final class WholeFile {
    private WholeFile() {}

    /**
     * Writes a file.
     *
     * @param file where; nothing may be there
     * @param text what
     * @throws FileAlreadyExistsException if something is there
     * @throws IOException if it cannot be written; nothing is left then
     */
    public static void write(Path file, String text) throws IOException {
        Path target = file.toAbsolutePath().normalize();
        if (Files.exists(target)) {
            throw new FileAlreadyExistsException(file.toString());
        }
        Files.createDirectories(target.getParent());
        Path beside = target.resolveSibling("." + target.getFileName() + ".part");
        // Left by a run that was killed.
        Files.deleteIfExists(beside);
        try {
            Files.write(beside, text.getBytes(StandardCharsets.UTF_8), StandardOpenOption.CREATE_NEW);
            // Without a move over it, so that what another program put there meanwhile stays.
            Files.createLink(target, beside);
        } catch (UnsupportedOperationException e) {
            Files.move(beside, target);
        } finally {
            Files.deleteIfExists(beside);
        }
    }
}
