package org.keeplit.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.networknt.schema.InputFormat;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code import} as a user calls it. */
class ImportCommandTest {
    private static final String MODEL = "src/test/resources/feeders/cim/IEEE13.xml";

    @TempDir
    Path folder;

    private Path out;

    @BeforeEach
    void equipment() throws IOException {
        Files.createDirectories(folder.resolve("shared"));
        Files.copy(Path.of("shared/equipment/overhead.equipment"), folder.resolve("shared/overhead.equipment"));
        out = folder.resolve("networks/thirteen.network");
    }

    private Told.Ran run(String... arguments) {
        List<String> all = new ArrayList<>(List.of("import"));
        all.addAll(Arrays.asList(arguments));
        return Told.run(all.toArray(new String[0]));
    }

    @Test
    void aModelBecomesANetwork() throws IOException {
        Told.Ran ran = run(MODEL, "--out", out.toString());
        assertEquals(ExitCode.PROVED, ran.code(), ran.err());
        assertEquals("", ran.err());
        Told.assertTold("import", folder, ran.out() + "\n=== thirteen.network\n" + Files.readString(out));
        assertEquals(ExitCode.PROVED, Told.run("format", "--check", out.toString()).code());
        try (Stream<Path> beside = Files.list(out.getParent())) {
            assertEquals(List.of(out), beside.toList());
        }
    }

    @Test
    void jsonKeepsToItsSchema() throws IOException {
        Told.Ran ran = run(MODEL, "--out", out.toString(), "--format", "json");
        assertEquals(ExitCode.PROVED, ran.code(), ran.err());
        String schema = Told.run("schema", "import").out();
        var validator = SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12).getSchema(schema);
        assertEquals(List.of(), validator.validate(ran.out(), InputFormat.JSON).stream().map(Object::toString).toList());
        assertFalse(ran.out().contains(folder.toString()));
        Path wrong = Files.writeString(folder.resolve("wrong.xml"), "<html/>");
        Told.Ran mistaken = run(wrong.toString(), "--out", folder.resolve("w.network").toString(), "--format", "json");
        assertEquals(ExitCode.MISTAKES, mistaken.code());
        assertEquals(List.of(), validator.validate(mistaken.out(), InputFormat.JSON).stream().map(Object::toString).toList());
        assertFalse(Files.exists(folder.resolve("w.network")));
    }

    @Test
    void nothingIsOverwritten() throws IOException {
        Files.createDirectories(out.getParent());
        Files.writeString(out, "mine");
        Told.Ran ran = run(MODEL, "--out", out.toString());
        assertEquals(ExitCode.USAGE, ran.code());
        assertTrue(ran.err().contains("is there already, and nothing is overwritten"), ran.err());
        assertEquals("mine", Files.readString(out));
    }

    @Test
    void whatCannotBeUnderstoodIsSaid() {
        for (List<String> wrong : List.of(
                List.of("--out", folder.resolve("thirteen.txt").toString(), "does not end in .network"),
                List.of("--out", folder.resolve("13.network").toString(), "is no name"),
                List.of("--out", folder.resolve("end.network").toString(), "is a word of the language"),
                List.of("--out", out.toString(), "--equipment", "overhaed", "no equipment list overhaed"),
                List.of("--out", out.toString(), "--kind", "Recloser=electronic-reclosr", "did you mean electronic-recloser?"),
                List.of("--out", out.toString(), "--kind", "Reclosers=recloser", "did you mean Recloser?"),
                List.of("--out", out.toString(), "--frequency", "0", "above zero"),
                List.of("--out", out.toString(), "--format", "sarif", "text or json"))) {
            List<String> arguments = new ArrayList<>(wrong.subList(0, wrong.size() - 1));
            arguments.add(0, MODEL);
            Told.Ran ran = run(arguments.toArray(new String[0]));
            assertEquals(ExitCode.USAGE, ran.code(), wrong.toString());
            assertTrue(ran.err().contains(wrong.get(wrong.size() - 1)), ran.err());
            assertFalse(Files.exists(out));
        }
    }

    @Test
    void aKindCanBeChosen() throws IOException {
        Told.Ran ran = run(MODEL, "--out", out.toString(), "--kind", "Recloser=electronic-recloser", "--kind", "Fuse=load-break-cutout");
        assertEquals(ExitCode.PROVED, ran.code(), ran.err());
        assertTrue(Files.readString(out).matches("(?s).*\nelectronic-recloser +rec1 .*"), Files.readString(out));
        assertTrue(Files.readString(out).matches("(?s).*\nload-break-cutout +fuse1 .*"), Files.readString(out));
    }

    @Test
    void strictAsksForTheWholeFeeder() throws IOException {
        String text = Files.readString(Path.of(MODEL)).replace("cim:Fuse", "cim:SeriesCompensator");
        Path model = Files.writeString(folder.resolve("model.xml"), text);
        assertEquals(ExitCode.BROKEN, run(model.toString(), "--out", out.toString(), "--strict").code());
        assertTrue(Files.exists(out));
    }
}
