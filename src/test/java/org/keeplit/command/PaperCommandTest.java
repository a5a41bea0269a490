package org.keeplit.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.keeplit.page.SmallJob;

/** The commands that write for people: what they write, what they refuse, and what they end with. */
class PaperCommandTest {
    private static final String HOLDS = "  bypass: op closes bridge\n    records \"amperes\"\n";

    @TempDir
    private Path folder;

    private Path job;
    private String out;
    private String err;

    @BeforeEach
    void theJob() throws IOException {
        job = Files.createDirectory(folder.resolve("job"));
        SmallJob.write(job, HOLDS);
    }

    private int run(String... arguments) {
        StringWriter told = new StringWriter();
        StringWriter wrong = new StringWriter();
        int code = Main.run(new PrintWriter(told, true), new PrintWriter(wrong, true), arguments);
        out = told.toString();
        err = wrong.toString();
        return code;
    }

    private String path(String name) {
        return folder.resolve(name).toString();
    }

    private List<String> files(String name) throws IOException {
        Path root = folder.resolve(name);
        try (Stream<Path> all = Files.walk(root)) {
            return all.filter(Files::isRegularFile).map(f -> root.relativize(f).toString()).sorted().toList();
        }
    }

    /** What a file says is shown, and never run. */
    @Test
    void wordsOfAStepAreNoMarkup() throws IOException {
        SmallJob.write(job, HOLDS + "  op does \"<script>alert(2)</script>\"\n");
        assertEquals(ExitCode.PROVED, run("log", "blank", job.toString(), "--out", path("log"), "--date", "2026-03-02"), err);
        String page = Files.readString(folder.resolve("log/p-on-pole/log.html"));
        assertTrue(!page.contains("<script") && page.contains("&lt;script&gt;"), page);
    }

    @Test
    void eachWritesItsFolder() throws IOException {
        assertEquals(ExitCode.PROVED, run("report", job.toString(), "--out", path("report"), "--date", "2026-03-02"), err);
        assertEquals("P on pole: holds, 1 way to look through.\n", out);
        assertEquals(List.of("p-on-pole.html"), files("report"));
        assertEquals(ExitCode.PROVED, run("drill", job.toString(), "--out", path("drill"), "--date", "2026-03-02"), err);
        assertEquals(List.of("p-on-pole/answers.html", "p-on-pole/drill.html"), files("drill"));
        assertEquals(ExitCode.PROVED, run("log", "blank", job.toString(), "--out", path("log"), "--date", "2026-03-02"), err);
        assertEquals(List.of("p-on-pole/log.csv", "p-on-pole/log.html", "p-on-pole/log.json", "p-on-pole/log.pdf"), files("log"));
        assertEquals(ExitCode.PROVED, run("cards", job.toString(), "--out", path("cards"), "--date", "2026-03-02"), err);
        assertEquals(8, files("cards").size());
    }

    /** A page without what is the same on all pages of its sort: style, script and the pictures' coordinates. */
    private String words(String file) throws IOException {
        return Files.readString(folder.resolve(file))
                .replaceAll("(?s)<style>.*?</style>", "")
                .replaceAll("(?s)<script>.*?</script>", "")
                .replaceAll("(?s)<(svg) .*?<title>(.*?)</title>.*?</svg>", "[picture: $2]")
                .replaceAll("\\b[0-9a-f]{12}\\b", "(hash)")
                .replaceAll("</(p|h1|h2|h3|li|tr|div|section|header|footer|figure|td)>", "</$1>\n")
                .replaceAll("<br/>", "<br/>\n")
                .replaceAll("\n\n+", "\n");
    }

