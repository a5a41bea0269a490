package org.keeplit.command;

import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.keeplit.Keeplit;
import org.keeplit.exchange.Answer;
import org.keeplit.language.Library;
import org.keeplit.language.Reader;
import org.keeplit.outcome.Limits;
import org.keeplit.text.Problems;
import org.keeplit.verdict.Coverage;
import org.keeplit.verdict.ExampleJudgement;
import picocli.CommandLine;

/** {@code test}: tries the examples of rulebooks, and tells what of the rules they do not show. */
@CommandLine.Command(
        name = "test",
        description = "Try the examples of rulebooks: each must hold or break for the reason that it states.",
        mixinStandardHelpOptions = true)
final class TestCommand implements Callable<Integer> {
    @CommandLine.Spec
    private CommandLine.Model.CommandSpec spec;

    @CommandLine.Parameters(
            arity = "0..*",
            paramLabel = "FILE",
            description = "rulebooks, examples, or folders with them; of a rulebook, the examples in the library are"
                    + " tried (default: the folder shared)")
    private List<Path> files;

    @CommandLine.Option(
            names = "--strict",
            description = "a rule or condition that no example shows both ways counts (exit code 5)")
    private boolean strict;

    @CommandLine.Mixin
    private Form form;

    @Override
    public Integer call() {
        Library library = new Reader().readWithExamples(form.files(Nearby.usual(files)));
        Problems problems = Mistakes.of(library);
        Progress progress = new Progress(false);
        List<ExampleJudgement> examples = Keeplit.test(library, Limits.USUAL, progress, problems);
        progress.clear();
        Mistakes.tell(spec, problems.sorted());
        Coverage coverage = Keeplit.coverage(library, examples);
        form.tell(
                spec,
                new Answer.Tests(examples, coverage),
                library.unjudged(),
                problems.sorted(),
                false,
                "There is nothing to test: no rulebook and no examples here.");
        return ExitCode.ofExamples(examples, coverage, problems, strict);
    }
}
