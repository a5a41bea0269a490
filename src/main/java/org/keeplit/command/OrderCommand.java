package org.keeplit.command;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.Callable;
import org.keeplit.Keeplit;
import org.keeplit.explore.Limits;
import org.keeplit.insight.OrderTable;
import org.keeplit.language.Library;
import org.keeplit.language.Reader;
import org.keeplit.text.Problems;
import org.keeplit.verdict.OrderReport;
import picocli.CommandLine;

/** {@code order}: which steps must come before which. */
@CommandLine.Command(
        name = "order",
        description = "Tell which steps must come before which and what goes wrong otherwise, and whether every order that keeps to that is safe.",
        mixinStandardHelpOptions = true)
final class OrderCommand implements Callable<Integer> {
    @CommandLine.Spec
    private CommandLine.Model.CommandSpec spec;

    @CommandLine.Parameters(arity = "1..*", paramLabel = "FILE", description = "files, or folders with files")
    private List<Path> files;

    @CommandLine.Option(names = "--all", description = "tell every pair of steps, not only what must come directly before what")
    private boolean all;

    @CommandLine.Option(
            names = "--max-states",
            paramLabel = "N",
            description = "leave it undecided whether every other order is safe after N states (default: ${DEFAULT-VALUE})",
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
        List<OrderTable> tables = Keeplit.order(library, limits, progress, problems);
        progress.clear();
        Mistakes.tell(spec, problems.sorted());
        if (!tables.isEmpty()) {
            out.print(new OrderReport(colors.style(), all).tell(tables));
        } else if (!problems.hasErrors()) {
            out.println("There is nothing to try: no procedure here that must hold says what it is proved on.");
        }
        out.flush();
        return code(tables, problems.hasErrors());
    }

    private static int code(List<OrderTable> tables, boolean mistakes) {
        if (mistakes) {
            return ExitCode.MISTAKES;
        } else if (tables.stream().anyMatch(t -> !t.holds())) {
            return ExitCode.BROKEN;
        }
        boolean cut = tables.stream().anyMatch(t -> t.asWritten().answer() == OrderTable.Answer.UNDECIDED);
        return cut ? ExitCode.UNDECIDED : ExitCode.PROVED;
    }
}
