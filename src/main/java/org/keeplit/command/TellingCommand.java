package org.keeplit.command;

import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.OptionalInt;
import java.util.concurrent.Callable;
import java.util.function.Function;
import java.util.function.Predicate;
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

    private final String verb;
    private final Work<T> work;
    private final Function<List<T>, Answer> answer;
    private final Predicate<T> broken;
    private final Predicate<T> undecided;

    /** What works it out. @param <T> what it works out of one */
    interface Work<T> {
        List<T> of(Library library, Limits limits, Watcher watcher, Problems problems);
    }

    /**
     * A command.
     *
     * @param verb what is done, as in "nothing to try"
     * @param work what works it out
     * @param answer puts it together to be told
     * @param broken whether one thing counts as broken
     * @param undecided whether one that does not is undecided
     */
    TellingCommand(String verb, Work<T> work, Function<List<T>, Answer> answer, Predicate<T> broken, Predicate<T> undecided) {
        this.verb = verb;
        this.work = work;
        this.answer = answer;
        this.broken = broken;
        this.undecided = undecided;
    }

    /** {@return how many states are looked at} */
    abstract int maxStates();

    /** {@return whether text tells everything} */
    abstract boolean isFull();

    @Override
    public Integer call() {
        Library library = new Reader().read(form.files(files));
        Problems problems = Mistakes.of(library);
        Limits limits = new Limits(maxStates(), Duration.ofSeconds(60), Limits.USUAL.bytes());
        Progress progress = new Progress(false);
        List<T> all = work.of(library, limits, progress, problems);
        progress.clear();
        Mistakes.tell(spec, problems.sorted());
        form.tell(
                spec,
                answer.apply(all),
                library.unjudged(),
                problems.sorted(),
                isFull(),
                "There is nothing to " + verb + ": no procedure here that must hold says what it is proved on.");
        OptionalInt wrong = ExitCode.of(problems);
        if (wrong.isPresent() && wrong.getAsInt() != ExitCode.UNDECIDED) {
            return wrong.getAsInt();
        } else if (all.stream().anyMatch(broken)) {
            return ExitCode.BROKEN;
        }
        int rest = library.unjudged().isEmpty() ? ExitCode.PROVED : ExitCode.NOT_PROVED;
        return wrong.isPresent() || all.stream().anyMatch(undecided) ? ExitCode.UNDECIDED : rest;
    }
}
