package org.keeplit.language;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.lang.ref.Reference;
import java.lang.ref.WeakReference;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.keeplit.text.Source;

/** Reading one file over and over gives what reading it afresh gives. */
class RereadingTest {
    private static void assertSame(Rereading rereading, Path file, String text) {
        Map<Path, String> open = Map.of(file, text);
        Library again = rereading.read(file, open);
        Library fresh = new Reader().read(List.of(file), open);
        assertEquals(fresh.problems().toString(), again.problems().toString());
        assertEquals(new TreeMap<>(fresh.sources()), new TreeMap<>(again.sources()));
        assertEquals(fresh.equipment().keySet(), again.equipment().keySet());
        assertEquals(fresh.networks().keySet(), again.networks().keySet());
        assertEquals(new TreeMap<>(fresh.rulebooks()).keySet(), new TreeMap<>(again.rulebooks()).keySet());
        assertEquals(fresh.procedures().toString(), again.procedures().toString());
    }

    @Test
    void aFileWithLinesTakenOutAndPutBack() throws IOException {
        Random random = new Random(7);
        for (String name : List.of("procedures/fuse.procedure", "procedures/recloser-day.procedure", "shared/rules/live-line.rules", "shared/examples/people.examples")) {
            Path file = Path.of(name).toAbsolutePath();
            List<String> lines = Files.readAllLines(file);
            Rereading rereading = new Rereading();
            for (int i = 0; i < 8; i++) {
                List<String> changed = new ArrayList<>(lines);
                for (int j = 0; j < random.nextInt(3); j++) {
                    changed.remove(random.nextInt(changed.size()));
                }
                assertSame(rereading, file, String.join("\n", changed) + "\n");
            }
        }
    }

    @Test
    void aChangedLibraryIsReadAgain(@TempDir Path folder) throws IOException {
        Files.createDirectories(folder.resolve("shared"));
        Path equipment = folder.resolve("shared/overhead.equipment");
        Files.copy(Path.of("shared/equipment/overhead.equipment"), equipment);
        Path rules = folder.resolve("shared/supply.rules");
        Files.writeString(rules, "language 1\nrulebook supply revision 1\nrule r\n  always every load L is supplied\n  says \"a\"\n  because \"b\"\n");
        Path file = folder.resolve("p.procedure");
        String text = "language 1\nprocedure P revision 1\ntitle \"T\"\nkeeps supply\ncrew\n  op \"Op\", in charge\nstage \"All\"\n  op does \"it\"\n";
        Rereading rereading = new Rereading();
        assertSame(rereading, file, text);
        Files.writeString(rules, Files.readString(rules).replace("rulebook supply", "rulebook other"));
        Files.setLastModifiedTime(rules, FileTime.fromMillis(1_000_000));
        assertSame(rereading, file, text);
        assertEquals(1, rereading.read(file, Map.of(file, text)).problems().size());
    }

    @Test
    void whatWasReadBeforeIsForgotten() throws IOException, InterruptedException {
        for (String name : List.of("procedures/fuse.procedure", "shared/rules/live-line.rules", "shared/networks/heron-vale.network")) {
            Path file = Path.of(name).toAbsolutePath();
            String text = Files.readString(file);
            Rereading rereading = new Rereading();
            List<WeakReference<Source>> before = new ArrayList<>();
            for (int i = 0; i < 5; i++) {
                Library library = rereading.read(file, Map.of(file, text + "# " + i + "\n"));
                before.add(new WeakReference<>(library.sources().values().stream()
                        .filter(source -> Path.of(source.name()).equals(file))
                        .findFirst()
                        .orElseThrow()));
            }
            // A collector need not clear everything at once.
            for (int i = 0; i < 20 && before.subList(0, 3).stream().anyMatch(each -> each.get() != null); i++) {
                System.gc();
                Thread.sleep(10);
            }
            assertEquals(List.of(), before.subList(0, 3).stream().filter(each -> each.get() != null).toList(), name);
            // Nothing would be shown if the reading itself had gone.
            Reference.reachabilityFence(rereading);
        }
    }
}
