package org.keeplit;

import com.google.common.collect.ImmutableList;
import java.nio.file.Path;
import java.time.Duration;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiFunction;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.keeplit.explore.AtOnePlace;
import org.keeplit.explore.Everywhere;
import org.keeplit.explore.Explored;
import org.keeplit.explore.InOrder;
import org.keeplit.explore.Proving;
import org.keeplit.insight.Ordering;
import org.keeplit.insight.Planning;
import org.keeplit.insight.Retreats;
import org.keeplit.insight.Slips;
import org.keeplit.language.Library;
import org.keeplit.language.Reader;
import org.keeplit.mend.Mending;
import org.keeplit.network.Conductor;
import org.keeplit.outcome.Effort;
import org.keeplit.outcome.Limits;
import org.keeplit.outcome.Mend;
import org.keeplit.outcome.OrderTable;
import org.keeplit.outcome.Outcome;
import org.keeplit.outcome.PlanResult;
import org.keeplit.outcome.RetreatTable;
import org.keeplit.outcome.RuleAtStep;
import org.keeplit.outcome.SlipTable;
import org.keeplit.outcome.Watcher;
import org.keeplit.procedure.Example;
import org.keeplit.procedure.Examples;
import org.keeplit.procedure.Instance;
import org.keeplit.procedure.Procedure;
import org.keeplit.procedure.Unjudged;
import org.keeplit.proof.ProofMaker;
import org.keeplit.recheck.ProofFile;
import org.keeplit.recheck.Recheck;
import org.keeplit.recheck.Rechecked;
import org.keeplit.text.Problems;
import org.keeplit.verdict.Coverage;
import org.keeplit.verdict.ExampleJudgement;
import org.keeplit.verdict.Judgement;

/** The entry point for programs that embed the verifier. */
public final class Keeplit {
    private Keeplit() {}

    /**
     * Reads files.
     *
     * @param filesOrFolders the files; folders are read whole
     * @return what they hold, with all problems
     */
    public static Library read(List<Path> filesOrFolders) {
        return new Reader().read(filesOrFolders);
    }

    /**
     * Proves every procedure of the given files on every place that it names.
     *
     * @param library what was read
     * @param limits how far to go for each
     * @param watcher is told how each gets on
     * @param problems collects what does not fit
     * @return the verdicts, in the order of the files
     */
    public static ImmutableList<Judgement> check(
            Library library, Limits limits, Watcher watcher, Problems problems) {
        return check(library, limits, 1, watcher, problems);
    }

    /**
     * Like {@link #check(Library, Limits, Watcher, Problems)}, several at a time. What comes out is the same.
     *
     * @param library what was read
     * @param limits how far to go for each
     * @param threads how many at a time, 1 or more
     * @param watcher is told of all of them, from several threads
     * @param problems collects what does not fit
     * @return the verdicts, in the order of the files
     */
    public static ImmutableList<Judgement> check(
            Library library, Limits limits, int threads, Watcher watcher, Problems problems) {
        return prove(library, limits, threads, watcher, problems, false).stream()
                .map(Proved::judgement)
                .collect(ImmutableList.toImmutableList());
    }

    /**
     * A verdict with what it can be re-checked by.
     *
     * @param judgement the verdict
     * @param proof all states, in words; nothing if the procedure does not hold, or is a teaching variant
     */
    public record Proved(Judgement judgement, Optional<ProofFile> proof) {}

    /**
     * Like {@link #check(Library, Limits, int, Watcher, Problems)}, and writes down all states of what holds, for {@link #recheck}.
     *
     * @param library what was read
     * @param limits how far to go for each
     * @param threads how many at a time, 1 or more
     * @param watcher is told of all of them, from several threads
     * @param problems collects what does not fit
     * @return the verdicts with the proofs, in the order of the files
     */
    public static ImmutableList<Proved> prove(
            Library library, Limits limits, int threads, Watcher watcher, Problems problems) {
        return prove(library, limits, threads, watcher, problems, true);
    }

    private static ImmutableList<Proved> prove(
            Library library, Limits limits, int threads, Watcher watcher, Problems problems, boolean writes) {
        ImmutableList.Builder<Proved> all = ImmutableList.builder();
        for (Checked checked : InOrder.map(instances(library), threads, one -> checked(one, limits, watcher, writes))) {
            checked.problems.sorted().forEach(problems::add);
            checked.proved.ifPresent(all::add);
        }
        return all.build();
    }

