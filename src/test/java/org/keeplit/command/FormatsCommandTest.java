package org.keeplit.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;
import org.keeplit.exchange.Schemas;
import org.keeplit.text.Versions;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

/** What commands write for other programs: against the schemas, and against one expected file a format. */
class FormatsCommandTest {
    private static final String NETWORK =
            """
            language 1
            network spur "Two switches, each with a bypass"
            uses overhead
            system voltage 12.47 kV, frequency 60 Hz
            source bus at s-0, phases ABC, supply grid
            switch near from s-0 to s-1, phases ABC, at pole-1
            bypass-switch near-by from s-0 to s-1, phases ABC, ganged, open, at pole-1
            load mill at s-1, phases ABC, 300 kW, 12 customers, critical "the <mill> & 'saw'"
            switch far from s-1 to s-2, phases ABC, at pole-2
            bypass-switch far-by from s-1 to s-2, phases ABC, ganged, open, at pole-2
            load hall at s-2, phases ABC, 300 kW, 5 customers
            """;

    private static final String RULES =
            """
            language 1
            rulebook supply revision 1
            rule supplied
              always every load L is supplied
              says "{L} loses supply"
              because "Nobody goes without."
            rule nobody-aloft
              while any person W is aloft at any site S
              require S is not live
              says "{W} is up"
              because "Test."
              citation "a made source (1)"
            rule looked-at
              severity caution
              before opening any switching device D on phase P
              require D is proved closed on P
              says "nobody looked at {D} on {P}"
              because "Test."
            """;

    private static final String PROCEDURE =
            """
            language 1
            procedure P revision 1
            title "A switch out by its bypass"
            keeps supply
            for switch S and bypass-switch Y
            crew
              op "Operator", in charge
            proved on spur with near as S and near-by as Y
            starts with
              Y is open
            stage "All"
              bypass: op closes Y
              open: op opens S
            """;

    private static final String BROKEN =
            PROCEDURE.replace("  bypass: op closes Y\n  open: op opens S\n", "  open: op opens S\n  bypass: op closes Y\n");

    private static final String VARIANT =
            """

            variant P-a "Opened first" of P
              step open before step bypass
              must fail on supplied at open
            """;

    private static final String EXAMPLES =
            """
            language 1
            examples supply for supply
            on network spur
            example "Left alone" of rule supplied
              do
                west proves near closed
              must hold
            example "Out" of rule supplied
              do
                opening: west opens near
              must hold
            """;

    @TempDir
    Path folder;

    @BeforeEach
    void write() throws IOException {
        Files.writeString(folder.resolve("spur.network"), NETWORK);
        Files.writeString(folder.resolve("supply.rules"), RULES);
        Files.writeString(folder.resolve("p.procedure"), PROCEDURE + VARIANT);
        Files.copy(Path.of("shared/equipment/overhead.equipment"), folder.resolve("overhead.equipment"));
    }

    private Told.Ran run(String format, String... arguments) {
        List<String> all = new ArrayList<>(Arrays.asList(arguments));
        all.addAll(List.of(folder.toString(), "--format", format));
        return Told.run(all.toArray(String[]::new));
    }

    private Path relative() {
        return Path.of("").toAbsolutePath().relativize(folder);
    }

    private static void assertValid(Schema schema, String json) {
        assertEquals(List.of(), mistakes(schema, json), json);
    }

    /** {@return how a document goes against a schema} */
    static List<String> mistakes(Schema schema, String json) {
        return schema.validate(json, InputFormat.JSON).stream().map(Object::toString).toList();
    }

