package org.keeplit.fuzz;

import com.google.common.collect.ImmutableMap;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.Collectors;
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

    /** Kinds that the seeds use; all of them at each input would make fuzzing slow. */
    private static final Set<String> KINDS = Set.of("source", "line", "cable", "load", "generator", "transformer", "breaker", "recloser", "switch", "disconnect", "cutout",
            "sectionalizer", "regulator", "capacitor", "bypass-jumper", "ground-set");
    private static final List<Source> AROUND = around();

    private Targets() {}

    /** What a fuzzed text may refer to: an equipment list, a network, a rulebook. */
    private static List<Source> around() {
        List<Source> demo = new Reader().texts(List.of(Path.of("shared/equipment"), Path.of("shared/rules/no-interruption.rules")), new Problems());
        String kinds = Arrays.stream(demo.get(0).content().split("(?m)^(?=kind |conductor |spacing )"))
                .filter(part -> !part.startsWith("kind ") || KINDS.contains(part.split(" ")[1]))
                .collect(Collectors.joining());
        try {
            Source network = new Source("small.network", Files.readString(Path.of("src/fuzz/seeds/network/new")));
            return List.of(new Source("overhead.equipment", kinds), network, demo.get(1));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** What only one target needs. */
    private static final class Demo {
        private static final Library SMALL = Keeplit.read(List.of(Path.of("procedures/dead-lateral.procedure")));
    }

    /** The same. */
    private static final class Kinds {
        private static final Equipment EQUIPMENT = new Reader().readSources(AROUND.subList(0, 1)).equipment().get("overhead");
    }

    private static void text(String name, byte[] bytes) {
        String content = new String(bytes, StandardCharsets.UTF_8);
        Source source = new Source(name, content);
        List<Source> all = new ArrayList<>(AROUND);
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
            List<Source> formatted = new ArrayList<>(AROUND);
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
                Imported imported = GridImport.read(List.of(file), new GridImport.Options("fuzzed", Kinds.EQUIPMENT, ImmutableMap.of(), 60));
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
            throw new UncheckedIOException(e);
        }
    }

    private static void log(byte[] bytes) {
        Problems problems = new Problems();
        org.keeplit.paper.Papers.checkLog(Demo.SMALL, new String(bytes, StandardCharsets.UTF_8), problems);
        ProblemPrinter.print(problems.sorted());
    }
}
