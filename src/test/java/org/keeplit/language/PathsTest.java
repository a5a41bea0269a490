package org.keeplit.language;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Files refer to others by name, never by path: whatever stands in a file, nothing beside the given files and the folders of the library is read. */
class PathsTest {
    @TempDir
    Path folder;

    @Test
    void noNameLeavesTheProject() throws IOException {
        Path project = Files.createDirectories(folder.resolve("project/procedures"));
        Path outside = Files.createDirectories(folder.resolve("outside"));
        Files.writeString(outside.resolve("secret.rules"), "language 1\nrulebook secret revision 1\n");
        Files.writeString(outside.resolve("secret.network"), "language 1\nnetwork secret \"A secret\"\n");
        Files.createDirectories(folder.resolve("project/shared"));
        for (String name : List.of("../../outside/secret", "..\\..\\outside\\secret", outside.resolve("secret").toString(), "file:" + outside.resolve("secret"), "secret.rules", "~/secret")) {
            for (String form : List.of("keeps %s", "keeps \"%s\"", "proved on %s", "proved on \"%s\"", "for switching device R\nproved on \"%s\" with r as R")) {
                Path file = Files.writeString(project.resolve("p.procedure"), "language 1\nprocedure P revision 1\ntitle \"T\"\n" + form.replace("%s", name) + "\n");
                Library library = new Reader().read(List.of(file));
                assertTrue(library.hasErrors(), form + " " + name);
                assertTrue(library.sources().keySet().stream().noneMatch(s -> s.contains("outside")), form + " " + name);
                assertFalse(library.problems().toString().contains("A secret"), form + " " + name);
            }
        }
    }

    /** A link out of the library's folder is not gone through when folders are read. */
    @Test
    void noLinkedFolderIsWalked() throws IOException {
        Path outside = Files.createDirectories(folder.resolve("outside"));
        Files.writeString(outside.resolve("secret.rules"), "language 1\nrulebook secret revision 1\n");
        Path shared = Files.createDirectories(folder.resolve("project/shared"));
        Files.createSymbolicLink(shared.resolve("more"), outside);
        Path file = Files.writeString(folder.resolve("project/p.procedure"), "language 1\nprocedure P revision 1\ntitle \"T\"\nkeeps secret\n");
        Library library = new Reader().read(List.of(file));
        assertTrue(library.rulebooks().isEmpty(), library.rulebooks().keySet().toString());
    }
}