    private static List<Instance> instances(Library library) {
        return library.givenProcedures().stream()
                .flatMap(p -> Instance.of(p, library.networks()).stream())
                .toList();
    }

    private record Checked(Optional<Proved> proved, Problems problems) {}

    private static Checked checked(Instance one, Limits limits, Watcher watcher, boolean writes) {
        Problems mine = new Problems();
        return new Checked(AtOnePlace.guarded(one, mine, () -> proved(one, limits, watcher, mine, writes)), mine);
    }

    private static Optional<Proved> proved(Instance one, Limits limits, Watcher watcher, Problems problems, boolean writes) {
        try {
            if (watcher.isStopped()) {
                throw new Effort.Spent("not reached before it was stopped");
            }
            return explored(one, limits, watcher, problems).map(found -> {
                Judgement judgement = Judgement.of(one, found.outcome());
                boolean written = writes && judgement.status() == Judgement.Status.HOLDS;
                return new Proved(judgement, written ? ProofMaker.of(one, found, limits.events()) : Optional.empty());
            });
        } catch (Effort.Spent spent) {
            return Optional.of(new Proved(Judgement.of(one, Outcome.notBegun(spent.getMessage())), Optional.empty()));
        }
    }

    /**
     * {@return what has no verdict: what the library says has none, and procedures that were refused at a place}
     *
     * @param library what was read
     * @param judgements what {@link #check} found in it
     */
    public static ImmutableList<Unjudged> unjudged(Library library, List<Judgement> judgements) {
        Set<String> judged = judgements.stream().map(j -> j.instance().words()).collect(Collectors.toSet());
        return Stream.concat(
                        library.unjudged().stream(),
                        instances(library).stream().filter(i -> !judged.contains(i.words())).map(Unjudged::refused))
                .collect(ImmutableList.toImmutableList());
    }

    /**
     * Re-checks a written proof with a second evaluator, which shares nothing with the one that wrote it: that the start is among its
     * states, that whatever may follow one of them is, that nothing is broken in any, and that it has no others. It is slow.
     *
     * @param proof the proof
     * @param library what was read, with the procedure that the proof is of
     * @param events how many events may happen at most; a proof that was written with another number is refused
     * @param most how long to go on at most
     * @param going is told how it gets on; may stop it
     * @return what came of it
     */
    public static Rechecked recheck(ProofFile proof, Library library, int events, Duration most, Recheck.Going going) {
        return Recheck.of(proof, instances(library), events, most, going);
    }

    private static Optional<Explored> explored(Instance one, Limits limits, Watcher watcher, Problems problems) {
        return Proving.explored(one.procedure(), one.network(), one.proof(), limits, watcher, problems);
    }

    /**
     * Tries every example of the given files.
     *
     * @param library what was read, with the examples
     * @param limits how far to go for each
     * @param watcher is told how each gets on
     * @param problems collects what does not fit
     * @return what came of them, in the order of the files
     */
    public static ImmutableList<ExampleJudgement> test(
            Library library, Limits limits, Watcher watcher, Problems problems) {
        ImmutableList.Builder<ExampleJudgement> all = ImmutableList.builder();
        for (Examples group : library.givenExamples()) {
            for (Example example : group.examples()) {
                all.addAll(test(library, group, example, limits, watcher, problems));
            }
        }
        return all.build();
    }

    /**
     * Tries one example, from each of its starts.
     *
     * @param library what was read
     * @param group the examples that it belongs to
     * @param example the example
     * @param limits how far to go
     * @param watcher is told how it gets on
     * @param problems collects what does not fit
     * @return what came of it
     */
    public static ImmutableList<ExampleJudgement> test(
            Library library, Examples group, Example example, Limits limits, Watcher watcher, Problems problems) {
        ImmutableList.Builder<ExampleJudgement> all = ImmutableList.builder();
        for (Instance one : Instance.of(example.procedure(), library.networks())) {
            AtOnePlace.guarded(one, problems, () -> explored(one, limits, watcher, problems)
                            .map(found -> ExampleJudgement.of(group.name(), example, one, found)))
                    .ifPresent(all::add);
        }
        return all.build();
    }

    /**
     * An answer to why a rule is kept or broken around a step.
     *
     * @param place the procedure and where it was run, in words
     * @param found the answer
     */
    public record At(String place, RuleAtStep found) {}

