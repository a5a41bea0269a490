package org.keeplit.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.common.hash.Hashing;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.UnaryOperator;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.keeplit.recheck.ProofReader;
import org.keeplit.text.Pages;

/** {@code check --proofs} and {@code recheck} as a user calls them. */
class RecheckCommandTest {
    private static final String PROCEDURE =
            """
            language 1
            procedure OUT revision 3
            title "A spur off and on"
            keeps stick-work
            for switching device G
            crew
              west "Lineman", in charge
            proved on spur with gang as G
            stage "All"
              together
                for each phase P of G
                  look: west proves G closed on P
                end
                west records "weather"
              end
              opening: west opens G
              closing: west closes G
            """;

    private static final String NAME = "proofs/out-on-spur-with-gang-as-g.proof";

    @TempDir
    Path folder;

    private String checked;

    @BeforeEach
    void prove() throws IOException {
        Workspace.fill(folder, Workspace.RULES, Workspace.EXAMPLES);
        String network = Workspace.EXAMPLES.substring(Workspace.EXAMPLES.indexOf("network spur \"")).replace("network spur", "language 1\nnetwork spur");
        Files.writeString(folder.resolve("shared/spur.network"), network);
        Files.writeString(folder.resolve("out.procedure"), PROCEDURE);
        Told.Ran ran = check();
        assertEquals(ExitCode.PROVED, ran.code(), ran.err() + ran.out());
        checked = ran.out().lines().filter(line -> line.startsWith("Proofs in ")).findFirst().orElseThrow();
    }

    private Told.Ran check() {
        return Told.run("check", folder.resolve("out.procedure").toString(), "--proofs", folder.resolve("proofs").toString());
    }

    private Told.Ran recheck() {
        return Told.run("recheck", folder.resolve("proofs").toString(), "--with", folder.resolve("out.procedure").toString());
    }

    private void change(String file, UnaryOperator<String> how) throws IOException {
        String text = Files.readString(folder.resolve(file));
        String changed = how.apply(text);
        assertFalse(changed.equals(text), "nothing was changed");
        Files.writeString(folder.resolve(file), changed);
    }

    /** A line changed on purpose, and the seal with it. */
    private static UnaryOperator<String> sealed(UnaryOperator<String> how) {
        return text -> {
            String lines = how.apply(text.substring(0, text.indexOf("seal ")));
            return lines + "seal " + Hashing.sha256().hashString(lines, StandardCharsets.UTF_8) + "\n";
        };
    }

    private void refused(int code, String words) {
        Told.Ran ran = recheck();
        assertEquals(code, ran.code(), ran.out() + ran.err());
        assertTrue((ran.out() + ran.err()).contains(words), ran.out() + ran.err());
        assertTrue((ran.out() + ran.err()).contains("out-on-spur-with-gang-as-g.proof"), ran.out() + ran.err());
        assertFalse(ran.out().contains("confirmed"), ran.out());
    }

    @Test
    void aProofIsConfirmed() throws IOException {
        Told.Ran ran = recheck();
        assertEquals(ExitCode.PROVED, ran.code(), ran.out() + ran.err());
        Told.assertTold("recheck", folder, checked + "\n=== " + NAME + "\n" + Files.readString(folder.resolve(NAME)) + "=== recheck\n" + ran.out());
        assertTrue(ran.err().matches("re-checked \\S+\\.proof in [0-9.]+ s\\s+"), ran.err());
    }

    private String told(String format, String... more) {
        Path here = Path.of("").toAbsolutePath();
        return Told.run(Stream.concat(
                        Stream.of("recheck", folder.resolve("proofs").toString(), "--with", folder.resolve("out.procedure").toString(), "--format", format), Stream.of(more))
                .toArray(String[]::new)).out().replace(here.relativize(folder) + "/", "");
    }

    /** What comes of a proof in each of the formats for other programs. */
    @Test
    void otherProgramsAreToldBySchema() throws IOException {
        assertSound(told("json"), "\"status\": \"confirmed\"");
        assertSound(told("json", "--max-seconds", "0"), "\"status\": \"undecided\"");
        assertTrue(told("junit").contains("failures=\"0\""), told("junit"));
        change(NAME, sealed(text -> text.replaceFirst("(?m)^state 0-1,4-5 : 4 5\n", "").replaceFirst("states (\\d+)", "states 17")));
        assertSound(told("json"), "\"status\": \"refused\"");
        Told.assertTold("recheck-json", folder, told("json"));
        assertTrue(told("junit").contains("failures=\"1\""), told("junit"));
        assertEquals(List.of(), FormatsCommandTest.mistakes(FormatsCommandTest.sarif(), told("sarif")));
        change(NAME, text -> text.substring(0, text.length() * 2 / 3));
        assertSound(told("json"), "\"code\": \"proof-cut-short\"");
    }

    private static void assertSound(String json, String part) {
        assertEquals(List.of(), FormatsCommandTest.mistakes(FormatsCommandTest.schema("recheck"), json));
        assertTrue(json.contains(part), json);
    }

    @Test
    void theSameProofIsWrittenAgain() throws IOException {
        String once = Files.readString(folder.resolve(NAME));
        Files.move(folder.resolve("proofs"), folder.resolve("before"));
        check();
        assertEquals(once, Files.readString(folder.resolve(NAME)));
        Told.Ran again = check();
        assertEquals(ExitCode.USAGE, again.code());
        assertTrue(again.err().contains("nothing is overwritten"), again.err());
    }

