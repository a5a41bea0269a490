package org.keeplit.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** “Source side first” orders the two ends on a phase, and never the phases. */
class EndOrderTest {
    private static final String RULE = """
            language 1
            rulebook house revision 1
            rule a-before-c
              before clamping any bypass-jumper J on phase P
              require some bypass-jumper K is installed on A
              unless P is phase AB
              says "{P} before A"
              because "Only a test: whoever starts at C breaks it."
            """;

    @TempDir
    Path folder;

    private Cli cli;

    @BeforeEach
    void begin() {
        cli = new Cli(folder).file("spur.network", Cli.NETWORK).file("house.rules", RULE);
    }

    private Cli.Ran check(String steps, String... options) {
        cli.file("p.procedure", Cli.procedure("P-1", "house", "temporary\n  bypass-jumper J for each phase of R\n  ground-set G for each phase of R\n", steps));
        return cli.run("check", "", options);
    }

    /** States: with the ends free 4 a phase, with one end first 3; with the phases in order their sum. */
    @ParameterizedTest
    @CsvSource({
        "'', 64",
        "', source side first', 27",
        "', load side first', 27",
        "', in order', 10",
        "', source side first, in order', 7",
    })
    void countsOfStates(String option, int states) {
        Cli.Ran ran = check("put: east installs J around R, line to line" + option + "\n", "--format", "json");
        assertEquals(states, ran.json().getAsJsonArray("checks").get(0).getAsJsonObject().get("states").getAsInt(), ran.err());
    }

    @ParameterizedTest
    @CsvSource({"'', 64", "', ground end first', 27", "', line end first', 27"})
    void countsOfStatesOfAGround(String option, int states) {
        Cli.Ran ran = check("east applies G to the load-side line of R" + option + "\n", "--format", "json");
        // Its line end lands on what is energized: the path ends there, so fewer states are reached than orders allow.
        assertTrue(ran.json().getAsJsonArray("checks").get(0).getAsJsonObject().get("states").getAsInt() <= states + 1, ran.err());
    }

    @Test
    void aCrewThatStartsAtPhaseCIsLookedAt() {
        Cli.Ran ran = check("put: east installs J around R, line to line, source side first\n");
        assertEquals(1, ran.code(), ran.out() + ran.err());
        assertTrue(ran.out().contains("a-before-c at put on phase C"), ran.out());
    }

    @Test
    void inOrderStaysInOrder() {
        Cli.Ran ran = check("put: east installs J around R, line to line, source side first, in order\n");
        assertEquals(0, ran.code(), ran.out() + ran.err());
    }
}
