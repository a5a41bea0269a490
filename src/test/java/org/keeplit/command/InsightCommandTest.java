package org.keeplit.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The commands that tell what else follows from the states, as a user calls them. */
class InsightCommandTest {
    private static final String NETWORK =
            """
            language 1
            network spur "Two switches, each with a bypass"
            uses overhead
            system voltage 12.47 kV, frequency 60 Hz
            source bus at s-0, phases ABC, supply grid
            switch near from s-0 to s-1, phases ABC, at pole-1
            bypass-switch near-by from s-0 to s-1, phases ABC, ganged, open, at pole-1
            load mill at s-1, phases ABC, 300 kW, 12 customers
            switch far from s-1 to s-2, phases ABC, at pole-2
            bypass-switch far-by from s-1 to s-2, phases ABC, ganged, open, at pole-2
            load hall at s-2, phases ABC, 300 kW, 5 customers
            switch alone from s-2 to s-3, phases ABC, at pole-3
            load barn at s-3, phases ABC, 30 kW, 1 customer
            """;

    private static final String RULES =
            """
            language 1
            rulebook supply revision 1
            rule supplied
              always every load L is supplied
              says "{L} loses supply"
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

    @TempDir
    Path folder;

    @BeforeEach
    void write() throws IOException {
        Files.writeString(folder.resolve("spur.network"), NETWORK);
        Files.writeString(folder.resolve("supply.rules"), RULES);
        Files.writeString(folder.resolve("p.procedure"), PROCEDURE);
        Files.copy(Path.of("shared/equipment/overhead.equipment"), folder.resolve("overhead.equipment"));
    }

    private Told.Ran run(String... arguments) {
        String[] all = Arrays.copyOf(arguments, arguments.length + 1);
        all[arguments.length] = folder.toString();
        return Told.run(all);
    }

    @Test
    void slips() throws IOException {
        Told.Ran ran = run("slips", "--all");
        Told.assertTold("slips", folder, ran.out());
        assertEquals(ExitCode.PROVED, ran.code(), ran.err());
    }

    @Test
    void order() throws IOException {
        Told.Ran ran = run("order");
        Told.assertTold("order", folder, ran.out());
        assertEquals(ExitCode.PROVED, ran.code(), ran.err());
    }

    @Test
    void retreat() throws IOException {
        Told.Ran ran = run("retreat");
        Told.assertTold("retreat", folder, ran.out());
        assertEquals(ExitCode.PROVED, ran.code(), ran.err());
    }

    @Test
    void whatWasNotLookedAtToTheEndIsUndecided() {
        for (String command : List.of("slips", "order", "retreat", "mend")) {
            Told.Ran ran = run(command, "--max-states", "2");
            assertEquals(ExitCode.UNDECIDED, ran.code(), ran.out());
            assertTrue(ran.out().contains(": undecided, a limit was reached before it was known whether it holds"), ran.out());
        }
    }

    @Test
    void plan() throws IOException {
        Files.writeString(
                folder.resolve("p.procedure"),
                PROCEDURE.replace("  bypass: op closes Y\n  open: op opens S\n", "  open: op opens S\n  bypass: op closes Y\n")
                        + "ends with\n  S is open\n");
        Told.Ran ran = run("plan");
        Told.assertTold("plan", folder, ran.out());
        assertEquals(ExitCode.PROVED, ran.code(), ran.err());
    }

    @Test
    void sweep() throws IOException {
        Told.Ran ran = run("sweep", "--all");
        Told.assertTold("sweep", folder, ran.out());
        // One place takes the switch of one pole and the bypass of the next.
        assertEquals(ExitCode.BROKEN, ran.code(), ran.err());
        assertEquals(ran.out(), run("sweep", "--all", "--threads", "1").out());
        assertEquals(ran.out(), run("sweep", "--all", "--threads", "4").out());
    }

    @Test
    @Timeout(value = 60, unit = TimeUnit.SECONDS)
    void aSweepGoesOnFromItsResults() throws IOException {
        Path results = folder.resolve("results.tsv");
        Told.Ran first = run("sweep", "--all", "--results", results.toString());
        List<String> lines = Files.readAllLines(results);
        assertEquals(first.out().lines().filter(l -> l.contains("  spur with")).count() + 1, lines.size());
        // A line that was cut off is done again, and nothing else is.
        Files.write(results, lines.subList(0, 2));
        Files.writeString(results, Files.readString(results) + "HOLDS\tP\tspur with");
        Files.writeString(results, Files.readString(results) + "\n");
        Told.Ran again = run("sweep", "--all", "--results", results.toString());
        assertEquals(first.out(), again.out());
        assertTrue(again.err().contains("1 line does not bear the seal of this sweep (3)"), again.err());
        assertEquals(lines.stream().sorted().toList(), Files.readAllLines(results).stream().sorted().toList());
        // So is a line that somebody edited, and one that was cut off within the line.
        Files.writeString(results, String.join("\n", lines).replaceFirst("BREAKS|DOES_NOT_APPLY", "HOLDS"));
        Told.Ran edited = run("sweep", "--all", "--results", results.toString());
        assertEquals(first.out(), edited.out());
        assertTrue(edited.err().contains("1 line does not bear the seal of this sweep"), edited.err());
        assertEquals(lines.stream().sorted().toList(), Files.readAllLines(results).stream().sorted().toList());
        Files.writeString(results, Files.readString(results).substring(0, Files.readString(results).length() - 5));
        assertEquals(first.out(), run("sweep", "--all", "--results", results.toString()).out());
        assertEquals(lines.stream().sorted().toList(), Files.readAllLines(results).stream().sorted().toList());
        // With other files it is another sweep.
        Files.writeString(folder.resolve("supply.rules"), RULES.replace("Test.", "Another."));
        Told.Ran other = run("sweep", "--results", results.toString());
        assertEquals(ExitCode.USAGE, other.code());
        assertTrue(other.err().contains("is of a sweep over other files"), other.err());
        Files.writeString(results, "not ours\n");
        Told.Ran foreign = run("sweep", "--results", results.toString());
        assertTrue(foreign.err().contains("is not a file of a sweep"), foreign.err());
        assertEquals("not ours\n", Files.readString(results));
    }

    private void broken() throws IOException {
        Files.writeString(
                folder.resolve("p.procedure"),
                PROCEDURE.replace("  bypass: op closes Y\n  open: op opens S\n", "  open: op opens S\n  bypass: op closes Y\n"));
    }

    @Test
    void mend() throws IOException {
        broken();
        Told.Ran ran = run("mend");
        Told.assertTold("mend", folder, ran.out());
        assertEquals(ExitCode.BROKEN, ran.code(), ran.err());
        // What is proposed is what holds, and nothing was written.
        assertTrue(Files.readString(folder.resolve("p.procedure")).contains("open: op opens S\n  bypass: op closes Y"));
        assertEquals(ExitCode.PROVED, runOn(PROCEDURE, "check").code());
        assertEquals(ExitCode.PROVED, run("mend").code());
    }

    @Test
    void mendOfAVariantTakesItsChangeBack() throws IOException {
        String variant =
                """

