package org.keeplit.language;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.keeplit.text.ProblemPrinter;

/** Names are looked for among the given files first, then in the library folder near the file. */
class LibraryFolderTest {
    @TempDir
    Path root;

    @BeforeEach
    void lay() throws IOException {
        put("overhead.equipment", "shared/equipment");
        put("wires.equipment", "shared/equipment");
        put("heron-vale.network", "shared/networks");
        put("no-interruption.rules", "shared/rules");
        put("live-line.rules", "shared/rules");
        put("good-housekeeping.rules", "shared/rules");
        put("every-condition.rules", "shared/rules");
        put("bench.procedure", "procedures");
        put("recloser-out.procedure", "procedures");
        put("recloser-out-wrong.procedure", "procedures/teaching");
    }

    private void put(String file, String folder) throws IOException {
        Files.createDirectories(root.resolve(folder));
        Files.copy(Samples.GOOD.resolve(file), root.resolve(folder).resolve(file));
    }

    private Library read(String... paths) {
        return new Reader().read(Arrays.stream(paths).map(root::resolve).toList());
    }

    @Test
    void aVariantFindsItsBaseAndAllThatItNeeds() {
        Library library = read("procedures/teaching/recloser-out-wrong.procedure");
        assertEquals("", ProblemPrinter.print(library.problems()));
        assertTrue(library.procedures().containsKey("LP-12"));
        assertEquals(
                List.of("LP-12-a", "LP-12-b", "LP-12-c", "LP-12-d"),
                library.givenProcedures().stream().map(p -> p.name()).toList());
        assertEquals(List.of("heron-vale"), library.networks().keySet().asList());
    }

    @Test
    void filesThatNothingRefersToStayClosed() {
        Library library = read("procedures/recloser-out.procedure");
        assertTrue(library.rulebooks().containsKey("live-line"));
        assertTrue(library.sources().keySet().stream().noneMatch(name -> name.endsWith("bench.procedure")));
    }

    @Test
    void aGivenFileDoesNotReplaceOneOfTheLibrary() throws IOException {
        Path mine = root.resolve("mine/no-interruption.rules");
        Files.createDirectories(mine.getParent());
        Files.writeString(
                mine,
                Files.readString(Samples.GOOD.resolve("no-interruption.rules")).replace("revision 1", "revision 7"));
        Library library = read("mine/no-interruption.rules", "procedures/recloser-out.procedure");
        assertTrue(library.problems().stream().anyMatch(p -> p.code().equals("two-readings")), () -> ProblemPrinter.print(library.problems()));
        assertEquals(List.of(), library.givenProcedures());
    }

    @Test
    void theWholeFolderReadsInTheOrderOfTheNames() {
        Library library = read(".");
        assertEquals("", ProblemPrinter.print(library.problems()));
        assertEquals(
                List.of("bench", "LP-12", "LP-12-a", "LP-12-b", "LP-12-c", "LP-12-d"),
                library.procedures().keySet().asList());
    }

    @Test
    void whatIsMissingIsToldWithWhereItWasLookedFor() throws IOException {
        Files.delete(root.resolve("shared/rules/live-line.rules"));
        Library library = read("procedures/recloser-out.procedure");
        assertEquals(1, library.problems().size());
        String message = library.problems().get(0).message();
        assertTrue(message.startsWith("there is no rulebook live-line; looked in the given files and in "), message);
        assertTrue(message.endsWith("shared"), message);
        assertTrue(library.procedures().isEmpty(), "what lacks a rulebook is not proved without it");
    }

    @Test
    void mistakesInTheLibraryAreToldOnce() throws IOException {
        Path rules = root.resolve("shared/rules/live-line.rules");
        Files.writeString(rules, Files.readString(rules).replace("is aloft", "is allofft"));
        Library library = read("procedures/recloser-out.procedure", "procedures/teaching");
        assertEquals(3, library.problems().size());
        assertTrue(library.procedures().isEmpty());
    }
}
