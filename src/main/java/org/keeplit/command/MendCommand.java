package org.keeplit.command;

import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.keeplit.Keeplit;
import org.keeplit.exchange.Answer;
import org.keeplit.language.Library;
import org.keeplit.language.Reader;
import org.keeplit.outcome.Limits;
import org.keeplit.outcome.Mend;
import org.keeplit.procedure.Procedure;
import org.keeplit.text.Problems;
import picocli.CommandLine;

/** {@code mend}: the smallest changes after which a broken procedure holds. */
@CommandLine.Command(
        name = "mend",
        description = "Find the smallest changes of the text after which a broken procedure holds: steps moved, put in or left out. Nothing is written.",
        mixinStandardHelpOptions = true)
final class MendCommand implements Callable<Integer> {
    @CommandLine.Spec
    private CommandLine.Model.CommandSpec spec;

    @CommandLine.Parameters(arity = "1..*", paramLabel = "FILE", description = "files, or folders with files")
    private List<Path> files;

    @CommandLine.Option(names = "--variants", description = "teaching variants, too: which of their changes is taken back")
    private boolean variants;

    @CommandLine.Option(
            names = "--max-states",
            converter = AtLeast.One.class,
            paramLabel = "N",
            description = "pass over a changed text that has more than N states (default: ${DEFAULT-VALUE})",
            defaultValue = "200000")
    private int maxStates;

    @CommandLine.Mixin
    private Form form;

    @Override
    public Integer call() {
        Library library = new Reader().read(form.files(files));
        Problems problems = Mistakes.of(library);
        Mistakes.tell(spec, problems.sorted());
        if (problems.hasErrors()) {
            form.tell(spec, new Answer.Mends(List.of()), library.unjudged(), problems.sorted(), false, "");
            return ExitCode.MISTAKES;
        }
        Limits limits = new Limits(maxStates, Duration.ofSeconds(60), Limits.USUAL.bytes());
        Progress progress = new Progress(false);
        List<Mend> mends = new ArrayList<>();
        for (Procedure procedure : library.givenProcedures()) {
            if ((variants || procedure.mustFail().isEmpty()) && !procedure.proofs().isEmpty()) {
                mends.add(Keeplit.mend(library, procedure, limits, progress));
            }
        }
        progress.clear();
        form.tell(
                spec,
                new Answer.Mends(mends),
                library.unjudged(),
                problems.sorted(),
                false,
                "There is nothing to mend: no procedure here that must hold says what it is proved on.");
        if (mends.stream().anyMatch(mend -> !mend.holds() && !mend.cut())) {
            return ExitCode.BROKEN;
        }
        return mends.stream().anyMatch(Mend::cut) ? ExitCode.UNDECIDED : ExitCode.PROVED;
    }
}