                variant P-a "Opened first" of P
                  step open before step bypass
                  must fail on supplied at open
                """;
        Told.Ran ran = runOn(PROCEDURE + variant, "mend", "--variants");
        assertTrue(ran.out().contains("takes back: step open before step bypass"), ran.out());
    }

    @Test
    void whatNoSmallChangeMendsIsSaid() throws IOException {
        Files.writeString(folder.resolve("spur.network"), NETWORK.replace("bypass-switch near-by from s-0", "bypass-switch near-by from s-2"));
        Told.Ran ran = run("mend");
        // The step that opens could be left out, but then nothing is done: it is the end that says what is wanted.
        assertEquals(ExitCode.BROKEN, ran.code());
        Files.writeString(folder.resolve("p.procedure"), PROCEDURE + "ends with\n  S is open\n");
        assertTrue(run("mend").out().contains("no small change was found"), ran.out());
    }

    private Told.Ran runOn(String procedure, String... arguments) throws IOException {
        Files.writeString(folder.resolve("p.procedure"), procedure);
        return run(arguments);
    }

    @Test
    void aLimitOfNothingIsNone() {
        for (String command : List.of("check", "slips", "order", "retreat", "mend", "plan", "sweep")) {
            Told.Ran ran = run(command, "--max-states", "-1");
            assertEquals(ExitCode.USAGE, ran.code(), command);
            assertTrue(ran.err().contains("it takes a whole number, 1 or more, not “-1”"), ran.err());
        }
    }
}
