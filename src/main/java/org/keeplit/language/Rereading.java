package org.keeplit.language;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import org.keeplit.rule.Rulebook;
import org.keeplit.text.Source;

/**
 * Reads one file over and over while somebody writes it. What does not depend on it (equipment, networks and rulebooks of the library)
 * is read once, and again only when a file has changed. What comes out is what {@link Reader} would give. It belongs to one thread.
 */
public final class Rereading {
    private Map<Path, String> texts = Map.of();
    private Kept kept = new Kept();
    private final Lexed lexed = new Lexed();

    /** Begins; nothing was read yet. */
    public Rereading() {}

    /**
     * Reads a file.
     *
     * @param file the file; it need not lie on the disk, if its text is among the texts
     * @param open the texts of files that are being written, which count instead of what is on the disk, by absolute path
     * @return what it says
     */
    public Library read(Path file, Map<Path, String> open) {
        Path path = file.toAbsolutePath().normalize();
        if (isOld(path, open)) {
            kept = new Kept();
        }
        texts = Map.copyOf(open);
        kept = FileKind.of(path.getFileName().toString()).map(kept::before).orElse(kept);
        lexed.turn();
        return new Reader().read(path, texts, kept, lexed);
    }

    /**
     * {@return the file that was read last, as far as its lines show it}
     *
     * @param source the file
     */
    public Sketch sketch(Source source) {
        return Sketch.of(source, lexed);
    }

    /** {@return whether any file but the one itself is another than when it was read} */
    private boolean isOld(Path path, Map<Path, String> open) {
        Map<Path, String> others = new HashMap<>(open);
        others.remove(path);
        Map<Path, String> before = new HashMap<>(texts);
        before.remove(path);
        return !others.equals(before) || kept.isOld(path);
    }

    /** What was read and counts as long as nothing is changed. */
    static final class Kept {
        private record Entry(Draft draft, FileTime time) {}

        private record Heads(Set<String> names, FileTime time) {}

        private final Map<Path, Heads> heads = new HashMap<>();
        private final Map<Path, Entry> drafts = new HashMap<>();
        private final Map<Item, Resolved<?>> done = new HashMap<>();
        private final Map<Item, Set<Item>> needs = new HashMap<>();
        private final Map<Object, Vocabulary> vocabularies = new HashMap<>();
        private final Map<List<Object>, Resolved<Rulebook>> tuned = new HashMap<>();
        private FileKind of = FileKind.EQUIPMENT;

        /** {@return the same, for the reading of a file of some kind} */
        Kept before(FileKind kind) {
            Kept same = kind == of ? this : new Kept();
            same.of = kind;
            return same;
        }

        boolean isOld(Path but) {
            return drafts.entrySet().stream().anyMatch(e -> !e.getKey().equals(but) && !time(e.getKey()).equals(e.getValue().time));
        }

        private static FileTime time(Path file) {
            try {
                return Files.getLastModifiedTime(file);
            } catch (IOException e) {
                return FileTime.fromMillis(0);
            }
        }

        /** {@return the names that a library file declares, read anew when it has changed} @param read tells them */
        Set<String> heads(Path file, Supplier<Set<String>> read) {
            FileTime now = time(file);
            Heads known = heads.get(file);
            if (known == null || !known.time.equals(now)) {
                known = new Heads(read.get(), now);
                heads.put(file, known);
            }
            return known.names;
        }

        Optional<Draft> draft(Path file) {
            return Optional.ofNullable(drafts.get(file)).map(Entry::draft);
        }

        /** Keeps a library file, unless what it says may depend on the file that is being written. */
        void keep(Path file, Draft draft) {
            if (isApart(draft.kind())) {
                drafts.put(file, new Entry(draft, time(file)));
            }
        }

        /** Rulebooks refer to equipment and each other, networks to equipment, and none of them to procedures. */
        private boolean isApart(FileKind kind) {
            return switch (of) {
                case PROCEDURE, EXAMPLES -> kind == FileKind.EQUIPMENT || kind == FileKind.NETWORK || kind == FileKind.RULES;
                case NETWORK, RULES -> kind == FileKind.EQUIPMENT;
                case EQUIPMENT -> false;
            };
        }

        /** {@return where vocabularies are kept: here, unless equipment is being written} @param own those of one reading */
        Map<Object, Vocabulary> vocabularies(Map<Object, Vocabulary> own) {
            return of == FileKind.EQUIPMENT ? own : vocabularies;
        }

        /** {@return where a rulebook with figures of its own is kept: here, if it is} @param own those of one reading */
        Map<List<Object>, Resolved<Rulebook>> tuned(Item item, Map<List<Object>, Resolved<Rulebook>> own) {
            return done.containsKey(item) ? tuned : own;
        }

        Optional<Resolved<?>> done(Item item) {
            return Optional.ofNullable(done.get(item));
        }

        void done(Item item, Resolved<?> result) {
            if (file(item).isPresent()) {
                done.put(item, result);
            }
        }

        /** {@return the kept file in which an item stands} */
        Optional<Path> file(Item item) {
            return drafts.entrySet().stream()
                    .filter(e -> e.getValue().draft.report() == item.report())
                    .map(Map.Entry::getKey)
                    .findFirst();
        }

        /** Keeps that one item needs another, if it is kept itself: those of the file that is being written are others each time. */
        void needs(Item item, Item other) {
            if (file(item).isPresent()) {
                needs.computeIfAbsent(item, i -> new LinkedHashSet<>()).add(other);
            }
        }

        /** {@return the items that one needs} */
        Set<Item> needs(Item item) {
            return needs.getOrDefault(item, Set.of());
        }
    }
}
