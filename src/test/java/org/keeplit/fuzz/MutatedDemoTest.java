package org.keeplit.fuzz;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.keeplit.command.Main;

/**
 * The whole chain of {@code check} on demo files with words and lines dropped, doubled, exchanged and changed: no exception escapes, nothing
 * hangs, and the exit code is one of those that are documented. The seed of a failure is in its message.
 */
class MutatedDemoTest {
    /** The codes in the README, without 70, which is a fault. */
    private static final Set<Integer> CODES = Set.of(0, 1, 2, 3, 4, 5);
    @TempDir
    Path folder;

    /** The small procedure that {@code new procedure} writes, with its variant and its network in one file: a check of it takes no time. */
    @Test
    void changesOfASmallProcedureEachDay() throws IOException {
        copy(Path.of("shared/equipment"));
        copy(Path.of("shared/rules/no-interruption.rules"));
        StringWriter err = new StringWriter();
        assertEquals(0, Main.run(new PrintWriter(new StringWriter()), new PrintWriter(err), "new", "procedure", "small", "--folder", folder.toString()), err.toString());
        run(1, 60, List.of("small.procedure"), List.of("small.procedure", "small.procedure", "small.procedure", "shared/equipment/overhead.equipment", "shared/rules/no-interruption.rules"));
    }

    @Test
    @Tag("long")
    void changesOfTheDemo() throws IOException {
        copy(Path.of("shared"));
        copy(Path.of("procedures"));
        List<String> demos = List.of("procedures/dead-lateral.procedure", "procedures/fuse.procedure", "procedures/cable.procedure", "procedures/sectionalizer.procedure");
        List<String> changed = new ArrayList<>(demos);
        changed.addAll(List.of("shared/networks/heron-vale.network", "shared/equipment/overhead.equipment", "shared/rules/grounding.rules", "shared/rules/people.rules"));
        run(1000, 400, demos, changed);
    }

    private void run(int firstSeed, int many, List<String> procedures, List<String> files) throws IOException {
        Map<Integer, Integer> spread = new TreeMap<>();
        for (int seed = firstSeed; seed < firstSeed + many; seed++) {
            Random random = new Random(seed);
            String file = files.get(random.nextInt(files.size()));
            String procedure = procedures.contains(file) ? file : procedures.get(random.nextInt(procedures.size()));
            spread.merge(once(seed, random, file, procedure), 1, Integer::sum);
        }
        // What is changed must not only be refused.
        assertTrue(spread.keySet().size() > 1 && spread.getOrDefault(3, 0) < many, spread.toString());
    }

    private int once(int seed, Random random, String file, String procedure) throws IOException {
        String before = Files.readString(folder.resolve(file));
        Files.writeString(folder.resolve(file), changed(before, random));
        try {
            StringWriter out = new StringWriter();
            StringWriter err = new StringWriter();
            int code = assertTimeoutPreemptively(Duration.ofSeconds(60), () -> Main.run(new PrintWriter(out), new PrintWriter(err), "check",
                    folder.resolve(procedure).toString(), "--max-states", "400", "--max-seconds", "3", "--why"), "seed " + seed + " hangs on " + file);
            assertTrue(CODES.contains(code), "seed " + seed + " of " + file + " ends with " + code + "\n" + err);
            assertFalse(err.toString().contains("Exception") || err.toString().contains("fault of keeplit"), "seed " + seed + " of " + file + "\n" + err);
            return code;
        } finally {
            Files.writeString(folder.resolve(file), before);
        }
    }

    /** {@return a text with one to three changes} */
    static String changed(String text, Random random) {
        String now = text;
        for (int i = 0; i <= random.nextInt(3); i++) {
            now = random.nextBoolean() ? lines(now, random) : words(now, random);
        }
        return now;
    }

    private static String lines(String text, Random random) {
        List<String> lines = new ArrayList<>(Arrays.asList(text.split("\n", -1)));
        change(lines, random);
        return String.join("\n", lines);
    }

    private static String words(String text, Random random) {
        List<String> lines = new ArrayList<>(Arrays.asList(text.split("\n", -1)));
        int line = random.nextInt(lines.size());
        List<String> words = new ArrayList<>(Arrays.asList(lines.get(line).split("(?<= )|(?= )|(?=,)")));
        if (random.nextInt(4) == 0) {
            int at = random.nextInt(words.size());
            words.set(at, flipped(words.get(at), random));
        } else {
            change(words, random);
        }
        lines.set(line, String.join("", words));
        return String.join("\n", lines);
    }

    private static void change(List<String> parts, Random random) {
        int at = random.nextInt(parts.size());
        switch (random.nextInt(3)) {
            case 0 -> parts.remove(at);
            case 1 -> parts.add(random.nextInt(parts.size() + 1), parts.get(at));
            default -> Collections.swap(parts, at, random.nextInt(parts.size()));
        }
        if (parts.isEmpty()) {
            parts.add("");
        }
    }

    /** {@return a word with a character changed, or another word of the language for one that has an opposite} */
    private static String flipped(String word, Random random) {
        Map<String, String> opposite = new HashMap<>(Map.of("opens", "closes", "closes", "opens", "installs", "removes", "A", "B", "B", "C", "and", "or", "before", "after"));
        if (opposite.containsKey(word)) {
            return opposite.get(word);
        }
        if (word.isEmpty()) {
            return "0";
        }
        int at = random.nextInt(word.length());
        return word.substring(0, at) + (char) (32 + random.nextInt(95)) + word.substring(at + 1);
    }

    private void copy(Path from) throws IOException {
        try (Stream<Path> files = Files.walk(from)) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                Path to = folder.resolve(file);
                Files.createDirectories(to.getParent());
                Files.copy(file, to);
            }
        }
    }
}
