package org.keeplit.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code explain} as a user calls it. */
class ExplainCommandTest {
    @TempDir
    Path folder;

    private String shared() {
        return folder.resolve("shared").toString();
    }

    @Test
    void aRuleHasItsPage() throws IOException {
        Workspace.fill(folder, Workspace.RULES, Workspace.EXAMPLES);
        Told.Ran ran = Told.run("explain", "looked-at", shared());
        assertEquals("", ran.err());
        Told.assertTold("explain-rule", folder, ran.out());
        assertEquals(ExitCode.PROVED, ran.code());
    }

    @Test
    void whatIsMissingIsSaid() throws IOException {
        Workspace.fill(folder, Workspace.RULES, Workspace.EXAMPLES);
        String page = Told.run("explain", "stick-work/nobody-up", shared()).out();
        assertTrue(page.contains("An example that breaks it\n  there is none"), page);
        assertTrue(page.contains("a made source (1)"), page);
        assertTrue(page.contains("caution: breaking it is told"), page);
    }

    @Test
    void itSaysWhatCameOfTheRuleInProcedures() {
        Told.Ran ran = Told.run("explain", "clearance-before-test", "procedures/recloser-back.procedure", "procedures/dead-lateral.procedure");
        assertTrue(ran.out().contains("  DW-3 on heron-vale with f-hl-1 as F: holds\n"), ran.out());
        assertTrue(!ran.out().contains("LP-13"), ran.out());
    }

    @Test
    void aRuleThatCannotBeBrokenIsRemarkedOn() {
        Told.Ran ran = Told.run("explain", "no-closing-under-a-clearance", "procedures/dead-lateral.procedure");
        assertTrue(ran.out().contains("DW-3-h on heron-vale with f-hl-1 as F: broken at reclosed"), ran.out());
    }

    @Test
    void aCodeHasItsPage() {
        Told.Ran ran = Told.run("explain", "circular");
        assertTrue(ran.out().startsWith("circular\n\nProcedures lead back"), ran.out());
        assertTrue(Told.run("explain", "not-at-rest").out().startsWith("not-at-rest\n\n"));
        assertEquals(ExitCode.PROVED, ran.code());
    }

    @Test
    void aMisspeltNameIsGuessed() {
        Told.Ran ran = Told.run("explain", "clearance-before-tests");
        assertTrue(ran.err().contains("did you mean clearance-before-test?"), ran.err());
        assertEquals(ExitCode.USAGE, ran.code());
    }
}
