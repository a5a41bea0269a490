package org.keeplit.plain;

import static org.junit.jupiter.api.Assertions.assertFalse;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.TestFactory;
import org.keeplit.Keeplit;
import org.keeplit.language.Library;
import org.keeplit.language.Reader;
import org.keeplit.procedure.Procedure;
import org.keeplit.text.Source;

/**
 * Both evaluators find the same in every procedure that ships and in every published sequence. Rulebooks of figures in every state are
 * left out here: the plain evaluator's full matrix takes half a second a state of the territory. On small networks the made cases keep
 * them too. Each procedure is taken where it is proved first, with the first {@value #VARIANTS} variants of it: the others walk the same
 * states again. What {@code check} says of all of them is held by the test of the command.
 */
class ShippedProceduresTest {
    private static final Pattern FIGURES = Pattern.compile(", (ratings|protection)|(ratings|protection), ");

    private static final Pattern VARIANT = Pattern.compile("(?<=\\d)-[a-z]$");
    private static final int VARIANTS = 1;

    /**
     * The first two go on with a tap that nobody knows, in so many states that the plain evaluator has no room for them; the others are
     * two jobs at once, of which the good one is in the long run.
     */
    private static final Set<String> TOO_LONG = Set.of("RG-1-a", "RG-2-a", "TJ-1", "TJ-1-a", "TJ-1-b", "TJ-1-c", "TJ-1-d");

    /** A quarter of a minute by itself: in the long run. */
    private static final Set<String> LONG = Set.of("RG-2-b");

    /** Those of fewer than a hundred states, and of a transfer, which is about figures, some variants. */
    private static final Set<String> WITH_FIGURES = Set.of(
            "DW-3", "DW-3-a", "FU-2", "FU-2-a", "LW-1", "PT-1", "PT-2", "SB-2", "TR-1", "TR-1-a", "TR-1-c", "TR-2", "TR-3", "TR-4",
            "TJ-1");

    @TestFactory
    Stream<DynamicTest> bothFindTheSame() {
        return comparing(name -> !LONG.contains(name));
    }

    @Tag("long")
    @TestFactory
    Stream<DynamicTest> bothFindTheSameInTheLongRun() {
        return comparing(LONG::contains);
    }

    /** {@return the shipped files, without what asks for figures in every state} */
    static Library library() {
        List<Source> shipped = new ArrayList<>();
        for (String folder : List.of("shared/equipment", "shared/networks", "shared/rules", "procedures")) {
            shipped.addAll(files(folder));
        }
        Library library = new Reader().readSources(shipped);
        assertFalse(library.hasErrors(), () -> library.problems().toString());
        return library;
    }

    private static Stream<DynamicTest> comparing(Predicate<String> which) {
        Library library = library();
        Library published = Keeplit.read(List.of(Path.of("src/test/resources/outside")));
        Map<String, Integer> taken = new HashMap<>();
        return Stream.of(library, published).flatMap(l -> l.givenProcedures().stream()
                .filter(p -> !TOO_LONG.contains(p.name()) && which.test(p.name()))
                .filter(p -> !VARIANT.matcher(p.name()).find()
                        || taken.merge(VARIANT.matcher(p.name()).replaceAll(""), 1, Integer::sum) <= VARIANTS)
                .flatMap(p -> p.proofs().stream()
                        .limit(1)
                        .map(proof -> DynamicTest.dynamicTest(
                                p.name(),
                                () -> Agreement.check(p, l.networks().get(proof.network()), proof, p.name())))));
    }

    /** These as they are, with the rulebooks of figures in every state. */
    @Tag("long")
    @TestFactory
    Stream<DynamicTest> bothFindTheSameWithFiguresToo() {
        Library library = Keeplit.read(List.of(Path.of("procedures")));
        assertFalse(library.hasErrors(), () -> library.problems().toString());
        return library.givenProcedures().stream()
                .filter(p -> WITH_FIGURES.contains(p.name()))
                .map(p -> {
                    Procedure.Proof proof = p.proofs().get(0);
                    return DynamicTest.dynamicTest(
                            p.name(),
                            () -> Agreement.check(p, library.networks().get(proof.network()), proof, p.name()));
                });
    }

    /** What a variant must fail on is not asked here; only that both find the same. */
    private static String withoutFigures(String line) {
        String words = line.strip();
        return words.startsWith("must fail") ? "" : words.startsWith("keeps") ? FIGURES.matcher(line).replaceAll("") : line;
    }

    private static List<Source> files(String folder) {
        try (Stream<Path> files = Files.list(Path.of(folder))) {
            List<Source> all = new ArrayList<>();
            for (Path file : files.sorted().toList()) {
                String text = Files.readString(file);
                boolean procedure = folder.equals("procedures");
                all.add(new Source(
                        file.getFileName().toString(),
                        procedure
                                ? text.lines()
                                        .map(ShippedProceduresTest::withoutFigures)
                                        .collect(Collectors.joining("\n", "", "\n"))
                                : text));
            }
            return all;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
