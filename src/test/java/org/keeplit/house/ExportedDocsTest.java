package org.keeplit.house;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.source.doctree.DocCommentTree;
import com.sun.source.doctree.ParamTree;
import com.sun.source.tree.ClassTree;
import com.sun.source.tree.CompilationUnitTree;
import com.sun.source.util.DocTrees;
import com.sun.source.util.JavacTask;
import com.sun.source.util.TreePathScanner;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import javax.lang.model.element.Element;
import javax.lang.model.element.ElementKind;
import javax.lang.model.element.Modifier;
import javax.lang.model.element.PackageElement;
import javax.lang.model.element.TypeElement;
import javax.tools.DiagnosticCollector;
import javax.tools.JavaCompiler;
import javax.tools.JavaFileObject;
import javax.tools.StandardJavaFileManager;
import javax.tools.ToolProvider;
import org.junit.jupiter.api.Test;

/** Everything public in the exported packages has its Javadoc, whole: parameters, results, and links that lead somewhere. */
class ExportedDocsTest {
    private static final Path SOURCES = Path.of("src/main/java");

    private static List<String> found(String pattern, Path file) throws IOException {
        return Pattern.compile(pattern).matcher(Files.readString(file)).results().map(m -> m.group(1)).toList();
    }

    private static List<String> exported() throws IOException {
        return found("exports ([a-z.]+);", Path.of("src/main/module/module-info.java"));
    }

    /** The jar of the Javadoc is made of these packages, with every mistake in it an error. */
    @Test
    void theJavadocIsOfWhatIsExported() throws IOException {
        List<String> told = found("<sourceFileInclude>([a-z/]+)/[*].java<", Path.of("pom.xml")).stream().map(p -> p.replace('/', '.')).toList();
        assertEquals(exported(), told);
    }

    @Test
    void nothingThatIsExportedGoesUntold() throws IOException {
        List<String> packages = exported();
        assertEquals(11, packages.size(), packages.toString());
        List<Path> files = new ArrayList<>();
        for (String one : packages) {
            try (Stream<Path> inside = Files.list(SOURCES.resolve(one.replace('.', '/')))) {
                inside.filter(f -> f.toString().endsWith(".java")).sorted().forEach(files::add);
            }
        }
        JavaCompiler compiler = ToolProvider.getSystemJavaCompiler();
        List<String> untold = new ArrayList<>();
        DiagnosticCollector<JavaFileObject> told = new DiagnosticCollector<>();
        try (StandardJavaFileManager manager = compiler.getStandardFileManager(told, Locale.ENGLISH, StandardCharsets.UTF_8)) {
            List<String> options = List.of("-proc:none", "-implicit:none", "-Xmaxwarns", "1000", "-Xdoclint:all/protected", "-cp", System.getProperty("java.class.path"));
            JavacTask task = (JavacTask) compiler.getTask(null, manager, told, options, null, manager.getJavaFileObjectsFromPaths(files));
            Iterable<? extends CompilationUnitTree> units = task.parse();
            task.analyze();
            units.forEach(unit -> new Components(DocTrees.instance(task), untold).scan(unit, null));
        }
        assertTrue(files.size() > 200, files.size() + " files");
        assertEquals(
                List.of(),
                told.getDiagnostics().stream()
                        .map(d -> d.getSource().getName() + ":" + d.getLineNumber() + ": " + d.getMessage(Locale.ENGLISH))
                        .toList());
        assertEquals(List.of(), untold);
    }

    /** The compiler asks for no word on the components of a record: this does. */
    private static final class Components extends TreePathScanner<Void, Void> {
        private final DocTrees trees;
        private final List<String> untold;

        Components(DocTrees trees, List<String> untold) {
            this.trees = trees;
            this.untold = untold;
        }

        @Override
        public Void visitClass(ClassTree type, Void nothing) {
            TypeElement element = (TypeElement) trees.getElement(getCurrentPath());
            DocCommentTree comment = trees.getDocCommentTree(getCurrentPath());
            if (element.getKind() == ElementKind.RECORD && isPublic(element) && comment != null) {
                List<String> names = comment.getBlockTags().stream().filter(ParamTree.class::isInstance).map(t -> ((ParamTree) t).getName().toString()).toList();
                element.getRecordComponents().stream().map(c -> c.getSimpleName().toString()).filter(c -> !names.contains(c))
                        .forEach(c -> untold.add(element + " says nothing of " + c));
            }
            return super.visitClass(type, nothing);
        }

        private static boolean isPublic(Element element) {
            return element instanceof PackageElement || element.getModifiers().contains(Modifier.PUBLIC) && isPublic(element.getEnclosingElement());
        }
    }
}
