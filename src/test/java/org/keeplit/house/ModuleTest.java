package org.keeplit.house;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.File;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.lang.module.ModuleDescriptor;
import java.lang.module.ModuleFinder;
import java.lang.reflect.Modifier;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.jar.Attributes;
import java.util.jar.JarEntry;
import java.util.jar.JarOutputStream;
import java.util.jar.Manifest;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.tools.ToolProvider;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.keeplit.page.SmallJob;

/** The library as a named module: what it exports, and a program that uses it on the module path, in a Java of its own. */
class ModuleTest {
    @TempDir
    private static Path folder;

    private static Path jar;
    private static String path;

    /** Packs the classes as the build does. */
    @BeforeAll
    static void packed() throws IOException {
        jar = folder.resolve("keeplit.jar");
        Path classes = Path.of("target/classes");
        Manifest manifest = new Manifest();
        manifest.getMainAttributes().put(Attributes.Name.MANIFEST_VERSION, "1.0");
        manifest.getMainAttributes().put(Attributes.Name.MULTI_RELEASE, "true");
        try (OutputStream out = Files.newOutputStream(jar); JarOutputStream into = new JarOutputStream(out, manifest); Stream<Path> all = Files.walk(classes)) {
            into.setLevel(0);
            all.filter(Files::isRegularFile).filter(f -> !f.endsWith("MANIFEST.MF")).forEach(file -> {
                try {
                    into.putNextEntry(new JarEntry(classes.relativize(file).toString().replace(File.separatorChar, '/')));
                    Files.copy(file, into);
                    into.closeEntry();
                } catch (IOException e) {
                    throw new UncheckedIOException(e);
                }
            });
        }
        path = jar + File.pathSeparator + System.getProperty("keeplit.runtime.path");
    }

    private static ModuleDescriptor module() {
        return ModuleFinder.of(jar).find("org.keeplit").orElseThrow().descriptor();
    }

    private static Set<String> exported() {
        return module().exports().stream().filter(e -> !e.isQualified()).map(ModuleDescriptor.Exports::source)
                .collect(Collectors.toCollection(TreeSet::new));
    }

    /** What works things out, what makes pages, the editor and the command line are no part of it. */
    @Test
    void onlyWhatOthersNeedIsExported() {
        assertEquals(
                new TreeSet<>(List.of("org.keeplit", "org.keeplit.condition", "org.keeplit.language", "org.keeplit.network", "org.keeplit.outcome",
                        "org.keeplit.procedure", "org.keeplit.recheck", "org.keeplit.rule", "org.keeplit.text", "org.keeplit.unit", "org.keeplit.verdict")),
                exported());
        assertFalse(module().isAutomatic());
    }

    /** Whoever reads or calls anything of an exported package can name every type that comes up there. */
    @Test
    void noSignatureNamesWhatIsNotExported() throws Exception {
        Set<String> exported = exported();
        Set<String> hidden = new TreeSet<>();
        Set<String> named = new TreeSet<>(List.of("org.keeplit"));
        for (Class<?> type : typesOf(exported)) {
            Map<String, Set<Class<?>>> signatures = new TreeMap<>(Map.of(type.getName(), Signatures.head(type)));
            Signatures.members(type, true).forEach(m -> signatures.put(m.toString(), Signatures.of(m)));
            signatures.forEach((where, classes) -> classes.stream().filter(c -> !c.isPrimitive() && !c.isArray()).forEach(c -> {
                boolean whoCanName = isPublic(c) && exported.contains(c.getPackageName())
                        || c.getName().startsWith("java.") || c.getName().startsWith("com.google.common.");
                if (!whoCanName) {
                    hidden.add(c.getName() + " in " + where);
                }
                if (!c.getPackageName().equals(type.getPackageName())) {
                    named.add(c.getPackageName());
                }
            }));
        }
        assertEquals(Set.of(), hidden);
        // And nothing is exported that neither is the entry nor comes up in a signature elsewhere.
        assertEquals(exported, named.stream().filter(p -> p.startsWith("org.keeplit")).collect(Collectors.toSet()));
    }

    /** {@return the types of packages that others can name} */
    private static List<Class<?>> typesOf(Set<String> packages) throws Exception {
        List<Class<?>> all = new ArrayList<>();
        for (String one : packages) {
            try (Stream<Path> files = Files.list(Path.of("target/classes", one.split("\\.")))) {
                for (Path file : files.filter(f -> f.toString().endsWith(".class") && !f.endsWith("package-info.class")).sorted().toList()) {
                    Class<?> type = Class.forName(one + "." + file.getFileName().toString().replace(".class", ""), false, ModuleTest.class.getClassLoader());
                    if (isPublic(type)) {
                        all.add(type);
                    }
                }
            }
        }
        assertTrue(all.size() > 150, all.size() + " types");
        return all;
    }

    private static boolean isPublic(Class<?> type) {
        return Modifier.isPublic(type.getModifiers()) && (type.getEnclosingClass() == null || isPublic(type.getEnclosingClass()));
    }

    @Test
    void aProgramOnTheModulePathEmbedsIt() throws Exception {
        Path source = Files.createDirectories(folder.resolve("sample"));
        Files.copy(Path.of("src/it/embedding/src/main/java/example/Embedding.java"), source.resolve("Embedding.java"));
        Files.writeString(source.resolve("module-info.java"), "module example.embedding { requires org.keeplit; }");
        Path out = folder.resolve("out");
        assertEquals(0, ToolProvider.getSystemJavaCompiler().run(null, null, null, "-proc:none", "--module-path", path, "-d", out.toString(),
                source.resolve("Embedding.java").toString(), source.resolve("module-info.java").toString()));
        String told = run("--module-path", out + File.pathSeparator + path, "-m", "example.embedding/example.Embedding", "procedures/dead-lateral.procedure");
        assertTrue(told.startsWith("HOLDS  DW-3 on heron-vale"), told);
    }

    /** The command, too: pages with their fonts, styles and tables are found, and options are read. */
    @Test
    void theCommandRunsOnTheModulePath() throws Exception {
        Path job = Files.createDirectory(folder.resolve("job"));
        SmallJob.write(job, "  bypass: op closes bridge\n");
        String told = run("--module-path", path, "-m", "org.keeplit/org.keeplit.command.Main", "cards", job.toString(), "--out",
                folder.resolve("cards").toString(), "--date", "2026-03-02");
        assertEquals("P on pole: 1 step. The proof holds for exactly this text.\n", told);
        assertTrue(Files.exists(folder.resolve("cards/p-on-pole/crew.pdf")));
    }

    private static String run(String... arguments) throws Exception {
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-XX:TieredStopAtLevel=1", "-XX:+UseSerialGC"));
        command.addAll(List.of(arguments));
        Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
        String told = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        process.waitFor();
        return told.replace(System.lineSeparator(), "\n");
    }
}
