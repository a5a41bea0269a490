package org.keeplit.language;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.keeplit.text.Problem;
import org.keeplit.text.Source;

/** The files within reach: those that were given, and the library folders near them, opened only when needed. */
final class Shelf {
    private final List<Draft> given = new ArrayList<>();
    private final Map<String, Path> paths = new LinkedHashMap<>();
    private final Map<Path, Optional<Draft>> library = new LinkedHashMap<>();
    /** The names that library files declare, for files that were looked at. */
    private final Map<Path, Set<String>> heads = new HashMap<>();
    private final Map<Path, List<Path>> folders = new LinkedHashMap<>();
    private final Map<Path, Optional<Path>> roots = new HashMap<>();
    private final Map<List<Object>, List<Path>> ofKind = new HashMap<>();
    private final List<Problem> problems = new ArrayList<>();
    private final Disk disk;
    private final Rereading.Kept kept;

    /** A shelf. @param disk reads files; it is never asked when only sources are given */
    Shelf(Disk disk) {
        this(disk, new Rereading.Kept());
    }

    /** Like {@link #Shelf(Disk)}. @param kept what was read before */
    Shelf(Disk disk, Rereading.Kept kept) {
        this.disk = disk;
        this.kept = kept;
    }

    Rereading.Kept kept() {
        return kept;
    }

    /** Adds a given file. @param path where it lies, or null if it lies on no disk */
    void add(Draft draft, Path path) {
        given.add(draft);
        if (path != null) {
            paths.put(draft.report().source().name(), path);
        }
    }

    boolean isGiven(Draft draft) {
        return given.contains(draft);
    }

    /** {@return whether an item stands in a given file} */
    boolean isGiven(Item item) {
        return given.stream().anyMatch(d -> d.report() == item.report());
    }

    List<Draft> given() {
        return given;
    }

    /** {@return the library files that were opened} */
    List<Draft> opened() {
        return library.values().stream().flatMap(Optional::stream).toList();
    }

    /** {@return the problems of library files that could not be opened} */
    List<Problem> problems() {
        return problems;
    }

    /**
     * {@return every item of that name that a file can reach, in given files and in the library; more than one is a mistake of whoever
     * refers to it. Of procedures those in the same file are meant, if there are any: a variant is one of its neighbor}
     */
    List<Item> find(FileKind kind, String name, Source from) {
        List<Item> all = new ArrayList<>();
        for (Draft draft : given) {
            draft.items(kind, name).forEach(all::add);
        }
        List<Item> near = all.stream().filter(i -> i.report().source().name().equals(from.name())).toList();
        if (kind == FileKind.PROCEDURE && !near.isEmpty()) {
            return near;
        }
        for (Path file : files(kind, from)) {
            if (declares(kind, file, name)) {
                open(kind, file).ifPresent(draft -> draft.items(kind, name).forEach(all::add));
            }
        }
        return all;
    }

    /** {@return whether a library file begins something of that name; told by the first words of its lines, without reading it} */
    private boolean declares(FileKind kind, Path file, String name) {
        return heads.computeIfAbsent(file, f -> kept.draft(f)
                        .map(draft -> draft.names(kind))
                        .orElseGet(() -> kept.heads(f, () -> disk.read(f, disk.shown(f), new ArrayList<>())
                                .map(source -> FileHeads.names(kind, source))
                                .orElse(Set.of()))))
                .contains(name);
    }

    /** {@return all equipment: the given, then what the library has besides} */
    List<Item> allEquipment(Source from) {
        Map<String, Item> all = new LinkedHashMap<>();
        for (Draft draft : given) {
            draft.items().stream()
                    .filter(i -> i.kind() == FileKind.EQUIPMENT)
                    .forEach(i -> all.putIfAbsent(i.name().value(), i));
        }
        for (Path file : files(FileKind.EQUIPMENT, from)) {
            open(FileKind.EQUIPMENT, file).ifPresent(d -> d.items()
                    .forEach(i -> all.putIfAbsent(i.name().value(), i)));
        }
        return List.copyOf(all.values());
    }

    /** {@return a key for what a file can reach: its library folder, or a word for none} */
    Object reach(Source from) {
        return root(from).<Object>map(p -> p).orElse("none");
    }

