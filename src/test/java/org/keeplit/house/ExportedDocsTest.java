package org.keeplit.house;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.source.util.JavacTask;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import javax.tools.DiagnosticCollector;
import javax.tools.JavaCompiler;
import javax.tools.JavaFileObject;
import javax.tools.StandardJavaFileManager;
import javax.tools.ToolProvider;
import org.junit.jupiter.api.Test;

/** Everything public in the exported packages has its Javadoc, whole: parameters, results, and links that lead somewhere. */
class ExportedDocsTest {
    private static final Path SOURCES = Path.of("src/main/java");

    @Test
    void nothingThatIsExportedGoesUntold() throws IOException {
        List<String> packages = new ArrayList<>();
        Matcher exported = Pattern.compile("exports ([a-z.]+);").matcher(Files.readString(Path.of("src/main/module/module-info.java")));
        while (exported.find()) {
            packages.add(exported.group(1));
        }
        assertEquals(11, packages.size(), packages.toString());
        List<Path> files = new ArrayList<>();
        for (String one : packages) {
            try (Stream<Path> inside = Files.list(SOURCES.resolve(one.replace('.', '/')))) {
                inside.filter(f -> f.toString().endsWith(".java")).sorted().forEach(files::add);
            }
        }
        JavaCompiler compiler = ToolProvider.getSystemJavaCompiler();
        DiagnosticCollector<JavaFileObject> told = new DiagnosticCollector<>();
        try (StandardJavaFileManager manager = compiler.getStandardFileManager(told, Locale.ENGLISH, StandardCharsets.UTF_8)) {
            List<String> options = List.of("-proc:none", "-implicit:none", "-Xmaxwarns", "1000", "-Xdoclint:all/protected", "-cp", System.getProperty("java.class.path"));
            ((JavacTask) compiler.getTask(null, manager, told, options, null, manager.getJavaFileObjectsFromPaths(files))).analyze();
        }
        assertTrue(files.size() > 200, files.size() + " files");
        assertEquals(
                List.of(),
                told.getDiagnostics().stream()
                        .map(d -> d.getSource().getName() + ":" + d.getLineNumber() + ": " + d.getMessage(Locale.ENGLISH))
                        .toList());
    }
}
