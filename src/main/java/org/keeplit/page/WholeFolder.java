package org.keeplit.page;

import com.google.common.io.MoreFiles;
import com.google.common.io.RecursiveDeleteOption;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;

/** A folder of pages, written whole or not at all. */
public final class WholeFolder {
    private WholeFolder() {}

    /** {@return a text as part of a file name: small letters, digits and hyphens} @param text the text */
    public static String slug(String text) {
        return text.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "-").replaceAll("^-|-$", "");
    }

    /** {@return a page as it is written} @param page the page */
    public static byte[] bytes(String page) {
        return page.getBytes(StandardCharsets.UTF_8);
    }

    /**
     * Writes a folder.
     *
     * @param folder the folder; it may be there only if it is empty
     * @param pages the pages by their path below it
     * @throws FileAlreadyExistsException if something is there
     * @throws IOException if it cannot be written; nothing is left then
     */
    public static void write(Path folder, Map<String, byte[]> pages) throws IOException {
        Path target = folder.toAbsolutePath().normalize();
        if (isTaken(target)) {
            throw new FileAlreadyExistsException(folder.toString());
        }
        Files.createDirectories(target.getParent());
        // Beside the folder, so that it can be renamed into place.
        Path made = target.resolveSibling("." + target.getFileName() + ".part");
        if (Files.exists(made)) {
            // Left by a run that was killed.
            MoreFiles.deleteRecursively(made, RecursiveDeleteOption.ALLOW_INSECURE);
        }
        Files.createDirectory(made);
        try {
            for (Map.Entry<String, byte[]> page : pages.entrySet()) {
                Path file = made.resolve(page.getKey());
                Files.createDirectories(file.getParent());
                Files.write(file, page.getValue());
            }
            Files.deleteIfExists(target);
            Files.move(made, target, StandardCopyOption.ATOMIC_MOVE);
        } finally {
            if (Files.exists(made)) {
                MoreFiles.deleteRecursively(made, RecursiveDeleteOption.ALLOW_INSECURE);
            }
        }
    }

    /**
     * {@return whether something is there that would be overwritten}
     *
     * @param folder the folder
     * @throws IOException if it cannot be looked at
     */
    public static boolean isTaken(Path folder) throws IOException {
        return Files.exists(folder) && !isEmptyFolder(folder);
    }

    private static boolean isEmptyFolder(Path path) throws IOException {
        if (!Files.isDirectory(path)) {
            return false;
        }
        try (Stream<Path> inside = Files.list(path)) {
            return inside.findAny().isEmpty();
        }
    }
}
