package org.keeplit.language;

import static java.time.Duration.ofSeconds;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.keeplit.text.Problem;
import org.keeplit.text.ProblemPrinter;
import org.keeplit.text.Source;

/** Input that means harm, or that nobody meant: a clear problem, in little time and memory, and never an exception. */
class HostileTest {
    @TempDir
    Path folder;

    private Path write(String name, byte[] bytes) throws IOException {
        Path file = folder.resolve(name);
        Files.createDirectories(file.getParent());
        return Files.write(file, bytes);
    }

    private Path write(String name, String text) throws IOException {
        return write(name, text.getBytes(StandardCharsets.UTF_8));
    }

    private static List<String> codes(Library library) {
        ProblemPrinter.print(library.problems());
        return library.problems().stream().map(Problem::code).distinct().toList();
    }

    private static List<String> read(Path... paths) {
        return assertTimeoutPreemptively(ofSeconds(60), () -> codes(new Reader().read(List.of(paths))));
    }

    private static List<String> readText(String name, String text) {
        return assertTimeoutPreemptively(
                ofSeconds(60), () -> codes(new Reader().readSources(List.of(new Source(name, text)))));
    }

    @Test
    void aLineOfTwentyMegabytes() throws IOException {
        String line = "word ".repeat(4_000_000);
        assertEquals(List.of("file-too-large"), read(write("long.network", line)));
        assertEquals(
                List.of("line-too-long"),
                readText("long.procedure", "language 1\nprocedure p revision 1\n" + line).stream()
                        .filter("line-too-long"::equals)
                        .toList());
    }

    @Test
    void tenThousandGroupsInEachOther() {
        String head = "language 1\nprocedure p revision 1\nstage \"x\"\n";
        String groups = head + "together\n".repeat(10_000) + "end\n".repeat(10_000);
        assertTrue(readText("deep.procedure", groups).contains("too-deep"));
        assertTrue(
                readText("open.procedure", head + "together\n".repeat(10_000)).contains("missing-end"));
        String conditions = "language 1\nrulebook r revision 1\nrule x\nalways one of\n" + "one of\n".repeat(10_000);
        assertTrue(readText("deep.rules", conditions).contains("too-deep"));
    }

    @Test
    void termsAndQuantifiersInEachOther() {
        String deep = "the site of ".repeat(300) + "R";
        String rule = "language 1\nrulebook r revision 1\nrule x\nalways W is aloft at " + deep + "\n";
        assertTrue(readText("deep.rules", rule).contains("unknown-name"));
        String quantifiers = "language 1\nrulebook r revision 1\nrule x\nalways " + "for every load L, ".repeat(200)
                + "L is supplied\n";
        assertTrue(readText("deep.rules", quantifiers).contains("duplicate"));
    }

    @Test
    void aStatementContinuedForEver() {
        String rule = "language 1\nrulebook r revision 1\nrule x\nalways every load L is supplied\n"
                + "and every load L is supplied\n".repeat(20_000);
        assertTrue(readText("long.rules", rule).contains("line-too-long"));
    }

    @Test
    void aHundredThousandMistakes() {
        List<String> codes = readText("many.network", "language 1\nnetwork n\nuses x\n" + "§\n".repeat(100_000));
        assertTrue(codes.contains("too-many"));
        assertTrue(codes.contains("strange-character"));
    }

    @Test
    void tenThousandElementsThatHangOnOneNode() {
        StringBuilder text = new StringBuilder("language 1\nnetwork n\nuses overhead\nsystem voltage 12 kV\n");
        for (int i = 0; i < 10_000; i++) {
            text.append("tie t-").append(i).append(" from n to m-").append(i).append(", phases ABC\n");
        }
        List<Source> sources = List.of(
                new Source("n.network", text.toString()), Samples.source(Samples.GOOD.resolve("overhead.equipment")));
        assertTimeoutPreemptively(ofSeconds(20), () -> {
            assertEquals(List.of("no-source"), codes(new Reader().readSources(sources)));
        });
    }

