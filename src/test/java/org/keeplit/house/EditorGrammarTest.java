package org.keeplit.house;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.keeplit.text.Versions;
import org.keeplit.unit.Unit;

/** The editor extension colours the words and units that the reader knows. */
class EditorGrammarTest {
    private static final Path FOLDER = Path.of("src/vscode");

    private static String match(String rule) throws IOException {
        JsonObject grammar = JsonParser.parseString(Files.readString(FOLDER.resolve("syntaxes/keeplit.tmLanguage.json"))).getAsJsonObject();
        return grammar.getAsJsonObject("repository").getAsJsonObject(rule).get("match").getAsString();
    }

    @Test
    void itsWordsAreThoseOfTheLexer() throws IOException {
        TreeSet<String> words = new TreeSet<>();
        for (String line : Files.readAllLines(Path.of("grammar/org/keeplit/language/grammar/Words.g4"))) {
            Matcher quoted = Pattern.compile("'([a-z]+)'").matcher(line.matches("[A-Z]+ : .*") ? line : "");
            while (quoted.find()) {
                words.add(quoted.group(1));
            }
        }
        String match = match("word");
        String inside = match.substring(match.indexOf(")(") + 2, match.lastIndexOf(")(?!"));
        assertEquals(words, Arrays.stream(inside.split("\\|")).collect(Collectors.toCollection(TreeSet::new)));
    }

    @Test
    void itsUnitsAreThoseOfTheReader() throws IOException {
        Pattern quantity = Pattern.compile(match("quantity"));
        for (String unit : Unit.symbols()) {
            Matcher found = quantity.matcher("12.5 " + unit);
            assertEquals(true, found.matches(), unit);
            assertEquals(unit, found.group(2));
        }
    }

    /** The extension's own tests of its colours, where they were installed ({@code npm ci} in its folder). */
    @Test
    void itsOwnTestsPass() throws Exception {
        Path program = FOLDER.resolve("node_modules/vscode-tmgrammar-test");
        assumeTrue(Files.isDirectory(program), "the extension's tests are not installed: run npm ci in src/vscode");
        Process process;
        try {
            process = new ProcessBuilder("npm", "test").directory(FOLDER.toFile()).redirectErrorStream(true).start();
        } catch (IOException none) {
            assumeTrue(false, "there is no npm here, so the extension's own tests are left out");
            return;
        }
        String told = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertEquals(0, process.waitFor(), told);
        assertTrue(told.contains("tests/events.rules run success"), told);
    }

    @Test
    void itsVersionIsThePrograms() throws IOException {
        JsonObject extension = JsonParser.parseString(Files.readString(FOLDER.resolve("package.json"))).getAsJsonObject();
        assertEquals(Versions.PROGRAM, extension.get("version").getAsString());
    }
}
