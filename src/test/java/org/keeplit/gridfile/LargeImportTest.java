package org.keeplit.gridfile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Large files are imported in a Java of its own with little memory. */
class LargeImportTest {
    @TempDir
    Path folder;

    @Test
    void tenMegabytesTakeSixtyFour() throws Exception {
        imports(2_000, 10, 64);
    }

    /** The whole process is then far below 1 GiB. */
    @Test
    @Tag("long")
    void fiftyMegabytesTakeTwoHundredAndForty() throws Exception {
        imports(10_000, 50, 240);
    }

    private void imports(int sections, int megabytes, int heap) throws IOException, InterruptedException {
        Path file = folder.resolve("large.xml");
        LargeGridFile.write(file, sections);
        assertTrue(Files.size(file) >= megabytes * 1_000_000L, Files.size(file) + " bytes");
        Path equipment = Files.createDirectories(folder.resolve("shared/equipment")).resolve("overhead.equipment");
        Files.copy(Path.of("shared/equipment/overhead.equipment"), equipment);
        Process process = new ProcessBuilder(List.of(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-XX:TieredStopAtLevel=1", "-XX:+UseSerialGC", "-Xmx" + heap + "m",
                        "-cp", "target/classes" + File.pathSeparator + System.getProperty("keeplit.runtime.path"), "org.keeplit.command.Main",
                        "import", file.toString(), "--out", folder.resolve("large.network").toString()))
                .redirectErrorStream(true)
                .start();
        String told = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertEquals(0, process.waitFor(), told);
        // Each object is in the counts, and what is not carried is told with its reason.
        assertTrue(told.lines().anyMatch(l -> l.matches(".*Analog +" + sections + " .*")), told);
        assertEquals(sections, Files.readAllLines(folder.resolve("large.network")).stream().filter(l -> l.matches(".* (section|switch)[0-9]+ .*")).count());
    }
}
