package org.keeplit.page;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;

/** A file, written whole or not at all. */
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

    /**
     * Puts another text in the place of a file; at no moment is there half a file.
     *
     * @param file the file
     * @param text the text
     * @throws IOException if it cannot be written; the file is as it was then
     */
    public static void replace(Path file, String text) throws IOException {
        Path real = file.toRealPath();
        Path beside = Files.createTempFile(real.getParent(), "." + real.getFileName(), ".new");
        try {
            Files.writeString(beside, text);
            if (Files.getFileStore(real).supportsFileAttributeView("posix")) {
                Files.setPosixFilePermissions(beside, Files.getPosixFilePermissions(real));
            }
            Files.move(beside, real, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        } finally {
            Files.deleteIfExists(beside);
        }
    }
}
