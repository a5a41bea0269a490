package org.keeplit.gridfile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.keeplit.text.Pages;
import org.keeplit.text.ProblemPrinter;

/** Mistakes in grid files are told with file, line and what was probably meant, all in one run, and nothing outside of a file is read. */
class GridMistakesTest {
    @TempDir
    Path folder;

    private String told(String text) throws IOException {
        Path file = Files.writeString(folder.resolve("model.xml"), text);
        Imported imported = GridFiles.read(file);
        assertEquals("", imported.problems().isEmpty() ? "" : imported.text());
        return ProblemPrinter.print(imported.problems()).replace(folder + "/", "");
    }

    @Test
    void allMistakesInOneRun() throws IOException {
        String told = told(Cim.source()
                .add("ACLineSegment l-1 Conductor.length=12,5").at("l-1", "n0", "n1")
                .add("ACLineSegment l-2 Conductor.length=-3 ACLineSegment.r=x ACLineSegment.x=1").at("l-2", "n0", "n1")
                .add("Breaker b Switch.normalOpen=perhaps").at("b", "n0")
                .add("EnergyConsumer c EnergyConsumer.LoadResponse=#nothing").at("c", "n1")
                .add("EnergyConsumerPhase cp EnergyConsumerPhase.phase=@SinglePhaseKind.D EnergyConsumerPhase.EnergyConsumer=#c").text());
        assertTrue(told.contains("""
                : length of ACLineSegment l-1 is no number: “12,5” [bad-figure]
                    20 |   <cim:Conductor.length>12,5</cim:Conductor.length>
                       |   ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
                    help: did you mean 12.5?
                """), told);
        for (String other : List.of("length of ACLineSegment l-2 is -3, and must be above zero", "r of ACLineSegment l-2 is no number: “x”",
                "normalOpen of Breaker b is “perhaps”", "Breaker b has 1 terminal, and needs 2", "LoadResponse of EnergyConsumer c refers to nothing, which no file has",
                "phase of EnergyConsumerPhase cp is D")) {
            assertTrue(told.contains(other), other + " in\n" + told);
        }
    }

    @Test
    void aFigureIsOneOfTheStandardsAndNotOfALanguage() throws IOException {
        for (String figure : List.of("5D", "5f", "0x1p3", "1e999", "NaN", "+", ".", "1e")) {
            String told = told(Cim.source().add("EnergyConsumer c EnergyConsumer.p=" + figure).at("c", "n1").text());
            assertTrue(told.contains("p of EnergyConsumer c is no number: “" + figure + "”"), told);
        }
        for (String figure : List.of("5", "+5.", "-.5", "1.5E+3", "1e-3")) {
            String told = told(Cim.source().add("EnergyConsumer c EnergyConsumer.p=" + figure).at("c", "n1").text());
            assertFalse(told.contains("is no number"), told);
        }
    }

    @Test
    void aLineWithoutImpedanceIsToldWhereItStands() throws IOException {
        String told = told(Cim.source().add("ACLineSegment l Conductor.length=100").at("l", "n0", "n1").text());
        assertTrue(told.contains(": ACLineSegment l states no impedance [missing-figure]"), told);
        assertTrue(told.startsWith("model.xml:"), told);
        assertFalse(told.contains(".network"), told);
    }

    @Test
    void anAttributeWithTwoValues() throws IOException {
        String told = told(Cim.source()
                .add("EnergyConsumer c EnergyConsumer.p=1000 EnergyConsumer.p=2000").at("c", "n1")
                .add("EnergyConsumer d EnergyConsumer.p=1000 EnergyConsumer.p=1000").at("d", "n1").text());
        assertTrue(told.contains("p of EnergyConsumer c is “2000” here and “1000” in line "), told);
        assertFalse(told.contains("EnergyConsumer d"), told);
    }

    @Test
    void externalEntitiesAreRefused() throws IOException {
        Path secret = Files.writeString(folder.resolve("secret"), "the-secret");
        for (String type : List.of(
                "<!DOCTYPE rdf:RDF [<!ENTITY secret SYSTEM \"" + secret.toUri() + "\">]>",
                "<!DOCTYPE rdf:RDF SYSTEM \"" + secret.toUri() + "\">",
                "<!DOCTYPE rdf:RDF [<!ENTITY a \"aaaaaaaaaa\"><!ENTITY b \"&a;&a;&a;&a;\"><!ENTITY secret \"&b;&b;&b;&b;\">]>")) {
            String text = Cim.source().text().replace("?>\n", "?>\n" + type + "\n").replace(">source</cim:IdentifiedObject.name>", ">&secret;</cim:IdentifiedObject.name>");
            String told = told(text);
            assertTrue(told.startsWith("model.xml:2:1: the file has a document type declaration, which is refused"), told);
            assertFalse(told.contains("the-secret"), told);
        }
    }

    @Test
    void whatIsNoGridFile() throws IOException {
        assertTrue(told("").contains("[bad-xml]"));
        assertTrue(told("language 1\n").contains("[bad-xml]"));
        assertTrue(told("<html/>").contains("begins with html"));
        assertTrue(told(Cim.source().text().replace("</rdf:RDF>", "")).contains("[bad-xml]"));
        assertTrue(told(Cim.source().text().replace("CIM100", "2013/CIM-schema-cim16")).contains("CIM100 is read"));
        assertTrue(told(Cim.HEAD + Cim.END).contains("the model has no objects"));
        assertTrue(told(new Cim().add("ConnectivityNode n").text()).contains("no EnergySource"));
        assertTrue(told(Cim.source().text().replace("<cim:EnergySource rdf:ID=\"_source\">", "<cim:EnergySource>")).contains("neither rdf:ID nor rdf:about"));
        assertTrue(told(Cim.source().add("Breaker source").text()).contains("has the identifier source"));
        assertTrue(told(Cim.source().text().replace("0.1</cim:EnergySource.r>", "<cim:X rdf:ID=\"x\"/></cim:EnergySource.r>")).contains("[nested-object]"));
        Imported missing = GridFiles.read(folder.resolve("none.xml"), folder);
        assertEquals(List.of("missing-file", "unreadable"), missing.problems().stream().map(p -> p.code()).sorted().toList());
    }

    @Test
    void everyCodeHasItsPage() throws IOException {
        Set<String> codes = new TreeSet<>();
        try (Stream<Path> files = Files.list(Path.of("src/main/java/org/keeplit/gridfile"))) {
            for (Path file : files.toList()) {
                codes.addAll(Pattern.compile("\\bmark\\(\\s*\"([a-z-]+)\"").matcher(Files.readString(file)).results().map(m -> m.group(1)).collect(Collectors.toSet()));
            }
        }
        // Two are those of text files.
        codes.removeAll(Set.of("missing-file", "unreadable"));
        assertTrue(codes.size() > 10);
        assertEquals(codes, new TreeSet<>(Pages.of(GridImport.class).keySet()));
    }
}
