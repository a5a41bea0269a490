package org.keeplit.fuzz;

import com.google.common.collect.ImmutableMap;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Consumer;
import org.keeplit.Keeplit;
import org.keeplit.gridfile.GridImport;
import org.keeplit.gridfile.Imported;
import org.keeplit.language.Formatter;
import org.keeplit.language.Library;
import org.keeplit.language.Reader;
import org.keeplit.network.Equipment;
import org.keeplit.text.Problem;
import org.keeplit.text.ProblemPrinter;
import org.keeplit.text.Problems;
import org.keeplit.text.Source;

/**
 * What is fuzzed: whatever bytes come, reading ends with problems or without, each problem can be printed, and no exception escapes. The
 * seeds, and what fuzzing found, are in {@code src/fuzz/seeds}, a folder for each target.
 */
public final class Targets {
    /** The targets by the names of their folders. */
    public static final ImmutableMap<String, Consumer<byte[]>> ALL = ImmutableMap.of(
            "procedure", b -> text("fuzzed.procedure", b),
            "network", b -> text("fuzzed.network", b),
            "rules", b -> text("fuzzed.rules", b),
            "equipment", b -> text("fuzzed.equipment", b),
            "examples", b -> text("fuzzed.examples", b),
            "grid", Targets::grid,
            "log", Targets::log);

    private static final List<Source> AROUND = around();
    private static final Equipment EQUIPMENT = Keeplit.read(List.of(Path.of("shared/equipment"))).equipment().get("overhead");
    private static final Library SMALL = Keeplit.read(List.of(Path.of("procedures/dead-lateral.procedure")));

    private Targets() {}

    /** Demo files that a fuzzed text may refer to. */
    private static List<Source> around() {
        return new Reader().texts(List.of(Path.of("shared/equipment"), Path.of("shared/networks"), Path.of("shared/rules/no-interruption.rules")), new Problems());
    }

    private static void text(String name, byte[] bytes) {
        String content = new String(bytes, StandardCharsets.UTF_8);
        Source source = new Source(name, content);
        List<Source> all = new java.util.ArrayList<>(AROUND);
        all.add(source);
        Library library = new Reader().readSources(all);
        ProblemPrinter.print(library.problems());
        Formatter.Formatted once = Formatter.format(source);
        ProblemPrinter.print(once.problems());
        once.text().ifPresent(text -> {
            Formatter.Formatted twice = Formatter.format(new Source(name, text));
            if (twice.text().isPresent() && !twice.text().get().equals(text)) {
                throw new AssertionError("formatting twice is not formatting once");
            }
            List<Problem> before = errors(library, name);
            List<Source> formatted = new java.util.ArrayList<>(AROUND);
            formatted.add(new Source(name, text));
            if (before.isEmpty() && !errors(new Reader().readSources(formatted), name).isEmpty()) {
                throw new AssertionError("formatting made mistakes");
            }
        });
    }

    private static List<Problem> errors(Library library, String name) {
        return library.problems().stream().filter(p -> p.severity() == Problem.Severity.ERROR && p.span().source().name().equals(name)).toList();
    }

    private static void grid(byte[] bytes) {
        try {
            Path file = Files.createTempFile("fuzzed", ".xml");
            try {
                Files.write(file, bytes);
                Imported imported = GridImport.read(List.of(file), new GridImport.Options("fuzzed", EQUIPMENT, ImmutableMap.of(), 60));
                ProblemPrinter.print(imported.problems());
                imported.listing().rows().forEach(row -> {
                    if (row.objects() != row.elements() + row.parts() + row.left()) {
                        throw new AssertionError("an object is neither carried nor listed: " + row);
                    }
                });
                if (!imported.text().isEmpty()) {
                    new Reader().readSources(List.of(AROUND.get(0), new Source("fuzzed.network", imported.text())));
                }
            } finally {
                Files.deleteIfExists(file);
            }
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    private static void log(byte[] bytes) {
        Problems problems = new Problems();
        Keeplit.checkLog(SMALL, new String(bytes, StandardCharsets.UTF_8), problems);
        ProblemPrinter.print(problems.sorted());
    }
}
