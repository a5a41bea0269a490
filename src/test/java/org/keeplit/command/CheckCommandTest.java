package org.keeplit.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The command as a user calls it: what it prints, and with which code it ends. */
class CheckCommandTest {
    private static final String SPUR =
            """
            language 1
            network spur "A spur"
            uses overhead
            system voltage 12.47 kV, frequency 60 Hz
            source bus at s-0, phases ABC, supply grid, fault level 100 MVA, reactance ratio 8
            breaker feeder from s-0 to s-1, phases ABC, pickup 480 A, ground pickup 240 A
            line l-1 from s-1 to s-2, phases ABC, length 1 km, conductor acsr-336
            switch gang from s-2 to s-3, phases ABC
            line l-2 from s-3 to s-4, phases ABC, length 1 km, conductor acsr-336
            load mill at s-4, phases ABC, 300 kW, 100 kvar, 12 customers
            """;

    private static final String HEAD =
            """
            language 1
            procedure P-1 revision 1
            title "A test"
            keeps no-interruption
            crew
              op "Operator", in charge
              mate "Second operator"
            proved on spur
            stage "All"
            """;

    @TempDir
    Path folder;

    private record Ran(int code, String out, String err) {}

    private static Ran run(String... arguments) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        int code = Main.run(new PrintWriter(out, true), new PrintWriter(err, true), arguments);
        return new Ran(code, out.toString(), err.toString());
    }

    private Ran check(String steps, String... options) throws IOException {
        Files.writeString(folder.resolve("spur.network"), SPUR);
        Files.writeString(folder.resolve("p.procedure"), HEAD + steps);
        String[] arguments = new String[options.length + 4];
        arguments[0] = "check";
        arguments[1] = "shared/equipment";
        arguments[2] = "shared/rules/no-interruption.rules";
        arguments[3] = folder.toString();
        System.arraycopy(options, 0, arguments, 4, options.length);
        return run(arguments);
    }

    @Test
    void whatHoldsEndsWithZero() throws IOException {
        Ran ran = check("  op checks gang is closed\n");
        assertEquals(0, ran.code, ran.err);
        assertTrue(ran.out.startsWith("holds      P-1  on spur: 1 rule holds in 2 states\n"), ran.out);
        assertTrue(ran.out.contains("cannot come up here: open-only-what-is-bypassed"), ran.out);
        assertTrue(ran.out.contains("This verdict is about the model."), ran.out);
    }

    @Test
    void whatIsBrokenEndsWithOneAndTellsTheStory() throws IOException {
        Ran ran = check("  op opens gang\n");
        assertEquals(1, ran.code, ran.err);
        assertTrue(ran.out.contains("BROKEN     P-1  on spur: open-only-what-is-bypassed at op opens gang"), ran.out);
        assertTrue(ran.out.contains("LOSES SUPPLY: mill, 12 customers, phase ABC"), ran.out);
        assertTrue(ran.out.contains("false   gang is bypassed on phase A"), ran.out);
    }

    @Test
    void aCautionIsToldAndCountsOnlyWhenStrict() throws IOException {
        Files.writeString(
                folder.resolve("mine.rules"),
                """
                language 1
                rulebook mine revision 1
                extends no-interruption
                override rule open-only-what-is-bypassed because "nobody lives there yet"
                rule supplied
                  at the end every load L is supplied
                  severity caution
                  says "somebody is dark"
                  because "x"
                override rule load-stays-supplied because "a caution is enough"
                """);
        String keeps = HEAD.replace("keeps no-interruption", "keeps mine");
        Files.writeString(folder.resolve("q.procedure"), keeps.replace("P-1", "P-2") + "  op opens gang\n");
        Ran ran = check("  op checks gang is closed\n");
        assertEquals(0, ran.code, ran.err);
        assertTrue(ran.out.contains("dropped by mine: load-stays-supplied of no-interruption, because a caution is enough"));
        assertTrue(ran.out.contains("caution: somebody is dark (supplied"), ran.out);
        assertEquals(1, check("  op checks gang is closed\n", "--strict").code);
    }

    @Test
    void everyRuleIsExplainedInFullWhenAsked() throws IOException {
        String steps = "  op checks gang is closed\n";
        assertFalse(check(steps).out.contains("Reasons:"));
        Ran ran = check(steps, "--why");
        assertEquals(0, ran.code, ran.err);
        assertTrue(ran.out.contains("  true       rule load-stays-supplied for L = mill\n"), ran.out);
        assertTrue(ran.out.contains("by bus - feeder - l-1 - gang - l-2\n"), ran.out);
        assertTrue(
                ran.out.contains("  not asked  rule open-only-what-is-bypassed\n"
                        + "             nothing in this network and procedure can bring it up\n"),
                ran.out);
    }

    @Test
    void whatCannotBeUnderstoodEndsWithTwo() {
        assertEquals(2, run("chekc").code);
        assertEquals(2, run().code);
        assertEquals(2, run("check").code);
        assertEquals(2, run("check", "procedures", "--max-states", "many").code);
    }

    @Test
    void mistakesEndWithThreeAndAreAllListed() throws IOException {
        Ran ran = check("  op opens gnag\n  oop opens gang\n");
        assertEquals(3, ran.code);
        assertTrue(ran.err.contains("gnag") && ran.err.contains("oop"), ran.err);
        assertTrue(ran.err.contains("did you mean gang?"), ran.err);
        assertFalse(ran.err.contains("Exception"), ran.err);
    }

    @Test
    void aMissingFileIsAMistakeInTheInput() {
        Ran ran = run("check", folder.resolve("nowhere.procedure").toString());
        assertEquals(3, ran.code);
        assertTrue(ran.err.contains("nowhere.procedure"), ran.err);
    }

    @Test
    void aLimitEndsWithFourAndClaimsNothing() throws IOException {
        Ran ran = check("  op checks gang is closed\n".repeat(40), "--max-states", "10");
        assertEquals(4, ran.code, ran.err);
        assertTrue(ran.out.contains("undecided  P-1  on spur: more than 10 states"), ran.out);
        assertTrue(ran.out.contains("nothing is claimed"), ran.out);
    }

    @Test
    void brokenBeatsUndecidedAndTheCutIsStillSaid() throws IOException {
        Ran ran = check("  op opens gang\n" + "  op checks gang is open\n".repeat(40), "--max-states", "10");
        assertEquals(1, ran.code, ran.err);
        assertTrue(ran.out.contains("the run was cut: more than 10 states"), ran.out);
    }

    @Test
    void whatACutRunHasNotFoundYetIsNoBreak() throws IOException {
        Files.writeString(folder.resolve("teaching.procedure"), """
                language 1
                variant P-2 "Opens after all" of P-1
                  insert after step last
                    opening: op opens gang
                  end
                  must fail on load-stays-supplied at opening
                """);
        String steps = "  op checks gang is closed\n".repeat(40) + "  last: op checks gang is closed\n";
        Ran ran = check(steps, "--max-states", "10");
        assertEquals(4, ran.code, ran.out + ran.err);
        assertTrue(ran.out.contains("undecided  P-2  on spur: more than 10 states"), ran.out);
    }

    @Test
    void aLoadFlowWithoutASolutionIsUndecidedAndNamesTheElement() throws IOException {
        Files.writeString(folder.resolve("wild.network"), SPUR.replace("network spur", "network wild")
                + "limits voltage 95 % to 105 %\ngenerator wind-farm at s-4, phases ABC, 60 MW\n");
        Files.writeString(folder.resolve("wild.procedure"), HEAD.replace("P-1", "P-2").replace("on spur", "on wild")
                .replace("keeps no-interruption", "keeps no-interruption, ratings") + "  op checks gang is closed\n");
        Ran ran = check("  op checks gang is closed\n", "shared/rules/ratings.rules");
        assertEquals(4, ran.code, ran.out + ran.err);
        assertTrue(ran.out.contains("undecided  P-2  on wild: the load flow does not converge (The load flow did not"
                + " settle in 100 iterations: the voltage across \"mill on phase B\""), ran.out);
        assertFalse(ran.out.contains("NaN"), ran.out);
    }

    @Test
    void notExercisedEndsWithFiveUnderStrictOnly() throws IOException {
        assertEquals(5, check("  op checks gang is closed\n", "--strict").code);
    }

    @Test
    void whatIsTakenAsOneIsReportedAsAReliance() throws IOException {
        Ran ran = check("  op and mate does \"lift the beam\"\n    as one because \"it has one handle each side\"\n");
        assertEquals(0, ran.code, ran.err);
        assertTrue(ran.out.contains("is done as one, because it has one handle each side"), ran.out);
    }

    @Test
    void colourOnlyWhenAskedOutsideATerminal() throws IOException {
        assertFalse(check("  op opens gang\n").out.contains("\u001b["));
        assertTrue(check("  op opens gang\n", "--color", "always").out.contains("\u001b["));
    }

    @Test
    void theSameInputGivesTheSameBytes() {
        String[] some = {"check", "procedures/transfer-back.procedure", "procedures/dead-lateral.procedure"};
        Ran first = run(some);
        Ran second = run(some);
        assertEquals(0, first.code, first.err);
        assertEquals(first.out, second.out);
    }

    @Test
    void everyProcedureThatShipsComesOutAsItSays() {
        Ran ran = run("check", "procedures");
        assertEquals(0, ran.code, ran.err);
        assertTrue(ran.out.contains(" checks: 43 hold, 194 fail as they must, 0 broken, 0 undecided"), ran.out);
    }
}
