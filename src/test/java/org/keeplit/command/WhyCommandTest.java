package org.keeplit.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code why RULE at STEP in PROCEDURE} as a user asks it. */
class WhyCommandTest {
    private static final String PROCEDURE =
            """
            language 1
            procedure P-1 revision 1
            title "A test"
            keeps stick-work
            crew
              west "Lineworker", in charge
            proved on spur
            stage "All"
              look: west proves gang closed
              opening: west opens gang
              up: west goes aloft at gang
              again: west closes gang
              late: west opens gang
              down: west comes down

            """;

    @TempDir
    Path folder;

    private Told.Ran why(String... words) throws IOException {
        Workspace.fill(folder, Workspace.RULES, Workspace.EXAMPLES);
        String network = Workspace.EXAMPLES.substring(Workspace.EXAMPLES.indexOf("network spur \"A"));
        Files.writeString(folder.resolve("p.procedure"), PROCEDURE + network);
        String[] all = new String[words.length + 2];
        all[0] = "why";
        System.arraycopy(words, 0, all, 1, words.length);
        all[words.length + 1] = folder.resolve("p.procedure").toString();
        return Told.run(all);
    }

    @Test
    void aRuleThatIsKept() throws IOException {
        Told.Ran ran = why("looked-at", "at", "opening", "in", "P-1");
        assertEquals("", ran.err());
        Told.assertTold("why-kept", folder, ran.out());
        assertEquals(ExitCode.PROVED, ran.code());
    }

    @Test
    void aRuleThatIsBroken() throws IOException {
        Told.assertTold("why-broken", folder, why("looked-at", "at", "late", "in", "P-1").out());
    }

    @Test
    void aStepAfterABreakIsSaidToBe() throws IOException {
        String told = why("nobody-up", "at", "down", "in", "P-1").out();
        assertTrue(told.contains("Every way to this step breaks a rule before."), told);
    }

    @Test
    void wordsThatAreMissingAreToldWithTheForm() throws IOException {
        assertTrue(why("looked-at", "opening", "in", "P-1").err().contains("why RULE at STEP [on phase B] in PROCEDURE"));
        assertTrue(why("looked-at", "at", "opening", "in", "P-2").err().contains("did you mean P-1?"));
        assertTrue(why("looked-ad", "at", "opening", "in", "P-1").err().contains("did you mean looked-at?"));
        Told.Ran ran = why("looked-at", "at", "shutting", "in", "P-1");
        assertTrue(ran.err().contains("no way through P-1 comes to a step shutting"), ran.err());
        assertEquals(ExitCode.USAGE, ran.code());
    }
}
