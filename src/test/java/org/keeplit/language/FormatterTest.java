package org.keeplit.language;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;
import org.keeplit.text.Source;

/** The canonical form: idempotent, the same words and comments in the same lines, the same meaning. */
class FormatterTest {
    private static final List<Path> SHIPPED = shipped();

    private static List<Path> shipped() {
        List<Path> all = new ArrayList<>();
        for (String folder : List.of("procedures", "shared", "src/test/resources/good", "src/test/resources/outside")) {
            try (Stream<Path> files = Files.walk(Path.of(folder))) {
                files.filter(f -> Files.isRegularFile(f) && FileKind.of(f.getFileName().toString()).isPresent()).sorted().forEach(all::add);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
        return all;
    }

    private static Source source(Path file) {
        try {
            return new Source(file.toString(), Files.readString(file));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static String formatted(Source source) {
        Formatter.Formatted formatted = Formatter.format(source);
        return formatted.text().orElseThrow(() -> new AssertionError(formatted.problems().toString()));
    }

    private static String formatted(String name, String text) {
        return formatted(new Source(name, text));
    }

    /** The words and the comment of each line that has any. */
    private static List<WrittenLine> lines(String text) {
        return text.lines().map(WrittenLine::of).filter(line -> !line.isBlank()).toList();
    }

    private static void assertLawful(Source source) {
        String once = formatted(source);
        assertEquals(once, formatted(new Source(source.name(), once)), "twice is once");
        assertEquals(lines(source.content()), lines(once), "the same words and comments");
        assertFalse(once.lines().anyMatch(line -> line.endsWith(" ")), "no spaces at the end of a line");
        assertFalse(once.contains("\n\n\n") || once.startsWith("\n") || once.endsWith("\n\n"), "one empty line at a time");
    }

    @Test
    void shippedFilesKeepTheLaws() {
        assertTrue(SHIPPED.size() > 80);
        SHIPPED.forEach(file -> assertLawful(source(file)));
    }

    @Test
    void whatAFileMeansStaysTheSame() {
        List<Source> before = new ArrayList<>();
        List<Source> after = new ArrayList<>();
        for (Path file : SHIPPED) {
            if (!file.startsWith("src")) {
                before.add(source(file));
                after.add(new Source(file.toString(), formatted(source(file))));
            }
        }
        assertEquals(meaning(before), meaning(after));
    }

    /** Everything that was read, places and the spaces inside of sentences left out. */
    private static List<String> meaning(List<Source> sources) {
        Library library = new Reader().readSources(sources);
        assertEquals(List.of(), library.problems());
        return Stream.of(library.equipment(), library.networks(), library.rulebooks(), library.procedures(), library.examples())
                .flatMap(map -> map.values().stream())
                .map(thing -> thing.toString().replaceAll("[\\w./-]+:\\d+:\\d+", "").replaceAll(" +", " "))
                .toList();
    }

    @Property(tries = 400)
    void changedFilesKeepTheLawsOrAreRefused(@ForAll("changed") Source source) {
        Formatter.Formatted formatted = Formatter.format(source);
        assertEquals(formatted.text().isEmpty(), !formatted.problems().isEmpty());
        if (formatted.text().isPresent()) {
            assertLawful(source);
        }
    }

    /** Spaces that are spread anew give the same form, since none of them counts. */
    @Property(tries = 150)
    void spacesDoNotMatter(@ForAll("respaced") Source source) {
        Path file = Path.of(source.name());
        assertEquals(formatted(source(file)), formatted(source));
    }

    @Provide
    Arbitrary<Source> respaced() {
        return Arbitraries.of(SHIPPED).flatMap(file -> Arbitraries.longs().map(seed -> respaced(source(file), new Random(seed))));
    }

    private static Source respaced(Source source, Random random) {
        StringBuilder text = new StringBuilder();
        source.content().lines().forEach(line -> {
            WrittenLine written = WrittenLine.of(line);
            text.append(" \t".repeat(random.nextInt(4)));
            for (int i = 0; i < written.words().size(); i++) {
                text.append(i == 0 ? "" : " ".repeat(1 + random.nextInt(4))).append(written.words().get(i).text());
            }
            text.append(written.comment().isEmpty() ? "" : " ".repeat(random.nextInt(3)) + written.comment());
            text.append(" ".repeat(random.nextInt(3))).append('\n');
        });
        return new Source(source.name(), text.toString());
    }

    @Provide
    Arbitrary<Source> changed() {
        return Arbitraries.of(SHIPPED).flatMap(file -> Arbitraries.longs().map(seed -> changed(source(file), new Random(seed))));
    }

    /** A file as somebody leaves it in the middle of writing: lines gone, doubled, moved, joined and cut; letters in odd places. */
    private static Source changed(Source source, Random random) {
        List<String> lines = new ArrayList<>(source.content().lines().toList());
        String odd = "\"#\t ,:/%X9é-";
        for (int i = 0; i < 1 + random.nextInt(6); i++) {
            int at = random.nextInt(lines.size());
            String line = lines.get(at);
            int cut = random.nextInt(line.length() + 1);
            switch (random.nextInt(7)) {
                case 0 -> lines.add(at, line);
                case 1 -> lines.set(at, line.substring(0, cut));
                case 2 -> lines.set(at, line.substring(0, cut) + odd.charAt(random.nextInt(odd.length())) + line.substring(cut));
                case 3 -> lines.add(at, "  # left here");
                case 4 -> lines.add(random.nextInt(lines.size()), line);
                case 5 -> lines.set(at, line + "  # why");
                default -> lines.add(at, "and " + line.strip());
            }
        }
        return new Source(source.name(), String.join("\n", lines) + (random.nextBoolean() ? "\n" : ""));
    }

    @Test
    void lineEndsStay() {
        String text = "language 1\r\nequipment  e   \"E\"\r\n\r\n\r\nkind line is a line section";
        assertEquals("language 1\r\nequipment e  \"E\"\r\n\r\nkind line is a line section\r\n", formatted("e.equipment", text));
    }

    @Test
    void whatAProcedureLooksLike() {
        String text =
                """
                language 1
                procedure   P-1 revision 1
                title "A test"
                keeps a ,b
                for recloser R
                # who
                crew
                foreman "In charge",in charge
                op "Operator"   # alone
                stage "All"
                together
                # the first
                first:op opens R
                requires R is closed
                and L is supplied
                # the last
                end
                ends with
                R is open
                variant P-1-a "Twice" of P-1
                insert before step first
                again:op opens R
                end
                must fail on cannot
                """;
        assertEquals(
                """
                language 1
                procedure P-1  revision 1
                title  "A test"
                keeps  a, b
                for    recloser R
                # who
                crew
                  foreman  "In charge", in charge
                  op       "Operator"  # alone
                stage "All"
                  together
                    # the first
                    first: op opens R
                      requires R is closed
                        and L is supplied
                    # the last
                  end
                ends with
                  R is open
                variant P-1-a  "Twice"  of P-1
                  insert before step first
                    again: op opens R
                  end
                  must fail on cannot
                """,
                formatted("p.procedure", text));
    }

    @Test
    void whatCannotBeToldApartIsRefused() {
        for (String broken : List.of("language 1\nprocedure P revision 1\ntitle \"A test\n", "language 1\nprocedure P revision 1\nstage \"S\"\n  together\n")) {
            Formatter.Formatted formatted = Formatter.format(new Source("p.procedure", broken));
            assertTrue(formatted.text().isEmpty());
            assertEquals(1, formatted.problems().size());
        }
        assertEquals("unknown-file-kind", Formatter.format(new Source("p.txt", "")).problems().get(0).code());
    }
}