    @Test
    void manyMisspeltNamesAmongManyNames() {
        StringBuilder text = new StringBuilder("language 1\nnetwork n\nuses overhead\nsystem voltage 12 kV\n");
        text.append("source s at n, phases ABC, supply s\n");
        for (int i = 0; i < 8_000; i++) {
            text.append("tie t-").append(i).append(" from n to m-").append(i).append(", phases ABC\n");
            text.append("tie u-")
                    .append(i)
                    .append(" from k-")
                    .append(i)
                    .append(" to l-")
                    .append(i)
                    .append(", phases ABC\n");
        }
        List<Source> sources = List.of(
                new Source("n.network", text.toString()), Samples.source(Samples.GOOD.resolve("overhead.equipment")));
        assertTimeoutPreemptively(ofSeconds(30), () -> {
            assertEquals(List.of("too-many", "unreached"), codes(new Reader().readSources(sources)));
        });
    }

    @Test
    void bytesThatAreNoText() throws IOException {
        byte[] bytes = "language 1\nnetwork n\nuses \u00e9".getBytes(StandardCharsets.ISO_8859_1);
        Library library = new Reader().read(List.of(write("latin.network", bytes)));
        assertEquals(List.of("bad-utf-8"), codes(library));
        assertEquals(3, library.problems().get(0).span().line());
        assertEquals(6, library.problems().get(0).span().column());
        byte[] noise = new byte[100_000];
        new Random(7).nextBytes(noise);
        assertEquals(List.of("bad-utf-8"), read(write("noise.rules", noise)));
    }

    @Test
    void nulsAndControlCharacters() {
        assertTrue(readText("nul.rules", "\0".repeat(1000)).contains("strange-character"));
        String told = ProblemPrinter.print(new Reader()
                .readSources(List.of(new Source("esc.rules", "language 1\nrulebook \u001b[31m revision 1\n")))
                .problems());
        assertTrue(told.indexOf('\u001b') < 0, "no escape reaches the terminal");
    }

    @Test
    void aByteOrderMarkIsNoLetter() throws IOException {
        Library library = new Reader().read(List.of(write("bom.rules", "\ufefflanguage 1\nrulebook r revision 1\n")));
        assertEquals(List.of(), library.problems());
    }

    @Test
    void foldersAndFilesThatAreNot() throws IOException {
        Files.createDirectories(folder.resolve("empty"));
        assertEquals(List.of("empty-folder"), read(folder.resolve("empty")));
        Files.createDirectories(folder.resolve("trap/x.procedure"));
        assertEquals(
                List.of("folder-named-as-file"),
                read(folder.resolve("trap")).stream()
                        .filter("folder-named-as-file"::equals)
                        .toList());
        assertEquals(List.of("empty-folder"), read(folder.resolve("trap/x.procedure")));
        assertEquals(List.of("missing-file"), read(folder.resolve("none.rules")));
        assertEquals(List.of("unknown-file-kind"), read(write("notes.txt", "x")));
        Path dangling = folder.resolve("dangling.rules");
        Files.createSymbolicLink(dangling, folder.resolve("nowhere.rules"));
        assertEquals(List.of("missing-file"), read(dangling));
    }

    @Test
    void aFolderThatContainsItself() throws IOException {
        write("loop/a.rules", "language 1\nrulebook a revision 1\n");
        Files.createSymbolicLink(folder.resolve("loop/again"), folder.resolve("loop"));
        // Not followed, and told.
        assertEquals(List.of("skipped"), read(folder.resolve("loop")));
    }

    @Test
    void aDeviceIsNotReadAsAFile() throws IOException {
        Path device = folder.resolve("zero.rules");
        Files.createSymbolicLink(device, Path.of("/dev/zero"));
        assertEquals(List.of("unreadable"), read(device));
        Files.delete(device);
    }

    @Test
    void manyReferencesInALoop() throws IOException {
        StringBuilder text = new StringBuilder("language 1\n");
        for (int i = 0; i < 300; i++) {
            text.append("variant v-")
                    .append(i)
                    .append(" of v-")
                    .append((i + 1) % 300)
                    .append('\n');
        }
        assertTrue(read(write("loop.procedure", text.toString())).contains("circular"));
        StringBuilder chain = new StringBuilder("language 1\n");
        for (int i = 0; i < 20_000; i++) {
            chain.append("variant v-").append(i).append(" of v-").append(i + 1).append('\n');
        }
        assertTrue(readText("chain.procedure", chain.toString()).contains("circular"));
    }
}
