package org.keeplit.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A called procedure keeps its contract: its start, its end, its rulebooks, its equipment and its people. */
class CallContractTest {
    private static final String HEADER = "temporary\n  bypass-jumper J for each phase of R\n";

    @TempDir
    Path folder;

    private Cli cli;

    @BeforeEach
    void begin() {
        cli = new Cli(folder).file("spur.network", Cli.NETWORK);
        cli.file("house.rules", "language 1\nrulebook house revision 1\nrule seen\n  always r-1 is at pole-1\n  says \"x\"\n  because \"x\"\n".replace("r-1 is at pole-1", "every load L is supplied"));
    }

    private Cli.Ran check(String callee, String caller) {
        cli.file("callee.procedure", callee).file("caller.procedure", caller);
        return Cli.of("check", "shared/equipment", "shared/rules/no-interruption.rules", "shared/rules/people.rules",
                cli.path("spur.network").toString(), cli.path("house.rules").toString(), cli.path("caller.procedure").toString(),
                cli.path("callee.procedure").toString(), "--format", "json");
    }

    private static String callee(String keeps, String header, String steps, String ends) {
        return Cli.procedure("IN", keeps, header, steps).replace("proved on spur with r-1 as R\n", "") + ends;
    }

    private List<String> places(Cli.Ran ran) {
        assertEquals(1, ran.json().getAsJsonArray("checks").size(), ran.out() + ran.err());
        return ran.places();
    }

    @Test
    void whatTheCalleeStartsWithIsAnObligationAtTheCall() {
        Cli.Ran ran = check(
                callee("house", "starts with\n  R is open on A\n", "op checks R is closed on B\n", ""),
                Cli.procedure("OUT", "house", "", "call IN with R as R\n"));
        assertEquals(List.of("requirement at begins IN"), places(ran));
        assertEquals(1, ran.code());
    }

    @Test
    void alsoALineThatSaysGiven() {
        Cli.Ran ran = check(
                callee("house", "starts with\n  given reclosing of R is blocked\n", "op checks R is closed\n", ""),
                Cli.procedure("OUT", "house", "", "call IN with R as R\n"));
        assertEquals(List.of("requirement at begins IN"), places(ran));
        Cli.Ran right = check(
                callee("house", "starts with\n  given reclosing of R is blocked\n", "op checks R is closed\n", ""),
                Cli.procedure("OUT", "house", "", "op puts R in non-reclose\ncall IN with R as R\n"));
        assertEquals(List.of(), places(right));
    }

    @Test
    void ofSeveralStartsOneMustBeSo() {
        String starts = "starts with\n  either given reclosing of R is on or given reclosing of R is blocked\n";
        Cli.Ran ran = check(
                callee("house", starts, "op checks R is closed\n", ""),
                Cli.procedure("OUT", "house", "", "op puts R in non-reclose\ncall IN with R as R\n"));
        assertEquals(List.of(), places(ran));
    }

    @Test
    void whatTheCalleeEndsWithIsAnObligationAfterIt() {
        Cli.Ran ran = check(
                callee("house", "", "op checks R is closed\n", "ends with\n  reclosing of R is blocked\n"),
                Cli.procedure("OUT", "house", "", "call IN with R as R\n"));
        assertEquals(List.of("requirement at ends IN"), places(ran));
    }

    @Test
    void theRulebooksOfTheCalleeAreKeptForTheWholeRun() {
        Cli.Ran ran = check(
                callee("no-interruption", "", "op checks R is closed\n", ""),
                Cli.procedure("OUT", "", "", "call IN with R as R\nout: op opens R\n"));
        assertTrue(places(ran).stream().anyMatch(p -> p.startsWith("open-only-what-is-bypassed at out")), ran.places().toString());
    }

    @Test
    void otherFiguresOfOneRulebookAreAMistake() {
        Cli.Ran ran = check(
                callee("people with people-present 3", "", "op checks R is closed\n", ""),
                Cli.procedure("OUT", "people", "", "call IN with R as R\n"));
        assertEquals(3, ran.code(), ran.out());
        assertTrue(ran.out().contains("called IN keeps people is kept already, with other figures"), ran.out());
    }

    @Test
    void aJumperOfFewerPhasesIsAMistake() {
        cli.file("spur.network", Cli.NETWORK + "switch tap from s-4 to s-5, phases A\nload barn at s-5, phases A, 5 kW, 1 customer\n");
        Cli.Ran ran = check(
                callee("house", HEADER, "east installs J around R, line to line\n", ""),
                Cli.procedure("OUT", "house", "temporary\n  bypass-jumper J for each phase of tap\n", "call IN with R as R\n"));
        assertEquals(3, ran.code(), ran.out());
        assertTrue(ran.out().contains("IN needs bypass-jumper J for each phase of r-1; the caller has bypass-jumper J for each phase of tap"), ran.out());
    }

    @Test
    void noJumperAtAllIsAMistake() {
        Cli.Ran ran = check(
                callee("house", HEADER, "east installs J around R, line to line\n", ""),
                Cli.procedure("OUT", "house", "", "call IN with R as R\n"));
        assertEquals(3, ran.code(), ran.out());
        assertTrue(ran.out().contains("and the caller has none"), ran.out());
    }

    @Test
    void aHoldHeldElsewhereIsAMistake() {
        Cli.Ran ran = check(
                callee("house", "hold H for R, held at every device that feeds R, by op\n", "op checks R is closed\n", ""),
                Cli.procedure("OUT", "house", "hold H for R, held at R, by op\n", "call IN with R as R\n"));
        assertEquals(3, ran.code(), ran.out());
        assertTrue(ran.out().contains("IN needs hold H for r-1, held at every device that feeds r-1, by op"), ran.out());
    }

    @Test
    void somebodyOfAnotherStandingIsAMistake() {
        Cli.Ran ran = check(
                callee("house", "", "op checks R is closed\n", ""),
                Cli.procedure("OUT", "house", "", "call IN with R as R, west as east\n"));
        assertEquals(3, ran.code(), ran.out());
        assertTrue(ran.out().contains("has east on the source side, and west is not so here"), ran.out());
    }

    @Test
    void theVerdictNamesTheCalledProcedure() {
        Cli.Ran ran = check(
                callee("house", "", "op checks R is closed\n", ""), Cli.procedure("OUT", "house", "", "call IN with R as R\n"));
        var basis = ran.json().getAsJsonArray("checks").get(0).getAsJsonObject().getAsJsonObject("basis");
        assertEquals("IN", basis.getAsJsonArray("calls").get(0).getAsJsonObject().get("procedure").getAsString());
    }
}
