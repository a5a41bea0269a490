package org.keeplit.command;

import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.Callable;
import org.keeplit.exchange.Answer;
import org.keeplit.language.Library;
import org.keeplit.language.Reader;
import org.keeplit.outcome.Limits;
import org.keeplit.outcome.Watcher;
import org.keeplit.text.Problems;
import picocli.CommandLine;

/** A command that works something out of every procedure among its files that must hold, and tells it. @param <T> what it works out of one */
abstract class TellingCommand<T> implements Callable<Integer> {
    @CommandLine.Spec
    private CommandLine.Model.CommandSpec spec;

    @CommandLine.Parameters(arity = "1..*", paramLabel = "FILE", description = "files, or folders with files")
    private List<Path> files;

    @CommandLine.Mixin
    private Form form;

    /** {@return how many states are looked at} */
    abstract int maxStates();

    /** {@return what is done, as in "nothing to try"} */
    abstract String verb();

    abstract List<T> workOut(Library library, Limits limits, Watcher watcher, Problems problems);

    abstract Answer answer(List<T> all);

    /** {@return whether text tells everything} */
    boolean isFull() {
        return false;
    }

    abstract boolean isBroken(T one);

    abstract boolean isUndecided(T one);

    @Override
    public Integer call() {
        Library library = new Reader().read(form.files(files));
        Problems problems = Mistakes.of(library);
        Limits limits = new Limits(maxStates(), Duration.ofSeconds(60), Limits.USUAL.bytes());
        Progress progress = new Progress(false);
        List<T> all = workOut(library, limits, progress, problems);
        progress.clear();
        Mistakes.tell(spec, problems.sorted());
        form.tell(
                spec,
                answer(all),
                problems.sorted(),
                isFull(),
                "There is nothing to " + verb() + ": no procedure here that must hold says what it is proved on.");
        if (problems.hasErrors()) {
            return ExitCode.MISTAKES;
        } else if (all.stream().anyMatch(this::isBroken)) {
            return ExitCode.BROKEN;
        }
        return all.stream().anyMatch(this::isUndecided) ? ExitCode.UNDECIDED : ExitCode.PROVED;
    }
}
