package org.keeplit.command;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.keeplit.language.Library;
import org.keeplit.language.Reader;
import org.keeplit.network.Equipment;
import org.keeplit.page.WholeFile;

/** New files, put together from the texts that the program brings, and written all or none. */
final class Scaffold {
    private static final Set<String> NEEDED = Set.of("source", "breaker", "recloser", "load", "bypass-jumper");

    private final String name;
    private Path folder;
    private final Library library;
    private final Map<Path, String> files = new LinkedHashMap<>();
    private final Map<Path, String> more = new LinkedHashMap<>();

    /** Begins. @param name what the new thing is called @param folder where its files go */
    Scaffold(String name, Path folder) {
        this.name = name;
        this.folder = folder;
        this.library = new Reader().read(reach(folder));
    }

    /** {@return what is in reach of a folder: the nearest library above it, and its own files} */
    private static List<Path> reach(Path folder) {
        List<Path> all = new ArrayList<>();
        if (Files.isDirectory(folder)) {
            all.add(folder);
        }
        Nearby.shared(folder).ifPresent(all::add);
        return all;
    }

    Library library() {
        return library;
    }

    /** {@return the equipment lists that together have all kinds that a new file needs, or none} */
    List<String> equipment() {
        for (Equipment one : library.equipment().values()) {
            if (one.kinds().keySet().containsAll(NEEDED)) {
                return List.of(one.name());
            }
        }
        return List.of();
    }

    /** {@return the rulebook that has a rule of that name} */
    Optional<String> rulesOf(String rule) {
        return library.rulebooks().values().stream()
                .filter(book -> book.rules().stream().anyMatch(r -> r.name().equals(rule)))
                .map(book -> book.name())
                .findFirst();
    }

    Path folder() {
        return folder;
    }

    /** Says where the files go that are added from now on. */
    void moveTo(Path other) {
        folder = other;
    }

    /**
     * Adds a file.
     *
     * @param texts the texts to begin with, one after another
     * @param file its name
     * @param words what stands for the words in capitals
     * @return where it will be
     */
    Path put(List<String> texts, String file, Map<String, String> words) {
        Path path = folder.resolve(file).normalize();
        files.put(path, filled(texts, words));
        return path;
    }

    /** Adds a text at the end of a file that is there. */
    void append(String text, Path file) {
        more.put(file, "\n" + filled(List.of(text), Map.of()));
    }

    /** {@return a file that is there already and would be written} */
    Optional<Path> existing() {
        return files.keySet().stream().filter(Files::exists).findFirst();
    }

    /** Writes. @return the files, in the order in which they were added */
    List<Path> write() {
        List<Path> written = new ArrayList<>();
        Path now = folder;
        try {
            if (!folder.toString().isEmpty()) {
                Files.createDirectories(folder);
            }
            for (Map.Entry<Path, String> file : files.entrySet()) {
                now = file.getKey();
                WholeFile.write(now, file.getValue());
                written.add(now);
            }
            for (Map.Entry<Path, String> file : more.entrySet()) {
                now = file.getKey();
                WholeFile.replace(now, Files.readString(now) + file.getValue());
                written.add(now);
            }
        } catch (IOException e) {
            written.forEach(path -> takeBack(path, files.containsKey(path)));
            throw Refused.unwritten(now, e);
        }
        return written;
    }

    /** Takes a file away again that was written before another could not be; what was added to one stays, since that is the last. */
    private static void takeBack(Path path, boolean isNew) {
        try {
            if (isNew) {
                Files.deleteIfExists(path);
            }
        } catch (IOException stays) {
            // It is told that the other could not be written.
        }
    }

    private String filled(List<String> texts, Map<String, String> words) {
        StringBuilder all = new StringBuilder();
        texts.forEach(text -> all.append(text(text)));
        String filled = all.toString();
        for (Map.Entry<String, String> word : words.entrySet()) {
            filled = filled.replace(word.getKey(), word.getValue());
        }
        return filled.replace("EQUIPMENT", String.join(", ", equipment())).replace("NAME", name);
    }

    private static String text(String file) {
        try (InputStream in = Scaffold.class.getResourceAsStream(file)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
