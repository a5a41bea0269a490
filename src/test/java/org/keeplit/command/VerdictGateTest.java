package org.keeplit.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** No verdict rests on a file with a mistake in it, whatever the output. */
class VerdictGateTest {
    private static final String STEPS = "look: op checks R is closed\n";

    @TempDir
    Path folder;

    private Cli cli;

    @BeforeEach
    void begin() {
        cli = new Cli(folder).file("spur.network", Cli.NETWORK);
    }

    private Cli.Ran check(String steps, String... options) {
        cli.file("p.procedure", Cli.procedure("P-1", "no-interruption", "", steps));
        return cli.run("check", "no-interruption", options);
    }

    private void notJudged(Cli.Ran ran) {
        assertEquals(3, ran.code(), ran.out() + ran.err());
        assertFalse(ran.out().contains("holds "), ran.out());
        assertTrue(ran.out().contains("not judged"), ran.out() + ran.err());
    }

    @Test
    void withoutAMistakeItHolds() {
        Cli.Ran ran = check(STEPS);
        assertEquals(0, ran.code(), ran.err());
        assertTrue(ran.out().startsWith("holds "), ran.out());
    }

    /** A line that the lexer rejects is not dropped, with the rest judged. */
    @ParameterizedTest
    @ValueSource(strings = {"op opens R on A @", "op opens R on A;", "op opens R on \u0000A", "op opens\u200b R", "op opens R ]", "opp opens R", "end", "stage", "requires R is closed", "kind x is a switching device"})
    void aLineThatCannotBeReadLeavesNoVerdict(String line) {
        notJudged(check(line + "\n" + STEPS));
    }

    @Test
    void aGroupThatIsNotEndedLeavesNoVerdict() {
        notJudged(check("together\n  op checks R is closed\n"));
    }

    @Test
    void aClauseAloneLeavesNoVerdict() {
        notJudged(check("in order\n  caution \"mind the step\"\n  op checks R is closed\nend\n"));
    }

    @Test
    void aLineThatIsTooLongLeavesNoVerdict() {
        notJudged(check("op does \"" + "x".repeat(5000) + "\"\n" + STEPS));
    }

    @ParameterizedTest
    @CsvSource({"spur.network, 'load mill at s-4, phases ABC, 300 kW, 100 kvar, 12 customers', 'load mill at s-4, phases ABC, 300 kW, 100 kvar, 12 customers ;'", "spur.network, 'language 1', 'language 1 @'"})
    void aMistakeInTheNetworkLeavesNoVerdict(String file, String line, String with) {
        cli.file(file, Cli.NETWORK.replace(line, with));
        notJudged(check(STEPS));
    }

    @Test
    void aMistakeInTheEquipmentLeavesNoVerdict() {
        cli.file("more.equipment", "language 1\nequipment more \"More\"\nkind gadget is a switching device\n  trips ;\n");
        notJudged(check(STEPS));
    }

    @Test
    void aMistakeInARulebookLeavesNoVerdict() {
        cli.file("house.rules", "language 1\nrulebook house revision 1\nrule one\n  always R is ;\n  says \"x\"\n  because \"x\"\n");
        cli.file("p.procedure", Cli.procedure("P-1", "no-interruption, house", "", STEPS));
        notJudged(cli.run("check", "no-interruption"));
    }

    /** One faulty file does not wipe the verdicts of what does not read it. */
    @Test
    void whatDoesNotReadTheFaultyFileIsJudged() {
        cli.file("bad.procedure", Cli.procedure("P-2", "no-interruption", "", "op opens R @\n"));
        Cli.Ran ran = check(STEPS);
        assertEquals(3, ran.code());
        assertTrue(ran.out().contains("holds       P-1") || ran.out().contains("holds      P-1"), ran.out());
        assertTrue(ran.out().contains("not judged  P-2  " + folder), ran.out());
    }

    @Test
    void everyFormatSaysThatItIsNotJudged() {
        Cli.Ran json = check("op opens R @\n" + STEPS, "--format", "json");
        assertEquals(3, json.code());
        assertEquals(0, json.json().getAsJsonObject("counts").get("holds").getAsInt());
        assertEquals("not-judged", json.json().getAsJsonArray("unjudged").get(0).getAsJsonObject().get("status").getAsString());
        Cli.Ran junit = cli.run("check", "no-interruption", "--format", "junit");
        assertTrue(junit.out().contains("not judged") && junit.out().contains("<error"), junit.out());
        Cli.Ran sarif = cli.run("check", "no-interruption", "--format", "sarif");
        assertTrue(sarif.out().contains("procedure/judged") && !sarif.out().contains("\"pass\""), sarif.out());
    }

    @ParameterizedTest
    @ValueSource(strings = {"slips", "order", "retreat", "plan"})
    void everyInsightSaysThatItIsNotJudged(String command) {
        cli.file("p.procedure", Cli.procedure("P-1", "no-interruption", "", "op opens R @\n" + STEPS));
        Cli.Ran ran = cli.run(command, "no-interruption");
        assertEquals(3, ran.code());
        assertTrue(ran.out().startsWith("not judged  P-1"), ran.out());
        assertEquals(1, cli.run(command, "no-interruption", "--format", "json").json().getAsJsonArray("unjudged").size());
    }

    @Test
    void anExampleInAFaultyFileHasNotPassed() {
        cli.file("e.examples", """
                language 1
                examples shown for no-interruption
                title "Shown"
                on network spur
                example "It stays closed" of rule load-stays-supplied
                  do
                    east checks r-1 is closed ;
                    east checks r-1 is closed
                  must hold
                """);
        Cli.Ran ran = Cli.of("test", "shared/equipment", "shared/rules/no-interruption.rules", folder.toString());
        assertEquals(3, ran.code());
        assertFalse(ran.out().contains("passed     shown"), ran.out());
        assertTrue(ran.out().contains("not judged  shown"), ran.out());
    }
}
