package org.keeplit.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A violation is known by what it is, never by a name that another rule may share, and each place of it is told. */
class FindingsIdentityTest {
    @TempDir
    Path folder;

    private Cli cli;

    @BeforeEach
    void begin() {
        cli = new Cli(folder).file("spur.network", Cli.NETWORK);
    }

    private void rule(String name, String severity, String body) {
        cli.file("house.rules", "language 1\nrulebook house revision 1\nrule " + name + "\n  " + body
                + "\n  says \"seen\"\n  because \"Only a test.\"\n  severity " + severity + "\n");
    }

    /** A caution of the same name as the shipped rule, and one planned outage: the second customer goes dark all the same. */
    @Test
    void aCautionOfTheSameNameHidesNoStop() {
        rule("load-stays-supplied", "caution", "always every load L is supplied");
        cli.file("p.procedure", Cli.procedure("P-1", "house, no-interruption", "planned outage of mill\n", "out: op opens R\n"));
        Cli.Ran ran = cli.run("check", "no-interruption", "--format", "json");
        assertEquals(1, ran.code(), ran.out());
        assertTrue(ran.places().stream().anyMatch(p -> p.startsWith("load-stays-supplied at out")), ran.places().toString());
        assertTrue(ran.out().contains("\"rulebook\": \"no-interruption\""), ran.out());
    }

    @ParameterizedTest
    @ValueSource(strings = {"flash", "ending", "requirement", "cannot", "stop", "expectation", "stuck"})
    void anAdviceNamedLikeASortOfFindingHidesNone(String name) {
        rule(name, "advice", "always R is open".replace("R", "some recloser X").replace("always some", "always some"));
        cli.file("p.procedure", Cli.procedure("P-1", "house, no-interruption",
                "temporary\n  bypass-jumper J for each phase of R\n",
                "joined: east installs J from the source-side line of R on B to the source-side line of R on C\n"));
        Cli.Ran ran = cli.run("check", "no-interruption", "--format", "json");
        assertEquals(1, ran.code(), ran.out() + ran.err());
        cli.file("p.procedure", Cli.procedure("P-1", "house, no-interruption", "", "op checks R is closed\n") + "ends with\n  R is open\n");
        assertEquals(List.of("ending at op checks R is closed"), cli.run("check", "no-interruption", "--format", "json").places());
    }

    @Test
    void bothRootPlacesOfOneRuleAreTold() {
        rule("stays-closed", "stop", "before opening any recloser X on phase P\n  require X is bypassed on P");
        cli.file("p.procedure", Cli.procedure("P-1", "house", "", "in any order\n  first-a: op opens R on A\n  then-c: west opens R on C\nend\n"));
        Cli.Ran ran = cli.run("check", "", "--format", "json");
        assertEquals(List.of("stays-closed at first-a on phase A", "stays-closed at then-c on phase C"), ran.places());
        Cli.Ran text = cli.run("check", "");
        assertTrue(text.out().contains("Broken first in other orders, too:"), text.out());
    }

    @Test
    void mustFailOnMeansTheWholeSet() {
        rule("stays-closed", "stop", "before opening any recloser X on phase P\n  require X is bypassed on P");
        String base = Cli.procedure("P-1", "house", "", "op checks R is closed\n");
        String variant = "variant P-1-a \"Both\" of P-1\n  insert after step look\n    in any order\n      first-a: op opens R on A\n      then-c: west opens R on C\n    end\n  end\n";
        base = base.replace("op checks R is closed", "look: op checks R is closed").replace("keeps house", "keeps house, more");
        cli.file("more.rules", "language 1\nrulebook more revision 1\nrule there\n  always some source S is energized\n  says \"x\"\n  because \"x\"\n");
        cli.file("p.procedure", base + variant + "  must fail on stays-closed at first-a\n");
        Cli.Ran one = cli.run("check", "");
        assertEquals(1, one.code(), one.out() + one.err());
        assertTrue(one.out().contains("it also fails on stays-closed at then-c on phase C"), one.out());
        cli.file("p.procedure", base + variant + "  must fail on stays-closed at first-a\n  must fail on stays-closed at then-c on phase C\n");
        Cli.Ran both = cli.run("check", "");
        assertEquals(0, both.code(), both.out() + both.err());
    }

    @Test
    void aNameThatTwoRulebooksHaveIsSaidWithItsRulebook() {
        rule("supply", "stop", "always every load L is supplied");
        cli.file("more.rules", "language 1\nrulebook more revision 1\nrule supply\n  always for any load L, L is supplied\n  says \"x\"\n  because \"x\"\n");
        String base = Cli.procedure("P-1", "house, more", "", "look: op checks R is closed\n");
        String variant = "variant P-1-a \"Dark\" of P-1\n  insert after step look\n    out: op opens R\n  end\n";
        cli.file("p.procedure", base + variant + "  must fail on supply at out\n");
        Cli.Ran unclear = cli.run("check", "");
        assertEquals(3, unclear.code());
        assertTrue(unclear.err().contains("house/supply"), unclear.err());
        cli.file("p.procedure", base + variant
                + "  must fail on house/supply at out\n  must fail on more/supply at out\n");
        Cli.Ran said = cli.run("check", "");
        assertEquals(0, said.code(), said.out() + said.err());
    }

    @Test
    void eachLineOfWhatMustHoldAtTheEndIsTold() {
        rule("stays-closed", "stop", "always every load L is supplied");
        cli.file("p.procedure", Cli.procedure("P-1", "house", "", "op checks R is closed\n") + "ends with\n  R is open on A\n  R is open on B\n");
        assertEquals(List.of("ending at op checks R is closed", "ending at op checks R is closed"), cli.run("check", "", "--format", "json").places());
    }
}
