package org.keeplit.language;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileVisitOption;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.keeplit.text.Problem;
import org.keeplit.text.Source;
import org.keeplit.text.Span;

/** Reads files and folders; whatever goes wrong becomes a problem. */
final class Disk {
    /** No honest file is larger: the largest are networks that were imported, some 5 MiB for 10,000 sections. */
    static final int LARGEST = 16 * 1024 * 1024;

    private static final int DEEPEST = 20;
    private static final int MOST_FILES = 5000;

    private final Path here = Path.of("").toAbsolutePath();
    private final boolean relative;
    private final Map<Path, String> open;

    /** A reader. @param relative whether names are shown relative to the working folder */
    Disk(boolean relative) {
        this(relative, Map.of());
    }

    /** Like {@link #Disk(boolean)}. @param open texts that count instead of what files hold, by absolute path */
    Disk(boolean relative, Map<Path, String> open) {
        this.relative = relative;
        this.open = open;
    }

    /** {@return a path as it is shown: relative to the working folder, if the others are} */
    Path path(Path path) {
        Path absolute = path.toAbsolutePath().normalize();
        return relative && here.getRoot().equals(absolute.getRoot()) ? here.relativize(absolute) : absolute;
    }

    /** {@return a path as people see it} */
    String shown(Path path) {
        return path(path).toString().replace('\\', '/');
    }

    /** {@return the files of all kinds in a folder and the folders in it, sorted} */
    List<Path> list(Path folder, List<Problem> problems) {
        return list(folder, DEEPEST, problems);
    }

    /** {@return those in a folder and so many folders below it} @param depth how many */
    List<Path> list(Path folder, int depth, List<Problem> problems) {
        List<Path> files = new ArrayList<>();
        walk(folder, depth, depth == DEEPEST, files, problems);
        return files;
    }

    /** @param isWhole whether everything below the folder is wanted, so that a limit must be told */
    private void walk(Path folder, int depth, boolean isWhole, List<Path> files, List<Problem> problems) {
        List<Path> entries;
        try (var stream = Files.list(folder)) {
            entries = stream.sorted().toList();
        } catch (IOException | UncheckedIOException e) {
            problems.add(Code.UNREADABLE.at(file(folder), "the folder cannot be read"));
            return;
        }
        for (Path entry : entries) {
            String name = entry.getFileName().toString();
            boolean named = FileKind.of(name).isPresent();
            if (Files.isDirectory(entry, LinkOption.NOFOLLOW_LINKS)) {
                if (named) {
                    problems.add(Code.FOLDER_NAMED_AS_FILE.warn(
                            file(entry), "this is a folder, but it is named like a file"));
                }
                if (name.startsWith(".")) {
                    skipped(entry, "is hidden", problems);
                } else if (depth > 0) {
                    walk(entry, depth - 1, isWhole, files, problems);
                } else if (isWhole) {
                    problems.add(Code.UNREADABLE.at(file(entry), "folders are read " + DEEPEST + " deep; this one lies deeper"));
                }
            } else if (Files.isDirectory(entry)) {
                skipped(entry, "is a link", problems);
            } else if (named && files.size() < MOST_FILES) {
                files.add(entry);
            } else if (named) {
                problems.add(Code.UNREADABLE.at(
                        file(entry), "more than " + MOST_FILES + " files were found; this one and those after it are not read"));
                return;
            } else if (FileKind.isNearly(name)) {
                problems.add(Code.SKIPPED.warn(file(entry), "this file is not read: its name does not end exactly as a name must")
                        .help(FileKind.ENDINGS + ", in small letters, with nothing behind"));
            }
        }
    }

    /** Warns of a folder that is not looked into, if files that would be read lie in it. */
    private void skipped(Path folder, String why, List<Problem> problems) {
        try (var found = Files.find(
                folder, 3, (path, attributes) -> FileKind.of(path.getFileName().toString()).isPresent(), FileVisitOption.FOLLOW_LINKS)) {
            found.findFirst().ifPresent(file -> problems.add(Code.SKIPPED
                    .warn(file(folder), "this folder " + why + ", so what lies in it is not read, " + file.getFileName() + " among it")
                    .help("name the files themselves to have them read")));
        } catch (IOException | UncheckedIOException e) {
            problems.add(Code.SKIPPED.warn(file(folder), "this folder " + why + ", and is not read"));
        }
    }

    private Span file(Path path) {
        return Span.ofFile(new Source(shown(path), ""));
    }

    /** {@return the text of a file, unless it cannot be read as text} */
    Optional<Source> read(Path path, String name, List<Problem> problems) {
        Span whole = Span.ofFile(new Source(name, ""));
        if (open.containsKey(path)) {
            return Optional.of(new Source(name, open.get(path)));
        }
        try {
            if (!Files.isRegularFile(path)) {
                problems.add(
                        Files.exists(path)
                                ? Code.UNREADABLE.at(whole, "this is no regular file")
                                : Code.MISSING_FILE.at(whole, "there is no such file"));
                return Optional.empty();
            }
            if (Files.size(path) > LARGEST) {
                problems.add(Code.FILE_TOO_LARGE.at(
                        whole, "the file has " + Files.size(path) + " bytes; the largest that is read has " + LARGEST));
                return Optional.empty();
            }
            return decode(Files.readAllBytes(path), name, problems);
        } catch (NoSuchFileException e) {
            problems.add(Code.MISSING_FILE.at(whole, "there is no such file"));
        } catch (AccessDeniedException e) {
            problems.add(Code.UNREADABLE.at(whole, "the file may not be read"));
        } catch (IOException e) {
            problems.add(Code.UNREADABLE.at(whole, "the file cannot be read"));
        }
        return Optional.empty();
    }

    private static Optional<Source> decode(byte[] bytes, String name, List<Problem> problems) {
        var decoder = StandardCharsets.UTF_8
                .newDecoder()
                .onMalformedInput(CodingErrorAction.REPORT)
                .onUnmappableCharacter(CodingErrorAction.REPORT);
        ByteBuffer in = ByteBuffer.wrap(bytes);
        try {
            String text = decoder.decode(in).toString();
            return Optional.of(new Source(name, text.startsWith("\ufeff") ? text.substring(1) : text));
        } catch (CharacterCodingException e) {
            String good = new String(bytes, 0, in.position(), StandardCharsets.UTF_8);
            int line = (int) good.chars().filter(c -> c == '\n').count() + 1;
            int column = good.length() - good.lastIndexOf('\n');
            String shown = new String(bytes, StandardCharsets.UTF_8);
            problems.add(Code.BAD_UTF_8
                    .at(
                            new Span(new Source(name, shown), line, column, 1),
                            "the bytes here are not UTF-8, so the file is not read")
                    .help("save the file as UTF-8"));
            return Optional.empty();
        }
    }

    /** {@return whether something is a folder} */
    static boolean isFolder(Path path) {
        return Files.isDirectory(path);
    }
}