    /**
     * Explains a rule before and after a step, on each network on which a procedure is proved, from each start.
     *
     * @param library what was read
     * @param procedure the procedure
     * @param rule the rule's name
     * @param step the step's label, or its sentence if it has none
     * @param phase the phase, if only the acts on it are meant
     * @param limits how far to go
     * @param watcher is told how it gets on
     * @param problems collects what does not fit
     * @return the answers; none where no way leads through the step
     */
    public static ImmutableList<At> why(
            Library library,
            Procedure procedure,
            String rule,
            String step,
            Optional<Conductor> phase,
            Limits limits,
            Watcher watcher,
            Problems problems) {
        ImmutableList.Builder<At> all = ImmutableList.builder();
        for (Instance one : Instance.of(procedure, library.networks())) {
            AtOnePlace.guarded(one, problems, () -> explored(one, limits, watcher, problems)
                            .flatMap(found -> found.at(rule, step, phase)))
                    .ifPresent(at -> all.add(new At(one.words(), at)));
        }
        return all.build();
    }

    /**
     * {@return how far examples put the rulebooks to the test that are given, or that they are for}
     *
     * @param library what was read
     * @param examples what came of the examples
     */
    public static Coverage coverage(Library library, List<ExampleJudgement> examples) {
        Set<String> names = new LinkedHashSet<>();
        library.givenRulebooks().forEach(book -> names.add(book.name()));
        library.givenExamples().forEach(group -> names.addAll(group.rulebooks()));
        return Coverage.of(
                library.rulebooks().values().stream()
                        .filter(book -> names.contains(book.name()))
                        .toList(),
                examples);
    }

    /**
     * Tries every single slip in every procedure of the given files that must hold, on every place that it names.
     *
     * @param library what was read
     * @param limits how far to go for each slip
     * @param watcher is told how each procedure gets on; may stop it
     * @param problems collects what does not fit
     * @return a table for each procedure and place, in the order of the files
     */
    public static ImmutableList<SlipTable> slips(
            Library library, Limits limits, Watcher watcher, Problems problems) {
        return each(library, problems, (one, prepared) -> Slips.of(one, prepared, limits, watcher));
    }

    /**
     * Tells which steps must come before which, in every procedure of the given files that must hold, on every place that it names.
     *
     * @param library what was read
     * @param limits how far to go for the orders that are left
     * @param watcher is told how each procedure gets on; may stop it
     * @param problems collects what does not fit
     * @return a table for each procedure and place, in the order of the files
     */
    public static ImmutableList<OrderTable> order(
            Library library, Limits limits, Watcher watcher, Problems problems) {
        return each(library, problems, (one, prepared) -> Ordering.of(one, prepared, limits, watcher));
    }

    /**
     * Finds a safe way back to normal from every state of every procedure of the given files that must hold, on every place that it
     * names.
     *
     * @param library what was read
     * @param limits how many states are looked at
     * @param watcher is told how each procedure gets on; may stop it
     * @param problems collects what does not fit
     * @return a table for each procedure and place, in the order of the files
     */
    public static ImmutableList<RetreatTable> retreat(
            Library library, Limits limits, Watcher watcher, Problems problems) {
        return each(library, problems, (one, prepared) -> Retreats.of(one, prepared, limits, watcher));
    }

    /**
     * Plans: takes the steps of every procedure of the given files that must hold as what may be done, in whatever order, as often as
     * it takes, and looks for a shortest safe way from its start to its end.
     *
     * @param library what was read
     * @param limits how many states are looked at
     * @param watcher is told how each gets on; may stop it
     * @param problems collects what does not fit
     * @return a plan for each procedure and place, in the order of the files
     */
    public static ImmutableList<PlanResult> plan(
            Library library, Limits limits, Watcher watcher, Problems problems) {
        return each(library, problems, (one, prepared) -> Planning.of(one, prepared, limits, watcher));
    }

    /**
     * Tries to mend a procedure: looks for the smallest changes of its text after which it holds.
     *
     * @param library what was read, the procedure among it
     * @param procedure the procedure; of a teaching variant, the changes are taken back that make it fail
     * @param limits how far to go for each changed text
     * @param watcher is told how it gets on; may stop it
     * @return what was found
     */
    public static Mend mend(Library library, Procedure procedure, Limits limits, Watcher watcher) {
        return Mending.of(library, procedure, limits, watcher);
    }

    /** {@return what comes of each procedure that must hold, wherever it is proved} */
    private static <T> ImmutableList<T> each(
            Library library, Problems problems, BiFunction<Instance, Proving.Prepared, T> use) {
        return Everywhere.whatMustHold(library.givenProcedures(), library.networks(), problems, use);
    }
}
