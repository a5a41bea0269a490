package org.keeplit.editor;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.nio.file.FileSystemNotFoundException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.keeplit.language.Library;
import org.keeplit.language.Reader;
import org.keeplit.language.Rereading;
import org.keeplit.language.Sketch;
import org.keeplit.text.Problems;
import org.keeplit.text.Source;

/** The open files and what was read of them. It belongs to the thread that reads. */
final class Desk {
    private final Map<String, Rereading> readings = new HashMap<>();
    private final Map<String, Page> pages = new LinkedHashMap<>();
    private final Map<String, Sketch> sketches = new HashMap<>();
    private Optional<Path> root = Optional.empty();

    void root(Optional<Path> folder) {
        root = folder;
    }

    /** {@return where a reference leads, if that is a file} */
    static Optional<Path> path(String uri) {
        try {
            return Optional.of(Path.of(URI.create(uri)).toAbsolutePath().normalize());
        } catch (IllegalArgumentException | FileSystemNotFoundException e) {
            return Optional.empty();
        }
    }

    /** {@return a file once it is read} @param uri its reference @param version the editor's number of the text @param text the text */
    Optional<Page> read(String uri, int version, String text) {
        Optional<Path> path = path(uri);
        if (path.isEmpty()) {
            return Optional.empty();
        }
        Map<Path, String> open = texts();
        open.put(path.get(), text);
        Rereading reading = readings.computeIfAbsent(uri, u -> new Rereading());
        Library library = reading.read(path.get(), open);
        Source source = new Source(path.get().toString().replace('\\', '/'), text);
        Page page = new Page(uri, path.get(), version, text, reading.sketch(source), library);
        pages.put(uri, page);
        return Optional.of(page);
    }

    void close(String uri) {
        pages.remove(uri);
        readings.remove(uri);
    }

    Optional<Page> page(String uri) {
        return Optional.ofNullable(pages.get(uri));
    }

    /** {@return the texts of all open files, by where they lie} */
    Map<Path, String> texts() {
        Map<Path, String> open = new HashMap<>();
        pages.values().forEach(page -> open.put(page.path(), page.text()));
        return open;
    }

    Places places() {
        Map<Path, String> uris = new HashMap<>();
        pages.values().forEach(page -> uris.put(page.path(), page.uri()));
        return new Places(uris);
    }

    /** {@return the names in a page and all that it refers to} */
    Names names(Page page) {
        List<Sketch> files = new ArrayList<>(List.of(page.sketch()));
        page.library().sources().values().stream()
                .filter(source -> !source.name().equals(page.name()))
                .forEach(source -> files.add(sketch(source)));
        return new Names(files);
    }

    /** {@return the names in a page, all that it refers to, and all files of the project} */
    Names allNames(Page page) {
        Map<String, Sketch> files = new LinkedHashMap<>();
        files.put(page.name(), page.sketch());
        page.library().sources().values().forEach(source -> files.putIfAbsent(source.name(), sketch(source)));
        Map<Path, String> open = texts();
        for (Source source : new Reader().texts(project(page), new Problems())) {
            String text = open.getOrDefault(Path.of(source.name()), source.content());
            files.computeIfAbsent(source.name(), name -> sketch(new Source(name, text)));
        }
        return new Names(files.values());
    }

    /** Where the editor opened no folder, the project is the file's own folder. */
    private List<Path> project(Page page) {
        Path folder = root.filter(r -> page.path().startsWith(r)).orElse(page.path().getParent());
        try (Stream<Path> inside = Files.list(folder)) {
            return inside.findAny().isEmpty() ? List.of() : List.of(folder);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private Sketch sketch(Source source) {
        Sketch known = sketches.get(source.name());
        if (known == null || !known.source().equals(source)) {
            known = Sketch.of(source);
            sketches.put(source.name(), known);
        }
        return known;
    }
}