    static Schema schema(String command) {
        Told.Ran ran = Told.run("schema", command);
        return SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12).getSchema(ran.out());
    }

    static Schema sarif() throws IOException {
        // The schema of the standard, as schemastore.org keeps it.
        String text = Files.readString(Path.of("src/test/resources/outside/sarif/sarif-schema-2.1.0.json"));
        return SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_4).getSchema(text);
    }

    private void assertNoPlaces(String text) {
        assertFalse(text.replace(relative().toString(), "").contains(folder.toString()), text);
        assertFalse(text.contains(Path.of("").toAbsolutePath().toString()), text);
    }

    @TestFactory
    Stream<DynamicTest> theJsonOfEachCommandIsValidBySchema() throws IOException {
        Files.writeString(folder.resolve("s.examples"), EXAMPLES);
        return Stream.of(
                        new String[] {"check"}, new String[] {"check", "--why"}, new String[] {"test"}, new String[] {"order"},
                        new String[] {"slips"}, new String[] {"retreat"}, new String[] {"plan"}, new String[] {"sweep"}, new String[] {"mend"},
                        new String[] {"why", "supplied", "at", "open", "in", "P"})
                .map(command -> DynamicTest.dynamicTest(String.join(" ", command), () -> {
                    Told.Ran ran = run("json", command);
                    assertValid(schema(command[0]), ran.out());
                    assertNoPlaces(ran.out());
                    assertEquals(ran.out(), run("json", command).out());
                    Files.writeString(folder.resolve("p.procedure"), BROKEN + VARIANT);
                    assertValid(schema(command[0]), run("json", command).out());
                    Files.writeString(folder.resolve("p.procedure"), PROCEDURE + "  open: op opems T\n");
                    Told.Ran mistaken = run("json", command);
                    assertValid(schema(command[0]), mistaken.out());
                    assertTrue(mistaken.out().contains("unknown-"), mistaken.out());
                    assertNoPlaces(mistaken.out());
                    Files.writeString(folder.resolve("p.procedure"), PROCEDURE + VARIANT);
                }));
    }

    /** What the exit code calls broken is no passed case: under {@code --strict} a caution, and a rule whose case never came up. */
    @Test
    void whatAStrictRunRefusesIsNoPassedCase() throws Exception {
        Told.Ran lax = run("junit", "check");
        assertEquals(ExitCode.PROVED, lax.code());
        assertFalse(lax.out().contains("<failure"), lax.out());
        Told.Ran strict = run("junit", "check", "--strict");
        assertEquals(ExitCode.BROKEN, strict.code());
        assertCounted(parsed(strict.out()));
        String cases = strict.out().replaceAll("\\s+", " ");
        assertTrue(cases.contains("name=\"looked-at\"> <failure"), cases);
        assertTrue(cases.contains("name=\"nobody-aloft\"> <failure"), cases);
        assertTrue(run("sarif", "check", "--strict").out().contains("\"level\": \"error\""));
        assertValid(sarif(), run("sarif", "check", "--strict").out());
    }

    /** A fix in SARIF, done to the file as the standard says, gives a procedure that holds. */
    @Test
    void theFixesOfABrokenProcedureMendIt() throws IOException {
        Files.writeString(folder.resolve("p.procedure"), BROKEN);
        JsonObject run = JsonParser.parseString(run("sarif", "mend").out()).getAsJsonObject().getAsJsonArray("runs").get(0).getAsJsonObject();
        JsonObject change = run.getAsJsonArray("results").get(0).getAsJsonObject().getAsJsonArray("fixes").get(0).getAsJsonObject()
                .getAsJsonArray("artifactChanges").get(0).getAsJsonObject();
        assertTrue(change.getAsJsonObject("artifactLocation").get("uri").getAsString().endsWith("p.procedure"));
        List<String> lines = new ArrayList<>(BROKEN.lines().map(l -> l + "\n").toList());
        List<JsonElement> replacements = change.getAsJsonArray("replacements").asList();
        // From the foot up, so that line numbers stay as they are told.
        for (int i = replacements.size() - 1; i >= 0; i--) {
            JsonObject one = replacements.get(i).getAsJsonObject();
            JsonObject region = one.getAsJsonObject("deletedRegion");
            int from = region.get("startLine").getAsInt() - 1;
            lines.subList(from, region.get("endLine").getAsInt() - 1).clear();
            lines.add(from, one.getAsJsonObject("insertedContent").get("text").getAsString());
        }
        Files.writeString(folder.resolve("p.procedure"), String.join("", lines));
        assertEquals(ExitCode.PROVED, run("text", "check").code());
    }

    @TestFactory
    Stream<DynamicTest> theSarifAndJunitOfEachCommandAreValid() throws IOException {
        Files.writeString(folder.resolve("s.examples"), EXAMPLES);
        Schema sarif = sarif();
        return Stream.of("check", "test", "order", "slips", "retreat", "plan", "sweep", "mend")
                .map(command -> DynamicTest.dynamicTest(command, () -> {
                    for (String text : List.of(PROCEDURE + VARIANT, BROKEN + VARIANT, PROCEDURE + "  open: op opems T\n")) {
                        Files.writeString(folder.resolve("p.procedure"), text);
                        String out = run("sarif", command).out();
                        assertValid(sarif, out);
                        assertNoPlaces(out);
                        assertNoPlaces(run("junit", command).out());
                        assertCounted(parsed(run("junit", command).out()));
                    }
                }));
    }

    /** Real procedures: calls into other files, reactions, figures, several starts. */
    @Tag("long")
    @TestFactory
    Stream<DynamicTest> whatIsToldOfShippedProceduresIsValid() throws IOException {
        Schema sarif = sarif();
        return Stream.of("check procedures/recloser-variants.procedure", "check procedures/fuse.procedure --why",
                        "slips procedures/fuse.procedure", "order procedures/fuse.procedure", "retreat procedures/fuse.procedure",
                        "plan procedures/fuse.procedure", "test shared/rules/no-interruption.rules")
                .map(line -> DynamicTest.dynamicTest(line, () -> {
                    String[] words = line.split(" ");
                    String[] json = Stream.concat(Stream.of(words), Stream.of("--format", "json")).toArray(String[]::new);
                    Told.Ran ran = Told.run(json);
                    assertEquals("", ran.err());
                    assertValid(schema(words[0]), ran.out());
                    if (words[0].equals("check")) {
                        json[json.length - 1] = "sarif";
                        assertValid(sarif, Told.run(json).out());
                    }
                }));
    }

    private static Document parsed(String xml) throws Exception {
        return DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(new InputSource(new StringReader(xml)));
    }

    /** The counts of each suite are those of its cases. */
    private static void assertCounted(Document document) {
        NodeList suites = document.getElementsByTagName("testsuite");
        for (int i = 0; i < suites.getLength(); i++) {
            Element suite = (Element) suites.item(i);
            assertEquals(suite.getElementsByTagName("testcase").getLength(), Integer.parseInt(suite.getAttribute("tests")));
            assertEquals(suite.getElementsByTagName("failure").getLength(), Integer.parseInt(suite.getAttribute("failures")));
            assertEquals(suite.getElementsByTagName("error").getLength(), Integer.parseInt(suite.getAttribute("errors")));
            assertEquals(suite.getElementsByTagName("skipped").getLength(), Integer.parseInt(suite.getAttribute("skipped")));
            assertFalse(suite.hasAttribute("timestamp"));
        }
    }

    @Test
    void aBrokenCheckAsJson() throws IOException {
        Files.writeString(folder.resolve("p.procedure"), BROKEN);
        Told.assertTold("check-json", relative(), run("json", "check").out());
    }

    @Test
    void aBrokenCheckAsSarif() throws IOException {
        Files.writeString(folder.resolve("p.procedure"), BROKEN);
        Told.Ran ran = run("sarif", "check");
        Told.assertTold("check-sarif", relative(), ran.out());
        assertEquals(ExitCode.BROKEN, ran.code());
    }

    @Test
    void aBrokenCheckAsJunit() throws Exception {
        Files.writeString(folder.resolve("p.procedure"), BROKEN);
        Told.Ran ran = run("junit", "check");
        Told.assertTold("check-junit", relative(), ran.out());
        Element failure = (Element) parsed(ran.out()).getElementsByTagName("failure").item(0);
        assertEquals("supply/supplied", failure.getAttribute("type"));
    }

    @Test
    void whatCouldNotBeDecidedIsOpenAndAnError() throws Exception {
        String sarif = run("sarif", "check", "--max-states", "2").out();
        assertTrue(sarif.contains("\"kind\": \"open\""), sarif);
        assertFalse(sarif.contains("\"kind\": \"pass\""), sarif);
        Document junit = parsed(run("junit", "check", "--max-states", "2").out());
        assertTrue(junit.getElementsByTagName("error").getLength() > 0);
        assertEquals(0, junit.getElementsByTagName("failure").getLength());
    }

    @Test
    void aProcedureThatIsNotLookedAtToTheEndIsOpenToo() throws Exception {
        for (String command : List.of("slips", "order", "retreat", "mend")) {
            String sarif = run("sarif", command, "--max-states", "2").out();
            assertTrue(sarif.contains("\"kind\": \"open\""), sarif);
            assertFalse(sarif.contains("\"kind\": \"fail\""), sarif);
            Document junit = parsed(run("junit", command, "--max-states", "2").out());
            assertEquals(1, junit.getElementsByTagName("error").getLength());
            String json = run("json", command, "--max-states", "2").out();
            assertTrue(json.contains("\"cut\": true"), json);
        }
    }

    @Test
    void anExplanationIsNoCase() {
        assertEquals(ExitCode.USAGE, run("sarif", "why", "supplied", "at", "open", "in", "P").code());
    }

    @Test
    void aSchemaThatIsNotThereIsSaid() {
        Told.Ran ran = Told.run("schema", "chek");
        assertEquals(ExitCode.USAGE, ran.code());
        assertTrue(ran.err().contains("did you mean check?"), ran.err());
    }

    @Test
    void everySchemaIsPublishedUnderItsName() {
        for (String command : Schemas.COMMANDS) {
            assertTrue(Told.run("schema", command).out().contains("\"$id\": \"" + Schemas.id(command) + "\""));
        }
    }

    @Test
    void theVersionIsThatOfTheBuild() throws Exception {
        Document pom = DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(Path.of("pom.xml").toFile());
        NodeList top = pom.getDocumentElement().getChildNodes();
        String version = Stream.iterate(0, i -> i + 1).limit(top.getLength()).map(top::item)
                .filter(n -> n.getNodeName().equals("version")).findFirst().orElseThrow().getTextContent();
        assertEquals(version, Versions.PROGRAM);
    }
}
