package org.keeplit.command;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.Callable;
import org.keeplit.Keeplit;
import org.keeplit.explore.Limits;
import org.keeplit.insight.PlanResult;
import org.keeplit.language.Library;
import org.keeplit.language.Reader;
import org.keeplit.text.Problems;
import org.keeplit.verdict.PlanReport;
import picocli.CommandLine;

/** {@code plan}: a shortest safe way from a start to an end. */
@CommandLine.Command(
        name = "plan",
        description = "Take the steps of a procedure as what may be done, in whatever order, and find a shortest safe way from its start to its end.",
        mixinStandardHelpOptions = true)
final class PlanCommand implements Callable<Integer> {
    @CommandLine.Spec
    private CommandLine.Model.CommandSpec spec;

    @CommandLine.Parameters(arity = "1..*", paramLabel = "FILE", description = "files, or folders with files")
    private List<Path> files;

    @CommandLine.Option(
            names = "--max-states",
            paramLabel = "N",
            description = "go on from N states at most before a shortest way is given up (default: ${DEFAULT-VALUE})",
            defaultValue = "2000")
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
        List<PlanResult> tables = Keeplit.plan(library, limits, progress, problems);
        progress.clear();
        Mistakes.tell(spec, problems.sorted());
        if (!tables.isEmpty()) {
            out.print(new PlanReport(colors.style()).tell(tables));
        } else if (!problems.hasErrors()) {
            out.println("There is nothing to plan: no procedure here that must hold says what it is proved on.");
        }
        out.flush();
        return code(tables, problems.hasErrors());
    }

    private static int code(List<PlanResult> tables, boolean mistakes) {
        if (mistakes) {
            return ExitCode.MISTAKES;
        } else if (tables.stream().anyMatch(t -> !t.broken().isEmpty() || t.way().isEmpty() && t.exhausted())) {
            return ExitCode.BROKEN;
        }
        boolean cut = tables.stream().anyMatch(t -> t.way().isEmpty());
        return cut ? ExitCode.UNDECIDED : ExitCode.PROVED;
    }
}
