package org.keeplit.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code test} as a user calls it: what it prints, and with which code it ends. */
class TestCommandTest {
    @TempDir
    Path folder;

    private Told.Ran test(String rules, String examples, String... more) throws IOException {
        Workspace.fill(folder, rules, examples);
        String[] arguments = new String[more.length + 2];
        arguments[0] = "test";
        arguments[1] = folder.resolve("shared/stick-work.rules").toString();
        System.arraycopy(more, 0, arguments, 2, more.length);
        return Told.run(arguments);
    }

    @Test
    void examplesPassAndWhatTheyDoNotShowIsListed() throws IOException {
        Told.Ran ran = test(Workspace.RULES, Workspace.EXAMPLES);
        assertEquals("", ran.err());
        Told.assertTold("test-passed", folder, ran.out());
        assertEquals(ExitCode.PROVED, ran.code());
    }

    @Test
    void whatIsNotShownCountsWhenStrict() throws IOException {
        assertEquals(ExitCode.NOT_PROVED, test(Workspace.RULES, Workspace.EXAMPLES, "--strict").code());
    }

    @Test
    void whatCameInsteadIsToldWithItsStory() throws IOException {
        String wrong = Workspace.EXAMPLES
                .replace("west proves gang closed\n", "")
                .replace("because gang is closed", "because gang is open")
                .replace("with D as gang", "with D as feeder")
                .replace("        west comes down\n", "")
                .replace("says \"gang would open", "says \"gang will open");
        Told.Ran ran = test(Workspace.RULES, wrong);
        assertEquals("", ran.err());
        Told.assertTold("test-failed", folder, ran.out());
        assertEquals(ExitCode.BROKEN, ran.code());
    }

    @Test
    void aBreakForAnotherReasonIsAFailure() throws IOException {
        String wrong = Workspace.EXAMPLES.replace("because gang is closed", "because gang is open");
        Told.Ran ran = test(Workspace.RULES, wrong);
        assertTrue(ran.out().contains("the reason stated for looked-at is not so: gang is open"), ran.out());
        assertEquals(ExitCode.BROKEN, ran.code());
    }

    @Test
    void anExampleWhoseRuleNeverComesUpShowsNothing() throws IOException {
        String empty = Workspace.EXAMPLES.replace(
                "            west opens gang\n", "").replace("    west opens gang\n      requires gang is closed\n", "");
        Told.Ran ran = test(Workspace.RULES, empty);
        assertTrue(ran.out().contains("the case of looked-at never comes up in it, so it shows nothing"), ran.out());
        assertEquals(ExitCode.BROKEN, ran.code());
    }

    @Test
    void aCautionIsShownByNamingIt() throws IOException {
        String caution = Workspace.EXAMPLES
                .replace("    west comes down\n  must hold", "  must fail on nobody-up");
        Told.Ran ran = test(Workspace.RULES, caution);
        assertEquals("", ran.err());
        assertTrue(ran.out().contains("breaks nobody-up"), ran.out());
    }

    @Test
    void mistakesEndTheRun() throws IOException {
        Told.Ran ran = test(Workspace.RULES, Workspace.EXAMPLES.replace("opens gang", "opens gong"));
        assertTrue(ran.err().contains("did you mean gang?"), ran.err());
        assertEquals(ExitCode.MISTAKES, ran.code());
    }

    @Test
    void aRulebookWithoutExamplesIsListedWhole() throws IOException {
        Workspace.fill(folder, Workspace.RULES, Workspace.EXAMPLES);
        Files.delete(folder.resolve("shared/stick-work.examples"));
        Told.Ran ran = Told.run("test", folder.resolve("shared").toString());
        assertTrue(ran.out().contains("looked-at\n    its case never comes up"), ran.out());
        assertTrue(ran.out().contains("0 of 2 rules shown kept and broken"), ran.out());
        assertEquals(ExitCode.PROVED, ran.code());
    }

    @Test
    void theSameInputGivesTheSameBytes() throws IOException {
        Told.Ran first = test(Workspace.RULES, Workspace.EXAMPLES);
        assertEquals(first, Told.run("test", folder.resolve("shared/stick-work.rules").toString()));
    }
}
