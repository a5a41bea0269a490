package org.keeplit.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A verdict needs something to rest on, and says what. */
class VerdictBasisTest {
    @TempDir
    Path folder;

    private Cli cli;

    @BeforeEach
    void begin() {
        cli = new Cli(folder).file("spur.network", Cli.NETWORK);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "--strict"})
    void theOnlyFeedOpenedWithNoRulebookIsNotProved(String option) {
        cli.file("p.procedure", Cli.procedure("P-1", "", "", "op opens R\n"));
        Cli.Ran ran = option.isEmpty() ? cli.run("check", "") : cli.run("check", "", option);
        assertEquals(5, ran.code(), ran.out() + ran.err());
        assertTrue(ran.out().startsWith("not proved  P-1"), ran.out());
        assertTrue(ran.out().contains("no rule that stops came up"), ran.out());
    }

    @Test
    void anEmptyRulebookProvesNothing() {
        cli.file("house.rules", "language 1\nrulebook house revision 1\ntitle \"Empty\"\n");
        cli.file("p.procedure", Cli.procedure("P-1", "house", "", "op opens R\n"));
        assertEquals(5, cli.run("check", "").code());
    }

    @Test
    void aCautionAloneProvesNothing() {
        cli.file("house.rules", """
                language 1
                rulebook house revision 1
                rule seen
                  always every load L is supplied
                  says "{L} is dark"
                  because "It should not be."
                  severity caution
                """);
        cli.file("p.procedure", Cli.procedure("P-1", "house", "", "op checks R is closed\n"));
        Cli.Ran ran = cli.run("check", "", "--format", "json");
        assertEquals(5, ran.code(), ran.out());
        assertEquals("not-proved", ran.statuses().get(0));
        assertTrue(cli.run("check", "", "--format", "junit").out().contains("<error"));
    }

    @Test
    void aProcedureThatNamesNoPlaceIsListedAndNotProved() {
        cli.file("p.procedure", Cli.procedure("P-1", "no-interruption", "", "op opens R\n").replace("proved on spur with r-1 as R\n", ""));
        Cli.Ran ran = cli.run("check", "no-interruption");
        assertEquals(5, ran.code(), ran.out() + ran.err());
        assertTrue(ran.out().startsWith("not proved  P-1  it does not say what it is proved on"), ran.out());
    }

    @Test
    void aProcedureThatIsRefusedAtAPlaceIsListed() {
        cli.file("p.procedure", Cli.procedure("P-1", "no-interruption", "", "op opens R on X1\n"));
        Cli.Ran ran = cli.run("check", "no-interruption");
        assertEquals(3, ran.code(), ran.out() + ran.err());
        assertTrue(ran.out().startsWith("not judged  P-1 on spur with r-1 as R  it cannot be proved there"), ran.out());
        assertTrue(ran.err().contains("r-1 has no phase X1: it has ABC"), ran.err());
        assertEquals("P-1 on spur with r-1 as R",
                cli.run("check", "no-interruption", "--format", "json").json().getAsJsonArray("unjudged").get(0).getAsJsonObject().get("name").getAsString());
    }

    @ParameterizedTest
    @ValueSource(strings = {"slips", "order", "retreat"})
    void noInsightIsToldOfWhatIsNotProved(String command) {
        cli.file("p.procedure", Cli.procedure("P-1", "", "", "op opens R\n"));
        Cli.Ran ran = cli.run(command, "");
        assertEquals(1, ran.code(), ran.out());
        assertTrue(ran.out().contains("no rule that stops came up"), ran.out());
    }

    @Test
    void whatItRestsOnIsTold() {
        cli.file("p.procedure", Cli.procedure(
                "P-1", "no-interruption, people with people-present 3", "planned outage of clinic\n", "east installs J around R, line to line, source side first\nop puts R in non-reclose, in order\n")
                .replace("crew\n", "temporary\n  bypass-jumper J for each phase of R\ncrew\n"));
        Cli.Ran ran = cli.run("check", "no-interruption, people", "--why");
        assertTrue(ran.out().contains("1 customer goes without supply by plan: clinic, 1 customer, critical: operating room"), ran.out());
        assertTrue(ran.out().contains("set otherwise: people-present of people is 3, not 2"), ran.out());
        assertTrue(ran.out().contains("rulebook no-interruption revision"), ran.out());
        assertTrue(ran.out().contains("order: “east installs J around R, line to line, source side first”: on each phase"), ran.out());
        assertTrue(ran.out().contains("order: “op puts R in non-reclose, in order” is done in the order of the text"), ran.out());
        var basis = cli.run("check", "no-interruption, people", "--format", "json")
                .json().getAsJsonArray("checks").get(0).getAsJsonObject().getAsJsonObject("basis");
        assertEquals("clinic", basis.getAsJsonArray("outages").get(0).getAsJsonObject().get("load").getAsString());
        assertEquals("3", basis.getAsJsonArray("parameters").get(0).getAsJsonObject().get("value").getAsString());
        assertEquals(2, basis.getAsJsonArray("orders").size());
    }

    @Test
    void filesThatAreSkippedAreNamed() throws IOException {
        cli.file("p.procedure", Cli.procedure("P-1", "no-interruption", "", "op checks R is closed\n"));
        String lost = Cli.procedure("P-2", "no-interruption", "", "op opens R\n");
        cli.file("x.Procedure", lost);
        cli.file("y.procedure ", lost);
        cli.file(".hidden/z.procedure", lost);
        cli.file("away/a.procedure", lost.replace("P-2", "P-3"));
        Files.createSymbolicLink(folder.resolve("link"), folder.resolve("away"));
        Cli.Ran ran = cli.run("check", "no-interruption");
        for (String name : new String[] {"x.Procedure", "y.procedure ", ".hidden", "link"}) {
            assertTrue(ran.err().contains(cli.path(name).toString()), name + " is not named:\n" + ran.err());
        }
    }
}
