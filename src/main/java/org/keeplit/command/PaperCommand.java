package org.keeplit.command;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.concurrent.Callable;
import java.util.function.Consumer;
import org.keeplit.language.Library;
import org.keeplit.language.Reader;
import org.keeplit.outcome.Limits;
import org.keeplit.outcome.Watcher;
import org.keeplit.page.Proof;
import org.keeplit.page.WholeFolder;
import org.keeplit.procedure.Instance;
import org.keeplit.text.Problems;
import picocli.CommandLine;

/** A command that writes a folder of pages for people, whole or not at all. @param <T> what it makes of one procedure at one place */
abstract class PaperCommand<T> implements Callable<Integer> {
    @CommandLine.Spec
    private CommandLine.Model.CommandSpec spec;

    @CommandLine.Parameters(arity = "1..*", paramLabel = "FILE", description = "files, or folders with files")
    private List<Path> files;

    @CommandLine.Option(names = "--out", paramLabel = "FOLDER", description = "the folder to write; it must be empty or absent")
    private Path folder;

    @CommandLine.Option(
            names = "--date",
            paramLabel = "DATE",
            description = "the date that stands on every sheet, such as 2026-03-02")
    private LocalDate date;

    @CommandLine.Option(
            names = "--max-states",
            converter = AtLeast.One.class,
            paramLabel = "N",
            description = "look at N states of a procedure at most (default: ${DEFAULT-VALUE})",
            defaultValue = "200000")
    private int maxStates;

    private OptionalInt refused = OptionalInt.empty();

    /** {@return what is written, as in "no cards to write"} */
    abstract String noun();

    abstract List<T> workOut(Library library, Limits limits, Watcher watcher, Problems problems);

    /** {@return where it was made} */
    abstract Instance instance(T one);

    /** {@return one line on what was made} */
    abstract String told(T one);

    abstract Proof proof(T one);

    /** {@return the pages of one by their path below its folder} @param told is told what comes next, where that takes long */
    abstract Map<String, byte[]> pages(T one, LocalDate date, Consumer<String> told);

    @Override
    public Integer call() {
        need(folder, "--out=FOLDER");
        need(date, "--date=DATE");
        free(spec, folder);
        PrintWriter out = spec.commandLine().getOut();
        List<T> all = made();
        if (all == null) {
            return refused();
        }
        if (all.isEmpty()) {
            out.println("There are no " + noun() + " to write: no procedure here that must hold says what it is proved on.");
            out.flush();
            return ExitCode.PROVED;
        }
        Progress progress = new Progress(false);
        Map<String, byte[]> pages = laidOut(all, progress);
        progress.clear();
        write(spec, folder, pages);
        all.forEach(one -> out.println(told(one)));
        out.flush();
        return code(all);
    }

    /** Says that nothing is overwritten, before anything is worked out. */
    static void free(CommandLine.Model.CommandSpec spec, Path folder) {
        try {
            if (WholeFolder.isTaken(folder)) {
                throw new Refused(taken(folder));
            }
        } catch (IOException e) {
            throw Refused.unwritten(folder, e);
        }
    }

    private static String taken(Path folder) {
        return "there is something in " + folder + " already, and nothing is overwritten; name a new folder";
    }

    /** Writes a folder whole; of no pages, none. @param spec the command, which is told what cannot be */
    static void write(CommandLine.Model.CommandSpec spec, Path folder, Map<String, byte[]> pages) {
        try {
            if (!pages.isEmpty()) {
                WholeFolder.write(folder, pages);
            }
        } catch (FileAlreadyExistsException there) {
            throw new Refused(taken(folder));
        } catch (IOException e) {
            throw Refused.unwritten(folder, e);
        }
    }

    private void need(Object option, String name) {
        if (option == null) {
            throw new CommandLine.ParameterException(spec.commandLine(), "Missing required option: '" + name + "'");
        }
    }

    CommandLine.Model.CommandSpec spec() {
        return spec;
    }

    /** {@return what is made of the files; null if they have mistakes, which are told} */
    List<T> made() {
        Library library = new Reader().read(files);
        Problems problems = Mistakes.of(library);
        Progress progress = new Progress(false);
        List<T> all = workOut(library, new Limits(maxStates, Duration.ofMinutes(10), Limits.USUAL.bytes()), progress, problems);
        progress.clear();
        Mistakes.tell(spec, problems.sorted());
        refused = ExitCode.of(problems);
        return refused.isPresent() ? null : all;
    }

    /** {@return the exit code where nothing was made} */
    int refused() {
        return refused.getAsInt();
    }

    private Map<String, byte[]> laidOut(List<T> all, Progress progress) {
        Map<String, byte[]> pages = new LinkedHashMap<>();
        Map<String, Integer> used = new LinkedHashMap<>();
        for (T one : all) {
            String writing = "writing " + instance(one).words();
            progress.step(writing);
            String name = WholeFolder.slug(instance(one).words());
            int times = used.merge(name, 1, Integer::sum);
            String under = times == 1 ? name : name + "-" + times;
            pages(one, date, what -> progress.step(writing + " " + what)).forEach((file, page) -> pages.put(under + (file.startsWith(".") ? file : "/" + file), page));
        }
        return pages;
    }

    int code(List<T> all) {
        if (all.stream().anyMatch(one -> proof(one) == Proof.BROKEN)) {
            return ExitCode.BROKEN;
        }
        return all.stream().anyMatch(one -> proof(one) == Proof.UNDECIDED) ? ExitCode.UNDECIDED : ExitCode.PROVED;
    }
}
