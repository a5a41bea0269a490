package org.keeplit.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A name means what the files say, and one thing only. */
class NamesTest {
    /** As the shipped list, but its jumper may take anything. */
    private static final String LAX = """
            language 1
            equipment lax "Another list"
            kind bypass-jumper is a temporary conductor
              breaks  nothing, parallel break, load break, bushing charging, line charging
              makes   nothing, parallel make, energizing, energizing load
            """;

    @TempDir
    Path folder;

    private Cli cli;

    @BeforeEach
    void begin() {
        cli = new Cli(folder).file("spur.network", Cli.NETWORK);
    }

    /** Whatever the other list is called, and whether its file comes first, the jumper is that of the list that the network uses. */
    @ParameterizedTest
    @ValueSource(strings = {"aaa.equipment", "zzz.equipment"})
    void temporaryEquipmentIsThatOfTheNetwork(String file) throws IOException {
        String steps = "open: op opens R\nenergize: east installs J around R, line to line\n";
        cli.file("p.procedure", Cli.procedure("P-1", "switching", "temporary\n  bypass-jumper J for each phase of R\n", steps));
        Cli.Ran before = cli.run("check", "switching", "--format", "json");
        cli.file(file, LAX);
        // The folder with the other list is named before the shipped one, and after it.
        Cli.Ran after = Cli.of("check", folder.toString(), "shared/equipment", "shared/rules/switching.rules", "--format", "json");
        Cli.Ran last = cli.run("check", "switching", "--format", "json");
        assertEquals(1, before.code(), before.out() + before.err());
        assertTrue(before.places().stream().anyMatch(p -> p.contains("energize")), before.places().toString());
        assertEquals(before.places(), after.places(), after.err());
        assertEquals(before.places(), last.places(), last.err());
    }

    @Test
    void aSecondCopyOfARulebookIsAMistakeThatShowsBoth() throws IOException {
        Files.copy(Path.of("shared/rules/no-interruption.rules"), cli.path("copy.rules"));
        cli.file("p.procedure", Cli.procedure("P-1", "no-interruption", "", "op checks R is closed\n"));
        Cli.Ran ran = cli.run("check", "no-interruption");
        assertEquals(3, ran.code(), ran.out());
        assertTrue(ran.err().contains("there are 2 rulebooks no-interruption"), ran.err());
        assertTrue(ran.err().contains("copy.rules") && ran.err().contains("shared/rules/no-interruption.rules"), ran.err());
        assertTrue(ran.out().startsWith("not judged  P-1"), ran.out());
    }

    /** The copy lies among the given files, the other in the folder shared above them. */
    @Test
    void aCopyAmongTheGivenFilesDoesNotReplaceTheSharedOne() throws IOException {
        Files.createDirectories(folder.resolve("shared/rules"));
        Files.createDirectories(folder.resolve("shared/equipment"));
        Files.copy(Path.of("shared/equipment/overhead.equipment"), folder.resolve("shared/equipment/overhead.equipment"));
        Files.copy(Path.of("shared/rules/no-interruption.rules"), folder.resolve("shared/rules/no-interruption.rules"));
        String lax = "language 1\nrulebook no-interruption revision 9\nrule load-stays-supplied\n  always every load L is critical\n"
                + "  unless every load L is supplied\n  says \"x\"\n  because \"x\"\n  severity advice\n";
        cli.file("work/house.rules", lax);
        cli.file("work/p.procedure", Cli.procedure("P-1", "no-interruption", "", "op opens R\n"));
        Files.move(cli.path("spur.network"), cli.path("work/spur.network"));
        Cli.Ran ran = Cli.of("check", cli.path("work").toString());
        assertEquals(3, ran.code(), ran.out());
        assertTrue(ran.err().contains("there are 2 rulebooks no-interruption"), ran.err());
    }

    @Test
    void twoListsOfOneNetworkThatDeclareAKindAreAMistake() {
        cli.file("lax.equipment", LAX);
        cli.file("spur.network", Cli.NETWORK.replace("uses overhead", "uses overhead, lax"));
        cli.file("p.procedure", Cli.procedure("P-1", "no-interruption", "", "op checks R is closed\n"));
        Cli.Ran ran = cli.run("check", "no-interruption");
        assertEquals(3, ran.code());
        assertTrue(ran.err().contains("declare a kind bypass-jumper: overhead and lax"), ran.err());
    }

    /** The clamp on the side that is named comes off first, however the jumper went on. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "east installs J around R on A, line to line, load side first | first",
        "east installs J around R on A, line to line, source side first | second",
        "east puts the first clamp of J on the load-side line of R on A;east puts the second clamp of J on the source-side line of R on A | first",
        "east puts the second clamp of J on s-3 on A;east puts the first clamp of J on s-2 on A | second",
    })
    void theSideIsKnownFromTheNetwork(String install, String clamp) {
        String header = "temporary\n  bypass-jumper J for each phase of R\n";
        for (String side : List.of("load", "source")) {
            cli.file("p.procedure", Cli.procedure("P-1", "no-interruption", header,
                    install.replace(';', '\n') + "\noff: east removes J on A, " + side + " side first\n") + "ends with\n  R is open\n");
            // What must hold at the end does not, so the shortest way there is told, all acts of it.
            List<String> acts = new ArrayList<>();
            cli.run("check", "no-interruption", "--format", "json").json().getAsJsonArray("checks").get(0).getAsJsonObject()
                    .getAsJsonArray("findings").get(0).getAsJsonObject().getAsJsonArray("trace")
                    .forEach(act -> acts.add(act.getAsJsonObject().get("text").getAsString()));
            String other = clamp.equals("first") ? "second" : "first";
            assertEquals(
                    "takes the " + (side.equals("load") ? clamp : other) + " clamp of J for phase A off",
                    acts.stream().filter(act -> act.endsWith("off")).findFirst().orElse(""),
                    acts.toString());
        }
    }

    @Test
    void aSideThatCannotBeKnownIsRefused() {
        cli.file("p.procedure", Cli.procedure("P-1", "no-interruption", "temporary\n  bypass-jumper J for each phase of R\n",
                "east installs J from the source-side line of R to s-1\neast removes J, load side first\n"));
        Cli.Ran ran = cli.run("check", "no-interruption");
        assertEquals(3, ran.code(), ran.out());
        assertTrue(ran.err().contains("it is not known which clamp of J sits on the load side"), ran.err());
    }

    @Test
    void twoEventsOfOneNameAreAMistake() {
        String event = "event slips-off\n  any bypass-jumper J and any phase P of J\n  when J is installed on P\n  then J comes off on P\n  says \"{J} comes off\"\n";
        String rule = "rule %s\n  always every load L is supplied\n  even if slips-off\n  says \"x\"\n  because \"x\"\n";
        cli.file("first.rules", "language 1\nrulebook first revision 1\n" + event + rule.formatted("a"));
        cli.file("second.rules", "language 1\nrulebook second revision 1\n" + event.replace("J is installed on P", "J is installed on A") + rule.formatted("b"));
        cli.file("p.procedure", Cli.procedure("P-1", "first, second", "", "op checks R is closed\n"));
        Cli.Ran ran = cli.run("check", "");
        assertEquals(3, ran.code(), ran.out());
        assertTrue(ran.err().contains("both declare an event slips-off"), ran.err());
    }
}
