package org.keeplit.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code new}: what it writes passes as it is, and nothing is overwritten. */
class NewCommandTest {
    @TempDir
    Path folder;

    private Told.Ran begin(String what, String name, String... more) {
        String[] all = new String[more.length + 5];
        all[0] = "new";
        all[1] = what;
        all[2] = name;
        all[3] = "--folder";
        all[4] = folder.toString();
        System.arraycopy(more, 0, all, 5, more.length);
        return Told.run(all);
    }

    @Test
    void aRuleOfItsOwn() throws IOException {
        Workspace.fill(folder, Workspace.RULES, Workspace.EXAMPLES);
        Told.Ran ran = begin("rule", "seen-first");
        assertEquals("", ran.err());
        Told.assertTold("new-rule", folder, ran.out());
        Told.assertTold("new-rule-rules", folder, Files.readString(folder.resolve("seen-first.rules")));
        Told.assertTold("new-rule-examples", folder, Files.readString(folder.resolve("seen-first.examples")));
        assertEquals(ExitCode.PROVED, Told.run("format", "--check", folder.resolve("seen-first.examples").toString()).code());
        Told.Ran tested = Told.run("test", "--strict", folder.resolve("seen-first.rules").toString());
        assertEquals("", tested.err());
        assertTrue(tested.out().contains("2 examples: 2 passed"), tested.out());
        assertEquals(ExitCode.PROVED, tested.code());
    }

    @Test
    void aRuleInARulebook() throws IOException {
        Workspace.fill(folder, Workspace.RULES, Workspace.EXAMPLES);
        assertEquals(ExitCode.PROVED, begin("rule", "seen-first", "--in", "stick-work").code());
        String rules = Files.readString(folder.resolve("shared/stick-work.rules"));
        assertTrue(rules.startsWith(Workspace.RULES) && rules.contains("\nrule seen-first\n"), rules);
        Told.Ran tested = Told.run("test", folder.toString());
        assertEquals("", tested.err());
        assertTrue(tested.out().contains("5 examples: 5 passed"), tested.out());
    }

    @Test
    void aProcedure() throws IOException {
        Workspace.fill(folder, Workspace.RULES, Workspace.EXAMPLES);
        assertEquals("", begin("procedure", "JOB-1").err());
        Told.assertTold("new-procedure", folder, Files.readString(folder.resolve("JOB-1.procedure")));
        assertEquals(ExitCode.PROVED, Told.run("format", "--check", folder.resolve("JOB-1.procedure").toString()).code());
        Told.Ran checked = Told.run(
                "check", folder.resolve("JOB-1.rules").toString(), folder.resolve("JOB-1.procedure").toString());
        assertTrue(checked.out().contains("2 checks: 1 hold, 1 fail as they must"), checked.out());
        assertEquals(ExitCode.PROVED, checked.code());
    }

    @Test
    void aProcedureThatKeepsARulebook() throws IOException {
        Workspace.fill(folder, Workspace.RULES, Workspace.EXAMPLES);
        Files.copy(
                Path.of("shared/rules/no-interruption.rules"), folder.resolve("shared/no-interruption.rules"));
        assertEquals("", begin("procedure", "JOB-1").err());
        Told.Ran checked = Told.run("check", folder.resolve("JOB-1.procedure").toString());
        assertTrue(checked.out().contains("open-only-what-is-bypassed at opening"), checked.out());
        assertEquals(ExitCode.PROVED, checked.code());
    }

    @Test
    void nothingIsOverwritten() throws IOException {
        Workspace.fill(folder, Workspace.RULES, Workspace.EXAMPLES);
        Files.writeString(folder.resolve("mine.examples"), "# mine\n");
        Told.Ran ran = begin("rule", "mine");
        assertTrue(ran.err().contains("mine.examples is there already, and nothing is overwritten"), ran.err());
        assertEquals("# mine\n", Files.readString(folder.resolve("mine.examples")));
        assertTrue(Files.notExists(folder.resolve("mine.rules")));
        assertEquals(ExitCode.USAGE, ran.code());
    }

    @Test
    void namesAreChecked() throws IOException {
        Workspace.fill(folder, Workspace.RULES, Workspace.EXAMPLES);
        assertTrue(begin("rule", "while").err().contains("is a word of the language"));
        assertTrue(begin("rule", "the").err().contains("is a word of the language"));
        assertTrue(begin("rule", "two words").err().contains("is no name"));
        assertTrue(begin("rule", "../up").err().contains("is no name"));
        assertTrue(begin("rule", "AB").err().contains("means phases"));
        assertTrue(begin("rule", "looked-at").err().contains("there is already a rule looked-at in stick-work"));
        assertTrue(begin("rule", "fresh", "--in", "stick-works").err().contains("did you mean stick-work?"));
    }

    @Test
    void withoutEquipmentNothingIsBegun() {
        Told.Ran ran = begin("rule", "fresh");
        assertTrue(ran.err().contains("no equipment in reach"), ran.err());
        assertTrue(Files.notExists(folder.resolve("fresh.rules")));
    }
}
