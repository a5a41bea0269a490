package org.keeplit.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Full disks, closed outputs, odd files and odd names: one sentence and a code that stays, never a stack trace. */
class RoughHandlingTest {
    @TempDir
    Path folder;

    private Spur spur;
    private Path job;

    @BeforeEach
    void begin() throws IOException {
        spur = new Spur(folder, 3);
        job = spur.procedure("P-1", "supply", "  west opens gang-1\n");
    }

    /** What a process of its own came to. */
    private record Ended(int code, String out, String err) {}

    /** Runs the program in a shell. @param before what stands before it, @param behind what stands behind its arguments */
    private Ended shell(String before, String behind, String... arguments) throws IOException, InterruptedException {
        List<String> words = new ArrayList<>(List.of(
                "'" + Path.of(System.getProperty("java.home"), "bin", "java") + "'",
                "-XX:-UsePerfData",
                "-cp",
                "'" + Path.of("target/classes").toAbsolutePath() + System.getProperty("path.separator") + System.getProperty("keeplit.runtime.path") + "'",
                "org.keeplit.command.Main"));
        for (String argument : arguments) {
            words.add("'" + argument + "'");
        }
        Path out = folder.resolve("told.out");
        Path err = folder.resolve("told.err");
        String line = before + " " + String.join(" ", words) + " " + behind;
        Process process = new ProcessBuilder("bash", "-c", line)
                .directory(folder.toFile())
                .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                .redirectError(err.toFile())
                .redirectOutput(out.toFile())
                .start();
        assertTrue(process.waitFor(100, TimeUnit.SECONDS), line);
        return new Ended(process.exitValue(), Files.readString(out), Files.readString(err));
    }

    private static void assertOneSentence(Ended ended, String sentence) {
        assertEquals(2, ended.code(), ended.out() + ended.err());
        List<String> lines = ended.err().lines().filter(l -> !l.isBlank()).toList();
        assertEquals(1, lines.size(), ended::err);
        assertTrue(lines.get(0).contains(sentence), ended::err);
    }

    /** A limit of file sizes fails a write in the same place as a full disk does. */
    private Ended withoutRoom(String... arguments) throws IOException, InterruptedException {
        // What the shell itself writes goes through a pipe.
        Ended ended = shell("(ulimit -f 0; trap '' XFSZ;", ") 2>&1 >/dev/null | cat > told.pipe; exit ${PIPESTATUS[0]}", arguments);
        return new Ended(ended.code(), ended.out(), Files.readString(folder.resolve("told.pipe")));
    }

    @Test
    void formatOnAFullDiskEndedWithAStackTrace() throws IOException, InterruptedException {
        Path file = folder.resolve("q.procedure");
        String text = "language 1\nprocedure   Q   revision 1\ntitle \"T\"\n";
        Files.writeString(file, text);
        assertOneSentence(withoutRoom("format", file.toString()), "q.procedure cannot be written, and stays as it was: ");
        assertEquals(text, Files.readString(file));
        try (var all = Files.list(folder)) {
            assertFalse(all.anyMatch(f -> f.getFileName().toString().endsWith(".new")));
        }
    }

    @Test
    void sweepResultsOnAFullDiskEndedWithAStackTrace() throws IOException, InterruptedException {
        assertOneSentence(withoutRoom("sweep", "--results", "results.txt", job.toString()), "results.txt cannot be written: ");
        assertFalse(Files.exists(folder.resolve("results.txt")));
        assumeTrue(Files.exists(Path.of("/dev/full")));
        assertOneSentence(shell("", "", "sweep", "--results", "/dev/full", job.toString()), "/dev/full is no regular file");
    }

    @Test
    void aFullDiskPrintedTheUsagePage() throws IOException, InterruptedException {
        assertOneSentence(withoutRoom("check", "--proofs", "proofs", job.toString()), "proofs cannot be written: ");
        assertFalse(Files.exists(folder.resolve("proofs")));
        assertOneSentence(withoutRoom("log", "blank", "--out", "logs", "--date", "2026-03-02", job.toString()), "logs cannot be written: ");
        assertFalse(Files.exists(folder.resolve("logs")));
        assertOneSentence(withoutRoom("new", "procedure", "Q"), " cannot be written: ");
        assertFalse(Files.exists(folder.resolve("Q.procedure")));
    }

