package org.keeplit.command;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.Callable;
import org.keeplit.Keeplit;
import org.keeplit.explore.Limits;
import org.keeplit.insight.SlipResult;
import org.keeplit.insight.SlipTable;
import org.keeplit.language.Library;
import org.keeplit.language.Reader;
import org.keeplit.text.Problems;
import org.keeplit.verdict.SlipReport;
import picocli.CommandLine;

/** {@code slips}: tries every single slip in procedures that hold. */
@CommandLine.Command(
        name = "slips",
        description = "Try every single human slip in procedures that hold, and tell which are exposed: harm comes before anybody looks.",
        mixinStandardHelpOptions = true)
final class SlipsCommand implements Callable<Integer> {
    @CommandLine.Spec
    private CommandLine.Model.CommandSpec spec;

    @CommandLine.Parameters(arity = "1..*", paramLabel = "FILE", description = "files, or folders with files")
    private List<Path> files;

    @CommandLine.Option(names = "--all", description = "tell every slip, not only the exposed ones")
    private boolean all;

    @CommandLine.Option(
            names = "--max-states",
            paramLabel = "N",
            description = "leave a slip undecided after N states (default: ${DEFAULT-VALUE})",
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
        List<SlipTable> tables = Keeplit.slips(library, limits, progress, problems);
        progress.clear();
        Mistakes.tell(spec, problems.sorted());
        if (!tables.isEmpty()) {
            out.print(new SlipReport(colors.style(), all).tell(tables));
        } else if (!problems.hasErrors()) {
            out.println("There is nothing to try: no procedure here that must hold says what it is proved on.");
        }
        out.flush();
        return code(tables, problems.hasErrors());
    }

    private static int code(List<SlipTable> tables, boolean mistakes) {
        if (mistakes) {
            return ExitCode.MISTAKES;
        } else if (tables.stream().anyMatch(t -> !t.holds())) {
            return ExitCode.BROKEN;
        }
        boolean cut = tables.stream().anyMatch(t -> t.count(SlipResult.Ending.UNDECIDED) > 0);
        return cut ? ExitCode.UNDECIDED : ExitCode.PROVED;
    }
}