    /** {@return the problem that nothing has that name, saying where it was looked for} */
    Problem missing(FileKind kind, Lexeme name, Source from) {
        List<String> known = new ArrayList<>();
        given.forEach(d -> d.items().stream()
                .filter(i -> i.kind() == kind)
                .forEach(i -> known.add(i.name().value())));
        files(kind, from).forEach(f -> open(kind, f)
                .ifPresent(d -> d.items().forEach(i -> known.add(i.name().value()))));
        String where = root(from).map(r -> " and in " + shown(kind, r)).orElse("");
        Problem problem = Code.UNKNOWN_REFERENCE.at(
                name.span(),
                "there is no " + kind.word() + " " + Cursor.clip(name.value()) + "; looked in the given files" + where);
        return Suggestions.didYouMean(name.value(), known)
                .map(problem::help)
                .orElse(known.isEmpty() ? problem : problem.help("there is " + Suggestions.list(known, "and")));
    }

    /** {@return the files with examples beside some files, then those in the library folders near them, each by their names} */
    Set<Path> examplesNear(Set<Path> files) {
        Set<Path> all = new LinkedHashSet<>();
        for (Path file : files) {
            disk.list(file.toAbsolutePath().getParent(), 0, new ArrayList<>()).stream()
                    .filter(f -> FileKind.of(f.getFileName().toString())
                            .filter(k -> k == FileKind.EXAMPLES)
                            .isPresent())
                    .forEach(all::add);
            Source place = new Source(file.toString(), "");
            paths.put(place.name(), file);
            all.addAll(files(FileKind.EXAMPLES, place));
        }
        all.removeAll(files);
        return all;
    }

    private String shown(FileKind kind, Path root) {
        String shared = disk.shown(root.resolve("shared"));
        return kind == FileKind.PROCEDURE ? shared + " and " + disk.shown(root.resolve("procedures")) : shared;
    }

    private Optional<Draft> open(FileKind kind, Path file) {
        Optional<Draft> before = library.get(file);
        if (before == null) {
            String name = disk.shown(file);
            // A given file is on the shelf already.
            before = paths.containsValue(file)
                    ? Optional.empty()
                    : kept.draft(file).or(() -> disk.read(file, name, problems).map(source -> new Draft(kind, source)));
            before.ifPresent(draft -> kept.keep(file, draft));
            library.put(file, before);
            before.ifPresent(d -> paths.put(name, file));
        }
        return before;
    }

    /** Opens the file of an item that was kept, because something needs it that was kept, too. */
    void reopen(Item item) {
        kept.file(item).filter(file -> !library.containsKey(file) && !paths.containsValue(file)).ifPresent(file -> {
            Draft draft = kept.draft(file).orElseThrow();
            library.put(file, Optional.of(draft));
            paths.put(draft.report().source().name(), file);
        });
    }

    /** {@return the nearest folder above a file that has a library} */
    private Optional<Path> root(Source from) {
        Path path = paths.get(from.name());
        return path == null || path.getParent() == null ? Optional.empty() : roots.computeIfAbsent(path.getParent(), Shelf::rootAbove);
    }

    private static Optional<Path> rootAbove(Path folder) {
        for (Path at = folder; at != null; at = at.getParent()) {
            if (Files.isDirectory(at.resolve("shared"))) {
                return Optional.of(at);
            }
        }
        return Optional.empty();
    }

    private List<Path> files(FileKind kind, Source from) {
        return root(from).map(root -> ofKind.computeIfAbsent(List.of(kind, root), key -> files(kind, root))).orElse(List.of());
    }

    private List<Path> files(FileKind kind, Path root) {
        List<Path> files = new ArrayList<>(folder(root.resolve("shared")));
        if (kind == FileKind.PROCEDURE) {
            files.addAll(folder(root.resolve("procedures")));
        }
        files.removeIf(f ->
                FileKind.of(f.getFileName().toString()).filter(k -> k == kind).isEmpty());
        return files;
    }

    private List<Path> folder(Path folder) {
        return folders.computeIfAbsent(folder, f -> Files.isDirectory(f) ? disk.list(f, problems) : List.of());
    }
}
