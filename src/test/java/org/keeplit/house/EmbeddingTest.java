package org.keeplit.house;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.tools.JavaCompiler;
import javax.tools.ToolProvider;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The sample of a program that embeds this one is compiled and run as it stands. */
class EmbeddingTest {
    private static final Path SAMPLE = Path.of("src/it/embedding/src/main/java/example/Embedding.java");

    @Test
    void theSampleProvesAProcedure(@TempDir Path folder) throws Exception {
        JavaCompiler compiler = ToolProvider.getSystemJavaCompiler();
        int failed = compiler.run(null, null, null, "-proc:none", "-cp", System.getProperty("java.class.path"), "-d", folder.toString(), SAMPLE.toString());
        assertEquals(0, failed);
        ByteArrayOutputStream told = new ByteArrayOutputStream();
        PrintStream before = System.out;
        try (URLClassLoader loader = new URLClassLoader(new URL[] {folder.toUri().toURL()})) {
            System.setOut(new PrintStream(told, true, StandardCharsets.UTF_8));
            loader.loadClass("example.Embedding").getMethod("main", String[].class)
                    .invoke(null, (Object) new String[] {"procedures/dead-lateral.procedure", "no-such.procedure"});
        } finally {
            System.setOut(before);
        }
        String text = told.toString(StandardCharsets.UTF_8);
        assertTrue(text.startsWith("no-such.procedure: there is no such file\nHOLDS  DW-3 on heron-vale"), text);
        assertTrue(text.contains("FAILS_AS_STATED  DW-3-a on heron-vale"), text);
    }

    @Test
    void theSampleIsShort() throws Exception {
        long body = Files.readAllLines(SAMPLE).stream().filter(l -> !l.isBlank() && !l.startsWith("import")).count();
        assertTrue(body <= 20, body + " lines");
    }
}
