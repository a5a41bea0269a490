package org.keeplit.language;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.lang.reflect.RecordComponent;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.stream.Stream;
import net.jqwik.api.AfterFailureMode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.ShrinkingMode;
import net.jqwik.api.Tag;
import net.jqwik.api.lifecycle.AfterContainer;
import org.keeplit.network.Network;
import org.keeplit.procedure.Procedure;
import org.keeplit.rule.Rulebook;
import org.keeplit.text.Problem;
import org.keeplit.text.Source;
import org.keeplit.text.Span;

/**
 * One character, or one line, put at a random place into a shipped file: either it is in the tree that is judged, or nothing that reads the
 * file is judged.
 */
class EveryCharacterTest {
    private static final Path BASE = Path.of(System.getProperty("keeplit.basedir", "")).toAbsolutePath();
    private static final List<Path> FILES = files();
    private static final String LETTERS = "aesx0159 ,.:;@#$%&*()[]{}<>/\\|!?'\"-_+=~^`\t\u0000\u0007\u00a0\u200b\u200e\u202e\ufeff\u2019\u2013Az\u00e9\u0430";
    private static int judged;
    private static int refused;

    private final Map<Path, Rereading> readings = new HashMap<>();

    private static List<Path> files() {
        List<Path> all = new ArrayList<>();
        for (String folder : List.of("procedures", "shared")) {
            try (Stream<Path> found = Files.walk(BASE.resolve(folder))) {
                found.filter(f -> FileKind.of(f.getFileName().toString()).isPresent()).sorted().forEach(all::add);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
        return all;
    }

    @Property(tries = 700, seed = "16001", shrinking = ShrinkingMode.OFF, afterFailure = AfterFailureMode.RANDOM_SEED)
    void aCharacter(@ForAll long seed) {
        character(new Random(seed));
    }

    @Property(tries = 300, seed = "16002", shrinking = ShrinkingMode.OFF, afterFailure = AfterFailureMode.RANDOM_SEED)
    void aLine(@ForAll long seed) {
        line(new Random(seed));
    }

    @Tag("long")
    @Property(tries = 6000, shrinking = ShrinkingMode.OFF, afterFailure = AfterFailureMode.RANDOM_SEED)
    void manyCharacters(@ForAll long seed) {
        character(new Random(seed));
    }

    @Tag("long")
    @Property(tries = 3000, shrinking = ShrinkingMode.OFF, afterFailure = AfterFailureMode.RANDOM_SEED)
    void manyLines(@ForAll long seed) {
        line(new Random(seed));
    }

    /** Both ends come up, so that the property says something. */
    @AfterContainer
    static void bothCameUp() {
        assertTrue(judged > 100 && refused > 100, judged + " judged, " + refused + " refused");
    }

    private void character(Random random) {
        Path file = FILES.get(random.nextInt(FILES.size()));
        String text = text(file);
        int at = random.nextInt(text.length() + 1);
        char letter = LETTERS.charAt(random.nextInt(LETTERS.length()));
        String changed = text.substring(0, at) + letter + text.substring(at);
        int line = (int) text.substring(0, at).chars().filter(c -> c == '\n').count() + 1;
        int column = at - text.lastIndexOf('\n', at - 1);
        String told = file.getFileName() + ":" + line + ":" + column + " with U+" + Integer.toHexString(letter) + ": "
                + changed.lines().skip(line - 1L).findFirst().orElse("");
        Library library = read(file, changed);
        if (isRefused(library, file, told)) {
            return;
        }
        String where = changed.lines().skip(line - 1L).findFirst().orElse("");
        boolean isComment = where.substring(0, Math.min(column, where.length())).replaceAll("\"[^\"]*\"", "").contains("#");
        if (isComment || letter == ' ' || letter == '\t') {
            return;
        }
        assertTrue(isInAWord(file, changed, line, column), "in no word, and nobody says so: " + told);
        if (!isSynonym(where, letter)) {
            assertTrue(!tree(library, file).equals(tree(read(file, text), file)), "not in the tree: " + told);
        }
    }

    private void line(Random random) {
        Path file = FILES.get(random.nextInt(FILES.size()));
        List<String> lines = new ArrayList<>(text(file).lines().toList());
        List<String> others = text(FILES.get(random.nextInt(FILES.size()))).lines().toList();
        String line = others.get(random.nextInt(others.size()));
        // Said twice, or said again in a variant of what its base says.
        boolean isThere = lines.stream().anyMatch(l -> l.strip().equals(line.strip()))
                || line.strip().matches("(hold|clearance|keeps|planned|proved|on) .*");
        int at = random.nextInt(lines.size() + 1);
        lines.add(at, line);
        String told = file.getFileName() + ":" + (at + 1) + ": " + line;
        Library library = read(file, String.join("\n", lines) + "\n");
        boolean isNothing = line.isBlank() || line.strip().startsWith("#");
        if (!isRefused(library, file, told) && !isNothing && !isThere) {
            assertTrue(!tree(library, file).equals(tree(read(file, text(file)), file)), "not in the tree: " + told);
        }
    }

    /** {@return whether the file has a mistake; if so nothing in it is judged} */
    private static boolean isRefused(Library library, Path file, String told) {
        boolean mistake = library.problems().stream().anyMatch(p -> p.severity() == Problem.Severity.ERROR);
        if (mistake) {
            assertEquals(List.of(), library.givenProcedures().stream().filter(p -> isIn(p.span(), file)).map(Procedure::name).toList(), told);
            assertEquals(List.of(), library.givenExamples().stream().filter(e -> isIn(e.span(), file)).map(e -> e.name()).toList(), told);
            refused++;
        } else {
            judged++;
        }
        return mistake;
    }

    private static boolean isIn(Span span, Path file) {
        return span.source().name().endsWith("/" + file.getFileName());
    }

    private static boolean isInAWord(Path file, String text, int line, int column) {
        Source source = new Source(file.getFileName().toString(), text);
        return new LineReader(source, new Report(source)).read().stream()
                .flatMap(l -> l.lexemes().stream())
                .anyMatch(l -> l.span().line() == line && l.span().column() <= column && column < l.span().column() + l.span().length())
                || text.lines().skip(line - 1L).findFirst().orElse("").matches(".*\\bthe\\b.*");
    }

    /** Plurals, "the", a comma before "and", and zeros before or behind a figure say the same. */
    private static boolean isSynonym(String line, char letter) {
        boolean beforeAnd = letter == ',' && line.matches(".*,\\s*and\\b.*");
        return beforeAnd || letter == '0' || letter == 's' || letter == 'e' || letter == 'a' && line.contains("a ");
    }

    private Library read(Path file, String text) {
        return readings.computeIfAbsent(file, f -> new Rereading()).read(file, Map.of(file, text));
    }

    private static String text(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** {@return everything that a file declares, without where it stands} */
    private static String tree(Library library, Path file) {
        Map<String, Object> all = new TreeMap<>();
        library.equipment().forEach((name, e) -> put(all, "equipment " + name, e, e.span(), file));
        library.networks().forEach((name, n) -> put(all, "network " + name, n, n.span(), file));
        library.rulebooks().forEach((name, r) -> put(all, "rulebook " + name, r, r.span(), file));
        library.procedures().forEach((name, p) -> put(all, "procedure " + name, p, p.span(), file));
        library.examples().forEach((name, e) -> put(all, "examples " + name, e, e.span(), file));
        StringBuilder text = new StringBuilder();
        all.forEach((name, thing) -> {
            text.append(name).append('\n');
            tell(thing, thing, text);
        });
        return text.toString();
    }

    private static void put(Map<String, Object> all, String name, Object thing, Span span, Path file) {
        if (isIn(span, file)) {
            all.put(name, thing);
        }
    }

    private static void tell(Object thing, Object whole, StringBuilder text) {
        if (thing instanceof Span || thing instanceof Source) {
            return;
        } else if (thing instanceof Network network) {
            text.append(network.title()).append(network.system());
            network.conductors();
            network.elements().forEach(e -> tell(e, whole, text));
            network.elements().forEach(a -> network.elements().forEach(b -> {
                if (a != b && network.clearsBefore(a.name(), b.name())) {
                    text.append(a.name()).append(" before ").append(b.name());
                }
            }));
        } else if (thing instanceof Rulebook book && thing != whole) {
            text.append(book.name()).append(book.parameters());
        } else if (thing instanceof org.keeplit.network.Kind kind && !(whole instanceof org.keeplit.network.Equipment)) {
            text.append(kind.name());
        } else if (thing instanceof Record) {
            text.append(thing.getClass().getSimpleName()).append('(');
            for (RecordComponent part : thing.getClass().getRecordComponents()) {
                try {
                    part.getAccessor().setAccessible(true);
                    tell(part.getAccessor().invoke(thing), whole, text);
                } catch (ReflectiveOperationException e) {
                    throw new AssertionError(e);
                }
                text.append(',');
            }
            text.append(')');
        } else if (thing instanceof Map<?, ?> map) {
            map.forEach((key, value) -> {
                text.append(key).append('=');
                tell(value, whole, text);
                text.append(';');
            });
        } else if (thing instanceof Iterable<?> some) {
            some.forEach(one -> {
                tell(one, whole, text);
                text.append(';');
            });
        } else if (thing instanceof java.util.Optional<?> maybe) {
            maybe.ifPresent(one -> tell(one, whole, text));
        } else {
            text.append(thing);
        }
    }
}
