package org.keeplit.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Rules that ask for what a thing does not have: each has a value, the same in both evaluators, or is refused where it stands. */
class OddQuestionsTest {
    private static final String NETWORK =
            """
            language 1
            network spur "A spur"
            uses overhead
            system voltage 12.47 kV, frequency 60 Hz
            source bus at s-0, phases ABC, supply grid, fault level 100 MVA, reactance ratio 8
            breaker feeder from s-0 to s-1, phases ABC, pickup 480 A, ground pickup 240 A
            switch gang from s-1 to s-3, phases ABC
            recloser r-1 from s-1 to s-4, phases B, single-phase units, coil 140 A
            load mill at s-3, phases ABC, 300 kW, 100 kvar, 12 customers
            load hut at s-4, phases B, 30 kW, 10 kvar, 2 customers
            transformer t-lane from s-1 to service, phases CA, centre-tapped, rating 25 kVA, low voltage 240 V, resistance 1.2 %, reactance 1.5 %
            load lamps at service, phases X1, 2 kW, 1 customer
            transformer t-open from s-1 to od, phases AB, open wye to open delta, clock 1, rating 100 kVA, low voltage 480 V, impedance 3 %
            load shop at od, phases ABC, delta, 20 kW, 1 customer
            regulator reg from s-1 to s-9, phases B
            load far at s-9, phases B, 2 kW, 1 customer
            """;

    @TempDir
    Path folder;

    private Path write(String rule, String step) throws IOException {
        Files.createDirectories(folder.resolve("shared"));
        Path equipment = folder.resolve("shared/overhead.equipment");
        if (!Files.exists(equipment)) {
            Files.copy(Path.of("shared/equipment/overhead.equipment"), equipment);
        }
        Files.writeString(folder.resolve("shared/spur.network"), NETWORK);
        Files.writeString(
                folder.resolve("shared/odd.rules"),
                "language 1\nrulebook odd revision 1\nrule r\n  always " + rule + "\n  says \"x\"\n  because \"y.\"\n");
        Path file = folder.resolve("job.procedure");
        Files.writeString(
                file,
                "language 1\nprocedure P-1 revision 1\ntitle \"T\"\nkeeps odd\ncrew\n  west \"West\", in charge\nproved on spur\nstage \"All\"\n  "
                        + step + "\n");
        return file;
    }

    /** The rule holds, with nothing else said of the run, and the second evaluator says so too. */
    private void assertHolds(String rule) throws IOException {
        Path file = write(rule, "west blocks reclosing of feeder");
        Path proofs = Files.createTempDirectory(folder, "proofs");
        Told.Ran ran = Told.run("check", "--proofs", proofs.toString(), file.toString());
        assertEquals(0, ran.code(), () -> rule + "\n" + ran.out() + ran.err());
        List<Path> written;
        try (Stream<Path> all = Files.list(proofs)) {
            written = all.toList();
        }
        Told.Ran again = Told.run("recheck", written.get(0).toString(), "--with", file.toString());
        assertEquals(0, again.code(), () -> rule + "\n" + again.out() + again.err());
    }

    private void assertBroken(String rule) throws IOException {
        Told.Ran ran = Told.run("check", write(rule, "west blocks reclosing of feeder").toString());
        assertEquals(1, ran.code(), () -> rule + "\n" + ran.out() + ran.err());
        assertTrue(ran.out().contains("1 broken"), ran::out);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            for every recloser R, R is not bypassed on A | for every recloser R, R is bypassed on A
            for every regulator R, R is not bypassed on A | for every regulator R, R is bypassed on A
            for every recloser R, R is not looped on A | for every recloser R, R is looped on A
            for every regulator R, R is not looped on X1 | for every regulator R, R is looped on A
            for every recloser R, R has opening duty nothing on A | for every recloser R, R has opening duty load break on A
            for every recloser R, R has closing duty nothing on A | for every recloser R, R has closing duty energizing on A
            """)
    void aRuleAboutAPhaseThatTheDeviceLacksDiedWithExit70(String holds, String broken) throws IOException {
        assertHolds(holds);
        assertBroken(broken);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            for every switching device D, the voltage at the source lead of D on B is at least 7 kV | for every switching device D, the voltage at the load bushing of D is at most 7 kV
            for every switching device D, the nominal voltage of the source bushing of D is at least 7 kV | for every switching device D, the nominal voltage of the load lead of D is at most 7 kV
            for every switching device D, the fault current at the load lead of D on B is at least 1 kA | for every switching device D, the fault current at the load lead of D on B is at most 1 kA
            """)
    void aFigureAtALeadOfADeviceWithoutLeadsDiedWithExit70(String holds, String broken) throws IOException {
        assertHolds(holds);
        assertBroken(broken);
    }

    @Test
    void theBushingOfABreakerCountedAsDeadWhileItsLineWasLive() throws IOException {
        assertHolds("for every switching device D, the source bushing of D is not dead on B");
        assertBroken("for every switching device D, the source lead of D is dead on B");
        assertHolds("for every switching device D, the source lead of D is not off on B");
    }

    @Test
    void theNominalVoltageOfATransformersLineDiedWithExit70() throws IOException {
        assertHolds("for every transformer T, the nominal voltage of the load-side line of T is at least 100 V");
        assertBroken("for every transformer T, the nominal voltage of the load-side line of T is at least 200 V");
        assertHolds("for every transformer T, the voltage at the load-side line of T is at least 100 V");
        assertHolds("for every transformer T, the fault current at the load-side line of T is at most 100 kA");
    }

    @Test
    void theLegsBehindACentreTapCountedAsDead() throws IOException {
        assertHolds("for every transformer T, the load-side line of T is energized");
        assertBroken("for every transformer T, the load-side line of T is dead");
    }

    @ParameterizedTest
    @CsvSource({"load L, L", "source S, S", "point X, X", "recloser R, R", "recloser R, the source-side line of R", "jumper J, J"})
    void isOffOfAPointALoadOrASourceIsRefusedWhereItStands(String noun, String subject) throws IOException {
        Told.Ran ran = Told.run("check", write("for every " + noun + ", " + subject + " is not off", "west blocks reclosing of feeder").toString());
        assertEquals(3, ran.code(), ran.out() + ran.err());
        assertTrue(ran.err().contains("is asked of a lead, and " + subject.replace("the ", "") + " is none"), ran::err);
        assertTrue(ran.err().contains("odd.rules:4:"), ran::err);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            r-1 is closed on A
            r-1 is not bypassed on A and C
            the source-side line of r-1 is dead on A
            reclosing of r-1 is on on A
            the current through r-1 on A is at most 5 A
            the load-side line of t-lane is dead on A
            """)
    void aStepThatAsksOnAPhaseThatTheDeviceLacksIsRefusedWhereItStands(String condition) throws IOException {
        Told.Ran ran = Told.run("check", write("for every load L, L is supplied", "west blocks reclosing of feeder\n    requires " + condition).toString());
        assertEquals(3, ran.code(), ran.out() + ran.err());
        assertTrue(ran.err().contains("has no phase"), ran::err);
        assertTrue(ran.err().contains("job.procedure:10:"), ran::err);
    }
}
