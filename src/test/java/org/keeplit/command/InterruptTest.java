package org.keeplit.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Ctrl-C in {@code check}. */
class InterruptTest {
    @TempDir
    Path folder;

    @Test
    void ctrlCInCheckLostWhatWasProvedSoFar() throws IOException, InterruptedException {
        Spur spur = new Spur(folder, 30);
        StringBuilder many = new StringBuilder("  together\n");
        for (int i = 1; i <= 30; i++) {
            many.append("    west opens gang-").append(i).append('\n');
        }
        Path small = spur.procedure("P-1", "supply", "  west opens gang-1\n");
        Path large = spur.procedure("P-2", "supply", many + "  end\n");
        Path last = spur.procedure("P-3", "supply", "  west opens gang-2\n");
        Path told = folder.resolve("told.txt");
        Process process = new ProcessBuilder(List.of(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-Xmx1g",
                        "-cp",
                        "target/classes" + System.getProperty("path.separator") + System.getProperty("keeplit.runtime.path"),
                        "org.keeplit.command.Main",
                        "check",
                        "--threads=1",
                        small.toString(),
                        large.toString(),
                        last.toString()))
                .redirectErrorStream(true)
                .redirectOutput(told.toFile())
                .start();
        assertTrue(!process.waitFor(6, TimeUnit.SECONDS), () -> text(told));
        // The same end as Ctrl-C, which a process that was started in the background does not get.
        process.destroy();
        assertTrue(process.waitFor(60, TimeUnit.SECONDS));
        assertEquals(4, process.exitValue(), () -> text(told));
        String text = text(told);
        assertTrue(text.contains("holds      P-1  on spur"), text);
        assertTrue(text.contains("undecided  P-2  on spur: stopped from outside after"), text);
        assertTrue(text.contains("undecided  P-3  on spur: not reached before it was stopped; nothing is claimed"), text);
    }

    private static String text(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException e) {
            return e.toString();
        }
    }
}
