package org.keeplit.command;

import com.google.common.base.Splitter;
import com.google.common.hash.Hashing;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.keeplit.language.Library;
import org.keeplit.outcome.SweepResult;
import org.keeplit.page.WholeFile;
import org.keeplit.text.Versions;

/**
 * A file with the results of a sweep, a line each, written as they come, so that a sweep that was stopped goes on where it stood. Its
 * first line says of which input, limits and version of the program; with others it is not gone on with. Each line ends with a seal over
 * the first line and itself.
 */
final class SweepResults {
    private static final String HEAD = "# keeplit sweep of ";

    private static final int SEAL = 16;

    private final Path file;
    private final String head;
    private final List<Integer> rejected = new ArrayList<>();
    private final Map<String, SweepResult> known = new LinkedHashMap<>();

    /** The file belongs to another input, or is something else. */
    static final class Foreign extends Exception {
        Foreign(String message) {
            super(message);
        }
    }

    private SweepResults(Path file, String head) {
        this.file = file;
        this.head = head;
    }

    /** {@return the results of a file, begun anew if there is none} @param library the input */
    static SweepResults open(Path file, Library library, String limits) throws IOException, Foreign {
        String head = HEAD + hash(library, limits);
        SweepResults results = new SweepResults(file, head);
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
        List<String> good = new ArrayList<>(List.of(head));
        for (int i = 1; i < lines.size(); i++) {
            String line = lines.get(i);
            int end = line.lastIndexOf('\t');
            List<String> parts = Splitter.on('\t').splitToList(line);
            if (parts.size() == 5 && parts.get(4).equals(results.seal(line.substring(0, end)))) {
                SweepResult result = new SweepResult(
                        parts.get(1), parts.get(2), SweepResult.Answer.valueOf(parts.get(0)), parts.get(3));
                results.known.put(result.procedure() + " on " + result.place(), result);
                good.add(line);
            } else {
                results.rejected.add(i + 1);
            }
        }
        boolean isCut = !Files.readString(file).endsWith("\n");
        if (isCut || !results.rejected.isEmpty()) {
            // What is added would else stand behind half a line.
            WholeFile.replace(file, String.join("\n", good) + "\n");
        }
        return results;
    }

    /** {@return what a line ends with: who changes a line, or takes it from another sweep, does not know it} @param fields the line without it */
    private String seal(String fields) {
        return Hashing.sha256().hashString(head + "\n" + fields, StandardCharsets.UTF_8).toString().substring(0, SEAL);
    }

    /** {@return the numbers of the lines that do not bear their seal; what they say is proved anew} */
    List<Integer> rejected() {
        return rejected;
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
        String fields = Stream.of(result.answer().name(), result.procedure(), result.place(), result.detail())
                .map(field -> field.replaceAll("[\t\r\n]", " "))
                .collect(Collectors.joining("\t"));
        try {
            Files.writeString(file, fields + "\t" + seal(fields) + "\n", StandardOpenOption.APPEND);
        } catch (IOException e) {
            throw Refused.unwritten(file, e);
        }
    }

    private static String hash(Library library, String limits) {
        StringBuilder all = new StringBuilder(limits).append('\0').append(Versions.PROGRAM);
        library.sources().forEach((name, source) -> all.append('\0').append(name).append('\0').append(source.content()));
        return Hashing.sha256().hashString(all, StandardCharsets.UTF_8).toString();
    }
}