    @Test
    void anExistingFolderPrintedTheUsagePage() {
        for (String[] command : new String[][] {
            {"check", "--proofs", folder.toString(), job.toString()},
            {"log", "blank", "--out", folder.toString(), "--date", "2026-03-02", job.toString()},
        }) {
            Told.Ran ran = Told.run(command);
            assertOneSentence(new Ended(ran.code(), ran.out(), ran.err()), "nothing is overwritten");
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {">&-", ">/dev/full"})
    void aClosedOrFullStandardOutputEndedWithExit0(String behind) throws IOException, InterruptedException {
        assumeTrue(Files.exists(Path.of("/dev/full")));
        assertOneSentence(shell("", behind, "check", job.toString()), "Standard output could not be written to the end");
    }

    @Test
    void importReadDevZeroUntilMemoryEndedAndWaitedForAFifo() throws IOException, InterruptedException {
        Path fifo = folder.resolve("fifo");
        assumeTrue(new ProcessBuilder("mkfifo", fifo.toString()).start().waitFor() == 0);
        for (String file : List.of("/dev/zero", fifo.toString())) {
            Told.Ran ran = assertTimeoutPreemptively(
                    Duration.ofSeconds(20), () -> Told.run("import", file, "--out", folder.resolve("new.network").toString()));
            assertEquals(3, ran.code(), ran.err());
            assertTrue(ran.err().contains("this is no regular file, so it is not read"), ran::err);
        }
        Told.Ran log = assertTimeoutPreemptively(Duration.ofSeconds(20), () -> Told.run("log", "check", fifo.toString(), job.toString()));
        assertEquals(2, log.code(), log.err());
        assertTrue(log.err().contains("is no regular file"), log::err);
    }

    @ParameterizedTest
    @ValueSource(strings = {"cards", "report", "drill", "export", "log blank"})
    void aDateAsInTheStatesPrintedAJavaException(String command) {
        List<String> words = new ArrayList<>(List.of(command.split(" ")));
        words.addAll(List.of("--out", folder.resolve("new").toString(), "--date", "11/28/2025", job.toString()));
        Told.Ran ran = Told.run(words.toArray(String[]::new));
        assertEquals(2, ran.code());
        assertTrue(ran.err().contains("'--date': a date is written year, month, day, such as 2026-03-02, not “11/28/2025”"), ran::err);
        assertFalse(ran.err().contains("java."), ran::err);
    }

    @ParameterizedTest
    @ValueSource(strings = {"text", "json", "sarif", "junit"})
    void aNameThatIsNotAsciiEndedWithExit70WhereTheLocaleIsC(String format) throws IOException, InterruptedException {
        Path names = Files.createDirectory(folder.resolve("names"));
        Path named;
        try {
            named = names.resolve("höhe.procedure");
        } catch (java.nio.file.InvalidPathException e) {
            assumeTrue(false, "this virtual machine was itself started in such a locale");
            return;
        }
        Files.copy(job, named);
        Files.writeString(names.resolve("ü.procedure"), Files.readString(job).replace("P-1", "P-2").replace("keeps supply", "keeps nothing-here"));
        Ended ended = shell("LC_ALL=C", "", "check", "--format", format, "names");
        assertEquals(3, ended.code(), ended.err());
        assertTrue(ended.out().contains("P-1"), ended::out);
        assertFalse((ended.out() + ended.err()).contains("java."), ended.out() + ended.err());
        Ended alone = shell("LC_ALL=C", "", "check", "--format", format, "names/höhe.procedure");
        assertEquals(2, alone.code(), alone.err());
        assertTrue(alone.err().contains("set one in UTF-8, such as LC_ALL=C.UTF-8"), alone::err);
        assertFalse(alone.err().contains("java."), alone::err);
    }

    @Test
    void aTerminalEscapeInATextWasPrintedRaw() throws IOException {
        for (String bad : List.of("\u001b[2J", "\u202e", "\u200b", "\u0007", "\u009b", "\u00ad", "\ufeff", "\u2066")) {
            Path file = spur.procedure("P-2", "supply", "A " + bad + "job", "  west opens gang-1\n");
            Told.Ran ran = Told.run("check", file.toString());
            assertEquals(3, ran.code(), ran.out() + ran.err());
            assertTrue(ran.err().contains("P-2.procedure:3:10: in this text stands") || ran.err().contains("P-2.procedure:3:10: this text has a character"), ran::err);
            assertTrue(ran.err().contains(String.format("U+%04X", bad.codePointAt(0))), ran::err);
            assertFalse((ran.out() + ran.err()).contains(bad.substring(0, 1)), "printed raw");
            Path comment = spur.procedure("P-3", "supply", "A job", "  west opens gang-1  # " + bad + " note\n");
            Told.Ran other = Told.run("check", comment.toString());
            assertEquals(3, other.code(), other.out() + other.err());
            assertTrue(other.err().contains("this comment has a character"), other::err);
        }
    }

    @Test
    void aTerminalEscapeInTheNameOfAFileWasPrintedRaw() throws IOException {
        Path odd = folder.resolve("a\u001b[31;1mred\u001b[2J\u202eb.procedure");
        Files.writeString(odd, Files.readString(job).replace("keeps supply", "keeps nothing-here"), StandardCharsets.UTF_8);
        Told.Ran ran = Told.run("check", odd.toString());
        assertEquals(3, ran.code());
        assertFalse(ran.err().contains("\u001b[2J"), ran::err);
        assertFalse(ran.err().contains("\u202e"), ran::err);
        assertTrue(ran.err().contains("\\u001b[2J\\u202eb.procedure"), ran::err);
        Told.Ran none = Told.run("check", folder.resolve("no\u001b[2J.procedure").toString());
        assertFalse(none.err().contains("\u001b[2J"), none::err);
    }

    @Test
    void moreThanAHundredWarningsBecameAnError() throws IOException {
        StringBuilder text = new StringBuilder(Files.readString(folder.resolve("shared/spur.network")));
        for (int i = 0; i < 130; i++) {
            text.append("load dark-").append(i).append(" at lonely-").append(i).append(", phases ABC, 1 kW, 1 customer\n");
        }
        Files.writeString(folder.resolve("shared/spur.network"), text);
        spur.rules("supply", "every source S is energized");
        Told.Ran ran = Told.run("check", job.toString());
        assertTrue(ran.err().contains("only the first 100 warnings of this file are listed"), ran::err);
        assertEquals(0, ran.code(), ran.out() + ran.err());
    }
}
