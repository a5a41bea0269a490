package org.keeplit.command;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.Callable;
import org.keeplit.Keeplit;
import org.keeplit.explore.Limits;
import org.keeplit.insight.RetreatTable;
import org.keeplit.language.Library;
import org.keeplit.language.Reader;
import org.keeplit.text.Problems;
import org.keeplit.verdict.RetreatReport;
import picocli.CommandLine;

/** {@code retreat}: the ways back to normal. */
@CommandLine.Command(
        name = "retreat",
        description = "Find a safe way back to normal from every state of procedures that hold, and every point of no return.",
        mixinStandardHelpOptions = true)
final class RetreatCommand implements Callable<Integer> {
    @CommandLine.Spec
    private CommandLine.Model.CommandSpec spec;

    @CommandLine.Parameters(arity = "1..*", paramLabel = "FILE", description = "files, or folders with files")
    private List<Path> files;

    @CommandLine.Option(names = "--all", description = "tell every way in full")
    private boolean all;

    @CommandLine.Option(
            names = "--max-states",
            paramLabel = "N",
            description = "look at N states at most (default: ${DEFAULT-VALUE})",
            defaultValue = "200000")
    private int maxStates;

    @CommandLine.Mixin
    private Colors colors;

    @Override
    public Integer call() {
        PrintWriter out = spec.commandLine().getOut();
        Library library = new Reader().read(files);
        Problems problems = Mistakes.of(library);
        Limits limits = new Limits(maxStates, Duration.ofSeconds(60), Limits.USUAL.bytes());
        Progress progress = new Progress(false);
        List<RetreatTable> tables = Keeplit.retreat(library, limits, progress, problems);
        progress.clear();
        Mistakes.tell(spec, problems.sorted());
        if (!tables.isEmpty()) {
            out.print(new RetreatReport(colors.style(), all).tell(tables));
        } else if (!problems.hasErrors()) {
            out.println("There is nothing to try: no procedure here that must hold says what it is proved on.");
        }
        out.flush();
        return code(tables, problems.hasErrors());
    }

    private static int code(List<RetreatTable> tables, boolean mistakes) {
        if (mistakes) {
            return ExitCode.MISTAKES;
        } else if (tables.stream().anyMatch(t -> !t.holds() || t.none() > 0)) {
            return ExitCode.BROKEN;
        }
        boolean cut = tables.stream().anyMatch(t -> t.cut());
        return cut ? ExitCode.UNDECIDED : ExitCode.PROVED;
    }
}
