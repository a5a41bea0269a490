package org.keeplit.command;

import com.google.common.base.Splitter;
import com.google.common.hash.Hashing;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.keeplit.language.Library;
import org.keeplit.outcome.SweepResult;

/**
 * A file with the results of a sweep, a line each, written as they come, so that a sweep that was stopped goes on where it stood. Its
 * first line says of which input; with another input it is not gone on with.
 */
final class SweepResults {
    private static final String HEAD = "# keeplit sweep of ";

    private final Path file;
    private final Map<String, SweepResult> known = new LinkedHashMap<>();

    /** The file belongs to another input, or is something else. */
    static final class Foreign extends Exception {
        Foreign(String message) {
            super(message);
        }
    }

    private SweepResults(Path file) {
        this.file = file;
    }

    /** {@return the results of a file, begun anew if there is none} @param library the input */
    static SweepResults open(Path file, Library library, String limits) throws IOException, Foreign {
        SweepResults results = new SweepResults(file);
        String head = HEAD + hash(library, limits);
        if (!Files.exists(file)) {
            begin(file, head);
            return results;
        }
        if (!Files.isRegularFile(file)) {
            throw new Foreign(file + " is no regular file, so results cannot be kept in it");
        }
        List<String> lines = Files.readAllLines(file);
        if (lines.isEmpty() || !lines.get(0).startsWith(HEAD)) {
            throw new Foreign(file + " is not a file of a sweep; nothing was written to it");
        } else if (!lines.get(0).equals(head)) {
            throw new Foreign(file + " is of a sweep over other files or limits; name another, or take it away");
        }
        for (String line : lines.subList(1, lines.size())) {
            List<String> parts = Splitter.on('\t').splitToList(line);
            // A last line that was cut off when the sweep was stopped is done again.
            if (parts.size() == 5 && parts.get(4).equals(".")) {
                SweepResult result = new SweepResult(
                        parts.get(1), parts.get(2), SweepResult.Answer.valueOf(parts.get(0)), parts.get(3));
                results.known.put(result.procedure() + " on " + result.place(), result);
            }
        }
        return results;
    }

    /** Writes the first line; of a file that could not even take that, nothing is left. */
    private static void begin(Path file, String head) throws IOException {
        try {
            Files.writeString(file, head + "\n", StandardOpenOption.CREATE_NEW);
        } catch (FileAlreadyExistsException there) {
            throw there;
        } catch (IOException e) {
            Files.deleteIfExists(file);
            throw e;
        }
    }

    Map<String, SweepResult> known() {
        return known;
    }

    /** Writes one more line. */
    void add(SweepResult result) {
        String line = String.join(
                "\t", result.answer().name(), result.procedure(), result.place(), result.detail().replace('\t', ' '), ".");
        try {
            Files.writeString(file, line + "\n", StandardOpenOption.APPEND);
        } catch (IOException e) {
            throw Refused.unwritten(file, e);
        }
    }

    private static String hash(Library library, String limits) {
        StringBuilder all = new StringBuilder(limits);
        library.sources().forEach((name, source) -> all.append('\0').append(name).append('\0').append(source.content()));
        return Hashing.sha256().hashString(all, StandardCharsets.UTF_8).toString();
    }
}
