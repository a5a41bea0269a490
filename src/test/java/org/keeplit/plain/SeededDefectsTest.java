package org.keeplit.plain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.File;
import java.io.IOException;
import java.io.StringWriter;
import java.net.MalformedURLException;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import javax.tools.JavaCompiler;
import javax.tools.StandardJavaFileManager;
import javax.tools.ToolProvider;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Made cases find every mistake that is put into the source by hand. */
@Tag("long")
class SeededDefectsTest {
    private static final int CASES = 4000;

    @TempDir
    Path folder;

    static List<SeededDefects.Defect> all() {
        return SeededDefects.ALL;
    }

    @Test
    void thereAreMany() {
        assertTrue(SeededDefects.ALL.size() >= 30);
    }

    @Test
    void withoutADefectNothingIsFound() throws Exception {
        assertEquals("", probe(folder, 300));
    }

    @ParameterizedTest
    @MethodSource("all")
    void isFound(SeededDefects.Defect defect) throws Exception {
        Path source = Path.of("src/main/java/org/keeplit").resolve(defect.file());
        String right = Files.readString(source);
        int at = right.indexOf(defect.right());
        assertTrue(at >= 0 && right.indexOf(defect.right(), at + 1) < 0, "not once in " + source);
        Path spoiled = folder.resolve("src").resolve(source.getFileName());
        Files.createDirectories(spoiled.getParent());
        Files.writeString(spoiled, right.replace(defect.right(), defect.wrong()));
        compile(spoiled);
        String found = probe(folder, CASES);
        System.out.println(defect + ": " + found);
        assertNotEquals("", found, defect.name());
    }

    private void compile(Path source) throws IOException {
        JavaCompiler compiler = ToolProvider.getSystemJavaCompiler();
        StringWriter said = new StringWriter();
        try (StandardJavaFileManager files = compiler.getStandardFileManager(null, null, null)) {
            List<String> options = List.of("-d", folder.toString(), "-cp", System.getProperty("java.class.path"), "-proc:none");
            assertTrue(
                    compiler.getTask(said, files, null, options, null, files.getJavaFileObjects(source)).call(),
                    said::toString);
        }
    }

    /** Looks for differences with the spoiled classes in front of the right ones. */
    private static String probe(Path spoiled, int cases) throws Exception {
        List<URL> urls = new ArrayList<>(List.of(url(spoiled)));
        for (String entry : System.getProperty("java.class.path").split(File.pathSeparator)) {
            urls.add(url(Path.of(entry)));
        }
        try (URLClassLoader loader =
                new URLClassLoader(urls.toArray(new URL[0]), ClassLoader.getPlatformClassLoader())) {
            return (String) loader.loadClass(DefectProbe.class.getName())
                    .getMethod("firstDifference", int.class)
                    .invoke(null, cases);
        }
    }

    private static URL url(Path path) throws MalformedURLException {
        return path.toUri().toURL();
    }
}