    @Test
    void anotherInputIsRefusedByItsName() throws IOException {
        change("out.procedure", text -> text.replace("closing: west closes G", "closing: west closes G\n  west records \"time\""));
        refused(ExitCode.BROKEN, "out.procedure was changed since the proof was written");
    }

    @Test
    void anotherProcedureIsRefused() throws IOException {
        change("out.procedure", text -> text.replace("procedure OUT", "procedure IN"));
        refused(ExitCode.BROKEN, "it is not among the files that were read; there is IN on spur with gang as G");
    }

    @Test
    void aHeadThatIsNotSoIsRefused() throws IOException {
        change(NAME, sealed(text -> text.replaceFirst("(?m)^revision .*$", "revision 9")
                .replace("\nevents ", "\nrulebook others\nevents ").replaceFirst("(?m)^file [0-9a-f]{12} ", "file 000000000000 ")));
        refused(ExitCode.BROKEN, "it says revision 9, and the procedure has revision ");
        refused(ExitCode.BROKEN, "the rulebooks that it names are not those that the procedure keeps");
        refused(ExitCode.BROKEN, "the files that it lists are not those that were read");
    }

    @Test
    void aProofWithoutAValueAtTheStartIsRefused() throws IOException {
        change(NAME, sealed(text -> text.replaceAll("(?m)^start pole .*\n", "")));
        refused(ExitCode.BROKEN, "it does not say how pole gang A stands at the start");
    }

    @Test
    void aProofOfFewerEventsIsRefused() throws IOException {
        change(NAME, sealed(text -> text.replace("events 1", "events 0")));
        refused(ExitCode.BROKEN, "it says that at most 0 events may happen, and it is re-checked with 1");
    }

    @Test
    void twoLinesThatChangedPlacesAreRefused() throws IOException {
        change(NAME, sealed(text -> text.replaceFirst("(?m)^(state .*\n)(state .*\n)", "$2$1")));
        refused(ExitCode.MISTAKES, "this line does not stand where it is written");
    }

    @Test
    void aStateTakenOutIsRefused() throws IOException {
        change(NAME, sealed(text -> text.replaceFirst("(?m)^state 0-1,4-5 : 4 5\n", "").replaceFirst("states (\\d+)", "states 17")));
        refused(ExitCode.BROKEN, "a state that may come up is missing from it");
    }

    @Test
    void aStatePutInIsRefused() throws IOException {
        change(NAME, sealed(text -> text + "state 0 :\n"));
        refused(ExitCode.MISTAKES, "it says that it has ");
    }

    @Test
    void aLineChangedWithoutTheSealIsRefused() throws IOException {
        change(NAME, text -> text.replace("events 1", "events 0"));
        refused(ExitCode.MISTAKES, "[proof-changed]");
    }

    @Test
    void aLineThatIsNoneIsRefused() throws IOException {
        change(NAME, sealed(text -> text.replace("events 1", "events many")));
        refused(ExitCode.MISTAKES, "[proof-line]");
    }

    @Test
    void anotherFormIsRefused() throws IOException {
        change(NAME, sealed(text -> text.replace("keeplit proof 2", "keeplit proof 3")));
        refused(ExitCode.MISTAKES, "this is a proof of another form: 3");
    }

    @Test
    void whatWasCutShortIsRefused() throws IOException {
        change(NAME, text -> text.substring(0, text.length() * 2 / 3));
        refused(ExitCode.MISTAKES, "[proof-cut-short]");
        change(NAME, text -> "");
        refused(ExitCode.MISTAKES, "this is no proof");
    }

    @Test
    void whatIsNotThereIsSaid() throws IOException {
        Told.Ran ran = Told.run("recheck", folder.resolve("none.proof").toString(), "--with", folder.toString());
        assertEquals(ExitCode.MISTAKES, ran.code());
        assertTrue(ran.err().contains("none.proof: there is no such file [missing-file]"), ran.err());
        Files.createDirectory(folder.resolve("empty"));
        assertTrue(Told.run("recheck", folder.resolve("empty").toString(), "--with", folder.toString()).err().contains("there is no proof in"));
    }

    @Test
    void whatIsInTheWayIsSaidBeforeAnythingIsProved() throws IOException {
        Files.createDirectories(folder.resolve("proofs"));
        Files.writeString(folder.resolve("proofs/mine"), "kept");
        Told.Ran ran = Told.run("check", folder.resolve("none.procedure").toString(), "--proofs", folder.resolve("proofs").toString());
        assertEquals(ExitCode.USAGE, ran.code(), "else it had told that there is no such procedure");
        assertTrue(ran.err().contains("nothing is overwritten"), ran.err());
    }

    @Test
    void everyCodeHasItsPage() throws IOException {
        Set<String> codes = new TreeSet<>();
        try (Stream<Path> files = Files.list(Path.of("src/main/java/org/keeplit/recheck"))) {
            for (Path file : files.toList()) {
                Pattern.compile("\"(proof-[a-z-]+)\"").matcher(Files.readString(file)).results().forEach(m -> codes.add(m.group(1)));
            }
        }
        assertEquals(codes, new TreeSet<>(Pages.of(ProofReader.class).keySet()));
        assertTrue(Told.run("explain", "proof-changed").out().startsWith("proof-changed\n"));
    }
}
