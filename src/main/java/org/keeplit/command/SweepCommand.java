package org.keeplit.command;

import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.keeplit.exchange.Answer;
import org.keeplit.insight.Sweep;
import org.keeplit.language.Library;
import org.keeplit.language.Reader;
import org.keeplit.network.Network;
import org.keeplit.outcome.Limits;
import org.keeplit.outcome.SweepResult;
import org.keeplit.procedure.Instance;
import org.keeplit.procedure.Procedure;
import org.keeplit.text.Problems;
import picocli.CommandLine;

/** {@code sweep}: proves standard procedures on everything that they fit. */
@CommandLine.Command(
        name = "sweep",
        description = "Prove procedures on every device that they fit in every network among the files, several at a time.",
        mixinStandardHelpOptions = true)
final class SweepCommand implements Callable<Integer> {
    private static final long EVERY = 500_000_000L;

    @CommandLine.Spec
    private CommandLine.Model.CommandSpec spec;

    @CommandLine.Parameters(
            arity = "1..*",
            paramLabel = "FILE",
            description = "files, or folders with files: the procedures, and the networks; where no network is given, those that the procedures name")
    private List<Path> files;

    @CommandLine.Option(names = "--all", description = "tell every place, not only where something breaks or is not decided")
    private boolean all;

    @CommandLine.Option(
            names = "--results",
            paramLabel = "FILE",
            description = "write results there as they come; a sweep over the same files that was stopped goes on from it")
    private Path results;

    @CommandLine.Option(
            names = "--threads",
            converter = AtLeast.One.class,
            paramLabel = "N",
            description = "work on N places at a time (default: as many as there are processors)")
    private int threads = Runtime.getRuntime().availableProcessors();

    @CommandLine.Option(
            names = "--max-states",
            converter = AtLeast.One.class,
            paramLabel = "N",
            description = "leave a place undecided after N states (default: ${DEFAULT-VALUE})",
            defaultValue = "1000000")
    private int maxStates;

    @CommandLine.Mixin
    private Form form;

    private SweepResults kept;
    private long started;
    private long next;

    @Override
    public Integer call() {
        Library library = new Reader().read(form.files(files));
        Problems problems = Mistakes.of(library);
        Mistakes.tell(spec, problems.sorted());
        if (problems.hasErrors()) {
            form.tell(spec, new Answer.Sweeps(List.of()), library.mistaken(), problems.sorted(), all, "");
            return ExitCode.MISTAKES;
        }
        List<Procedure> procedures = library.givenProcedures().stream()
                .filter(p -> p.mustFail().isEmpty())
                .toList();
        List<Network> given = library.networks().values().stream()
                .filter(n -> library.given().contains(n.span().source().name()))
                .toList();
        List<Instance> places =
                Sweep.places(procedures, given.isEmpty() ? library.networks().values() : given);
        if (places.isEmpty()) {
            String nothing = "There is nothing to sweep: no procedure here that must hold fits anything in a network here.";
            form.tell(spec, new Answer.Sweeps(List.of()), library.mistaken(), problems.sorted(), all, nothing);
            return ExitCode.PROVED;
        }
        try {
            kept = results == null ? null : SweepResults.open(results, library, "states " + maxStates);
        } catch (SweepResults.Foreign foreign) {
            throw new Refused(foreign.getMessage());
        } catch (CharacterCodingException coded) {
            throw new Refused(results + " is not a file of a sweep; nothing was written to it");
        } catch (IOException e) {
            throw Refused.unwritten(results, e);
        }
        if (kept != null && !kept.rejected().isEmpty()) {
            spec.commandLine().getErr().println(results + ": " + kept.rejected().size()
                    + (kept.rejected().size() == 1 ? " line does" : " lines do") + " not bear the seal of this sweep ("
                    + kept.rejected().stream().map(String::valueOf).collect(Collectors.joining(", "))
                    + "); what stood there is proved anew");
        }
        Limits limits = new Limits(maxStates, Duration.ofMinutes(10), Limits.USUAL.bytes());
        started = System.nanoTime();
        List<SweepResult> told =
                Sweep.run(places, kept == null ? Map.of() : kept.known(), limits, threads, this::done);
        if (next > 0) {
            System.err.print("\r" + " ".repeat(70) + "\r");
        }
        form.tell(spec, new Answer.Sweeps(told), library.mistaken(), problems.sorted(), all, "");
        return code(told, places.size());
    }

    private boolean done(SweepResult result, int done, int of) {
        if (kept != null) {
            kept.add(result);
        }
        long now = System.nanoTime();
        if (System.console() != null && now - next > EVERY) {
            next = now;
            int before = kept == null ? 0 : kept.known().size();
            double each = (now - started) / 1e9 / Math.max(1, done - before);
            System.err.printf(Locale.ROOT, "\r%,d of %,d places, about %,.0f s left ", done, of, each * (of - done));
            System.err.flush();
        }
        return !Thread.currentThread().isInterrupted();
    }

    private static int code(List<SweepResult> results, int places) {
        if (results.stream().anyMatch(r -> r.answer() == SweepResult.Answer.BREAKS)) {
            return ExitCode.BROKEN;
        }
        boolean cut = results.size() < places
                || results.stream().anyMatch(r -> r.answer() == SweepResult.Answer.UNDECIDED);
        boolean unasked = results.stream().anyMatch(r -> r.answer() == SweepResult.Answer.NOT_PROVED);
        return cut ? ExitCode.UNDECIDED : unasked ? ExitCode.NOT_PROVED : ExitCode.PROVED;
    }
}