    /** What each command prints, and what stands on its pages. */
    @Test
    void whatTheyWriteIsAsExpected() throws IOException {
        SmallJob.write(job, """
                  bypass: op closes bridge
                    caution "Keep clear of the bridge."
                    records "amperes"
                  opening: op opens main on all phases
                    requires main is bypassed on all phases
                    because "The bridge carries the load."
                  up: hand goes aloft at main
                  hand comes down
                """);
        for (String command : List.of("cards", "report", "drill")) {
            assertEquals(ExitCode.PROVED, run(command, job.toString(), "--out", path(command), "--date", "2026-03-02"), err);
            Told.assertTold(command, folder, out);
        }
        assertEquals(ExitCode.PROVED, run("log", "blank", job.toString(), "--out", path("log"), "--date", "2026-03-02"), err);
        Told.assertTold("log-blank", folder, out);
        Told.assertTold("cards-crew", folder, words("cards/p-on-pole/crew.html"));
        Told.assertTold("cards-desk", folder, words("cards/p-on-pole/desk-desk.html"));
        Told.assertTold("report-page", folder, words("report/p-on-pole.html"));
        Told.assertTold("drill-answers", folder, words("drill/p-on-pole/answers.html"));
        Told.assertTold("log-sheet", folder, words("log/p-on-pole/log.html"));
        Told.assertTold("log-csv", folder, Files.readString(folder.resolve("log/p-on-pole/log.csv")).replaceAll("[0-9a-f]{12}", "(hash)"));
        Path filled = Files.writeString(
                folder.resolve("filled.csv"),
                Files.readString(folder.resolve("log/p-on-pole/log.csv"))
                        .replace("1,op closes bridge,,op", "1,op closes bridge,2026-03-02T08:15,op"));
        assertEquals(ExitCode.BROKEN, run("log", "check", filled.toString(), job.toString()), err);
        Told.assertTold("log-check", folder, out);
    }

    @Test
    void nothingIsOverwrittenAndNothingIsLeftOut() throws IOException {
        assertEquals(ExitCode.PROVED, run("log", "blank", job.toString(), "--out", path("log"), "--date", "2026-03-02"));
        assertEquals(ExitCode.USAGE, run("log", "blank", job.toString(), "--out", path("log"), "--date", "2026-03-02"));
        assertTrue(err.contains("nothing is overwritten; name a new folder"), err);
        assertEquals(ExitCode.USAGE, run("report", job.toString(), "--out", path("report")));
        assertTrue(err.contains("Missing required option: '--date=DATE'"), err);
        assertFalse(Files.exists(folder.resolve("report")));
    }

    @Test
    void whatIsBrokenEndsAsBroken() throws IOException {
        SmallJob.write(job, "  opening: op opens main on A\n");
        assertEquals(ExitCode.BROKEN, run("report", job.toString(), "--out", path("report"), "--date", "2026-03-02"), err);
        assertTrue(out.startsWith("P on pole: BROKEN"), out);
        assertEquals(ExitCode.BROKEN, run("drill", job.toString(), "--out", path("drill"), "--date", "2026-03-02"), err);
        assertTrue(out.startsWith("P on pole: no drill."), out);
    }

    @Test
    void aFilledLogIsChecked() throws IOException {
        assertEquals(ExitCode.PROVED, run("log", "blank", job.toString(), "--out", path("log"), "--date", "2026-03-02"));
        String blank = Files.readString(folder.resolve("log/p-on-pole/log.csv"));
        Path filled = Files.writeString(folder.resolve("filled.csv"), blank.replace("1,op closes bridge,,op", "1,op closes bridge,2026-03-02T08:15,op"));
        assertEquals(ExitCode.BROKEN, run("log", "check", filled.toString(), job.toString()), err);
        assertEquals(filled + ":4: step 1 has no “amperes”\n1 step written as done. 1 difference.\n", out);
        Files.writeString(filled, Files.readString(filled).replace("amperes,", "amperes,40"));
        assertEquals(ExitCode.PROVED, run("log", "check", filled.toString(), job.toString()), err + out);
        assertEquals("1 step written as done. The log is in order.\n", out);
        assertEquals(ExitCode.USAGE, run("log", "check", path("none.csv"), job.toString()));
        assertTrue(err.contains("there is no file"), err);
        Files.writeString(filled, "step,time\n1,2\n");
        assertEquals(ExitCode.MISTAKES, run("log", "check", filled.toString(), job.toString()));
    }
}
