package org.keeplit.language;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import com.google.common.collect.ImmutableSet;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.keeplit.network.Equipment;
import org.keeplit.network.Network;
import org.keeplit.procedure.Examples;
import org.keeplit.procedure.Procedure;
import org.keeplit.procedure.Unjudged;
import org.keeplit.rule.Rulebook;
import org.keeplit.text.Problem;
import org.keeplit.text.Problems;
import org.keeplit.text.Source;
import org.keeplit.text.Span;

/**
 * Reads networks, equipment, rulebooks and procedures from text files. It never fails: whatever is wrong is told in
 * the {@link Library#problems() problems} of the result.
 *
 * <p>A name that a file refers to is looked for first among the given files, then in the folder {@code shared} of the
 * nearest folder above that has one, and for procedures also in the folder {@code procedures} beside it.
 */
public final class Reader {
    /** Makes a reader; it keeps nothing between readings. */
    public Reader() {}

    /**
     * Reads files, and the files in folders.
     *
     * @param filesOrFolders what to read; folders are read with the folders in them, in the order of the names
     * @return what they say
     */
    public Library read(List<Path> filesOrFolders) {
        return read(filesOrFolders, Map.of());
    }

    /**
     * Like {@link #read(List)}, with some texts that count instead of what is on the disk.
     *
     * @param filesOrFolders what to read
     * @param open the texts by absolute path
     * @return what they say
     */
    public Library read(List<Path> filesOrFolders, Map<Path, String> open) {
        boolean relative = filesOrFolders.stream().noneMatch(Path::isAbsolute);
        Disk disk = new Disk(relative, open);
        List<Problem> problems = new ArrayList<>();
        Set<Path> files = new LinkedHashSet<>();
        filesOrFolders.forEach(path -> collect(path, disk, files, problems));
        Shelf shelf = new Shelf(disk);
        for (Path file : files) {
            String name = disk.shown(file);
            FileKind.of(file.getFileName().toString()).ifPresent(kind -> disk.read(file, name, problems)
                    .ifPresent(source -> shelf.add(new Draft(kind, source), file)));
        }
        return library(shelf, problems);
    }

    /** {@return one file with what it refers to} @param open texts that count instead of files @param kept what was read before @param lexed lines that were */
    Library read(Path file, Map<Path, String> open, Rereading.Kept kept, Lexed lexed) {
        Disk disk = new Disk(false, open);
        List<Problem> problems = new ArrayList<>();
        Shelf shelf = new Shelf(disk, kept);
        String name = disk.shown(file);
        FileKind.of(name).ifPresentOrElse(
                kind -> disk.read(file, name, problems).ifPresent(source -> shelf.add(new Draft(kind, source, lexed), file)),
                () -> problems.add(FileKind.unknown(Span.ofFile(new Source(name, "")))));
        return library(shelf, problems);
    }

    /**
     * Reads the texts of files, and nothing of what they say.
     *
     * @param filesOrFolders the files; folders are read whole
     * @param problems collects what cannot be read
     * @return the texts, in the order of the files
     */
    public ImmutableList<Source> texts(List<Path> filesOrFolders, Problems problems) {
        Disk disk = new Disk(filesOrFolders.stream().noneMatch(Path::isAbsolute));
        List<Problem> found = new ArrayList<>();
        Set<Path> files = new LinkedHashSet<>();
        filesOrFolders.forEach(path -> collect(path, disk, files, found));
        ImmutableList.Builder<Source> texts = ImmutableList.builder();
        files.forEach(file -> disk.read(file, disk.shown(file), found).ifPresent(texts::add));
        found.forEach(problems::add);
        return texts.build();
    }

    /**
     * Like {@link #read}, with the examples, as far as the library folders have any, of all rulebooks that are given.
     *
     * @param filesOrFolders what to read
     * @return what they say; such examples count as given
     */
    public Library readWithExamples(List<Path> filesOrFolders) {
        Library first = read(filesOrFolders);
        Set<Path> all = new LinkedHashSet<>(filesOrFolders);
        Disk disk = new Disk(filesOrFolders.stream().noneMatch(Path::isAbsolute));
        for (Path file : new Shelf(disk).examplesNear(given(filesOrFolders, disk))) {
            disk.read(file, disk.shown(file), new ArrayList<>())
                    .map(source -> new Draft(FileKind.EXAMPLES, source))
                    .filter(draft -> draft.items().stream().anyMatch(item -> speaksOf(item, first)))
                    .ifPresent(draft -> all.add(disk.path(file)));
        }
        return all.size() == filesOrFolders.size() ? first : read(List.copyOf(all));
    }

    private static Set<Path> given(List<Path> filesOrFolders, Disk disk) {
        Set<Path> files = new LinkedHashSet<>();
        filesOrFolders.forEach(path -> collect(path, disk, files, new ArrayList<>()));
        return files;
    }

