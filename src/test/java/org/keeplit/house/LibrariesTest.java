package org.keeplit.house;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Element;

/** The list of libraries in DEVELOPERS.md is that of the build: every one, with its version, a licence and its size. */
class LibrariesTest {
    private static String chapter() throws IOException {
        String all = Files.readString(Path.of("DEVELOPERS.md"));
        String chapter = all.substring(all.indexOf("## Libraries"));
        return chapter.substring(0, chapter.indexOf("\n## "));
    }

    @Test
    void everyLibraryThatComesWithTheProgramIsListed() throws IOException {
        Map<String, String> listed = new TreeMap<>();
        Matcher row = Pattern.compile("(?m)^\\| `([^`]+)` \\| (\\S+) \\| ([^|]+) \\| ([0-9,]+) \\|").matcher(chapter());
        while (row.find()) {
            assertTrue(!row.group(3).isBlank(), row.group());
            listed.put(row.group(1) + "-" + row.group(2) + ".jar", row.group(4).replace(",", "") + " kB");
        }
        Map<String, String> used = new TreeMap<>();
        for (String jar : System.getProperty("keeplit.runtime.path").split(File.pathSeparator)) {
            used.put(Path.of(jar).getFileName().toString(), Math.round(Files.size(Path.of(jar)) / 1000.0) + " kB");
        }
        assertTrue(used.size() > 20, used.toString());
        assertEquals(used, listed);
    }

    @Test
    void everyLibraryThatThePomNamesIsNamed() throws Exception {
        String chapter = chapter();
        var all = DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(new File("pom.xml")).getElementsByTagName("dependency");
        for (int i = 0; i < all.getLength(); i++) {
            Element one = (Element) all.item(i);
            String name = one.getElementsByTagName("artifactId").item(0).getTextContent();
            assertTrue(name.endsWith("-bom") || chapter.contains("`" + name + "`"), name + " is not in the list of libraries");
        }
        assertTrue(all.getLength() > 15);
    }
}