    private static boolean speaksOf(Item item, Library library) {
        return item.head().line().lexemes().stream().skip(2).anyMatch(word -> library.givenRulebooks().stream()
                .anyMatch(book -> book.name().equals(word.value())));
    }

    private static void collect(Path path, Disk disk, Set<Path> files, List<Problem> problems) {
        Path absolute = path.toAbsolutePath().normalize();
        Span whole = Span.ofFile(new Source(disk.shown(path), ""));
        if (Disk.isFolder(absolute)) {
            List<Path> inside = disk.list(absolute, problems);
            files.addAll(inside);
            if (inside.isEmpty()) {
                problems.add(Code.EMPTY_FOLDER
                        .at(whole, "this folder has no file to read")
                        .help(FileKind.ENDINGS));
            }
        } else if (absolute.getFileName() == null
                || FileKind.of(absolute.getFileName().toString()).isEmpty()) {
            problems.add(FileKind.unknown(whole));
        } else {
            files.add(absolute);
        }
    }

    /**
     * Reads sources that need not lie on any disk; names are looked for among them only.
     *
     * @param sources the texts; each name must end like the name of a file of its kind
     * @return what they say
     */
    public Library readSources(List<Source> sources) {
        List<Problem> problems = new ArrayList<>();
        Shelf shelf = new Shelf(new Disk(false));
        for (Source source : sources) {
            FileKind.of(source.name())
                    .ifPresentOrElse(
                            kind -> shelf.add(new Draft(kind, source), null),
                            () -> problems.add(FileKind.unknown(Span.ofFile(source))));
        }
        return library(shelf, problems);
    }

    private static Library library(Shelf shelf, List<Problem> early) {
        Session session = new Session(shelf);
        for (Draft draft : shelf.given()) {
            draft.items().forEach(session::resolve);
        }
        Problems problems = new Problems();
        early.forEach(problems::add);
        List<Draft> drafts = new ArrayList<>(shelf.given());
        drafts.addAll(shelf.opened());
        session.resolved().forEach(Unread::tell);
        Map<String, Item> first = new LinkedHashMap<>();
        Things things = new Things();
        for (Draft draft : drafts) {
            for (Item item : draft.items()) {
                Item before = first.putIfAbsent(item.kind() + " " + item.name().value(), item);
                if (before == null) {
                    session.known(item).ifPresent(things::add);
                } else {
                    item.report()
                            .add(Code.DUPLICATE
                                    .at(
                                            item.name().span(),
                                            "there is already "
                                                    + Suggestions.a(item.kind().word()) + " "
                                                    + Cursor.clip(item.name().value()))
                                    .related(before.name().span(), "the first one"));
                    // Told once, but it is a mistake of both files.
                    before.report().add(Misread.told());
                }
            }
        }
        drafts.forEach(d -> d.report().problems().forEach(problems::add));
        shelf.problems().forEach(problems::add);
        return things.library(shelf, drafts, problems, Gate.unjudged(shelf, session));
    }

    /** Sorts the results by what they are. */
    private static final class Things {
        private final Map<String, Equipment> equipment = new LinkedHashMap<>();
        private final Map<String, Network> networks = new LinkedHashMap<>();
        private final Map<String, Rulebook> rulebooks = new LinkedHashMap<>();
        private final Map<String, Procedure> procedures = new LinkedHashMap<>();
        private final Map<String, Examples> examples = new LinkedHashMap<>();

        private void add(Object thing) {
            if (thing instanceof Equipment e) {
                equipment.put(e.name(), e);
            } else if (thing instanceof Network n) {
                networks.put(n.name(), n);
            } else if (thing instanceof Rulebook r) {
                rulebooks.put(r.name(), r);
            } else if (thing instanceof Procedure p) {
                procedures.put(p.name(), p);
            } else if (thing instanceof Examples e) {
                examples.put(e.name(), e);
            }
        }

        private Library library(Shelf shelf, List<Draft> drafts, Problems problems, ImmutableList<Unjudged> mistaken) {
            ImmutableMap.Builder<String, Source> sources = ImmutableMap.builder();
            drafts.forEach(
                    d -> sources.put(d.report().source().name(), d.report().source()));
            return new Library(
                    ImmutableMap.copyOf(equipment),
                    ImmutableMap.copyOf(networks),
                    ImmutableMap.copyOf(rulebooks),
                    ImmutableMap.copyOf(procedures),
                    ImmutableMap.copyOf(examples),
                    mistaken,
                    shelf.given().stream().map(d -> d.report().source().name()).collect(ImmutableSet.toImmutableSet()),
                    sources.buildKeepingLast(),
                    ImmutableList.copyOf(problems.sorted()));
        }
    }
}
