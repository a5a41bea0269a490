package org.keeplit.insight;

import com.google.common.collect.ImmutableList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.keeplit.explore.AtOnePlace;
import org.keeplit.explore.InOrder;
import org.keeplit.explore.Proving;
import org.keeplit.network.Network;
import org.keeplit.outcome.Finding;
import org.keeplit.outcome.Limits;
import org.keeplit.outcome.Outcome;
import org.keeplit.outcome.SweepResult;
import org.keeplit.outcome.Watcher;
import org.keeplit.procedure.Instance;
import org.keeplit.procedure.Procedure;
import org.keeplit.text.Problem;
import org.keeplit.text.Problems;

/** Proves procedures wherever they fit, several at a time. What comes of one place depends on no other. */
public final class Sweep {
    private Sweep() {}

    /** Is told of results as they come, from several threads, one call at a time. */
    public interface Listener {
        /**
         * A place is done.
         *
         * @param result what came of it
         * @param done how many are done
         * @param all how many there are
         * @return whether to go on
         */
        boolean done(SweepResult result, int done, int all);
    }

    /**
     * Finds every place.
     *
     * @param procedures the procedures
     * @param networks the networks
     * @return the instances, by procedure and then by network, in their order
     */
    public static ImmutableList<Instance> places(Collection<Procedure> procedures, Collection<Network> networks) {
        ImmutableList.Builder<Instance> all = ImmutableList.builder();
        procedures.forEach(p -> networks.forEach(n -> all.addAll(Fitting.of(p, n))));
        return all.build();
    }

    /**
     * Proves procedures at places.
     *
     * @param places the places
     * @param known what is known of some already, by {@link Instance#words}
     * @param limits how far to go for each
     * @param threads how many are worked on at a time
     * @param listener is told as they are done, those that are known left out
     * @return the results in the order of the places, whatever the order in which they came; fewer if it was stopped
     */
    public static ImmutableList<SweepResult> run(
            List<Instance> places, Map<String, SweepResult> known, Limits limits, int threads, Listener listener) {
        Telling telling = new Telling(listener, places.size());
        return InOrder.map(places, threads, place -> {
                    SweepResult before = known.get(place.words());
                    if (before != null) {
                        return telling.skip(before);
                    }
                    return telling.isStopped()
                            ? Optional.<SweepResult>empty()
                            : telling.tell(of(place, limits));
                })
                .stream()
                .flatMap(Optional::stream)
                .collect(ImmutableList.toImmutableList());
    }

    /** Counts, and tells one thread at a time. */
    private static final class Telling {
        private final Listener listener;
        private final int all;
        private int done;
        private boolean stopped;

        Telling(Listener listener, int all) {
            this.listener = listener;
            this.all = all;
        }

        synchronized Optional<SweepResult> skip(SweepResult known) {
            done++;
            return Optional.of(known);
        }

        synchronized Optional<SweepResult> tell(SweepResult result) {
            done++;
            stopped |= !listener.done(result, done, all);
            return Optional.of(result);
        }

        synchronized boolean isStopped() {
            return stopped;
        }
    }

    private static SweepResult of(Instance one, Limits limits) {
        Problems problems = new Problems();
        Optional<Outcome> outcome = AtOnePlace.guarded(one, problems, () ->
                Proving.prove(one.procedure(), one.network(), one.proof(), limits, Watcher.NOBODY, problems));
        String name = one.procedure().name();
        Optional<Problem> notOfTheFiles = problems.sorted().stream().filter(AtOnePlace::isNotOfTheFiles).findFirst();
        if (notOfTheFiles.isPresent()) {
            String help = notOfTheFiles.get().help().map(h -> "; " + h).orElse("");
            return new SweepResult(name, one.place(), SweepResult.Answer.UNDECIDED, notOfTheFiles.get().message() + help);
        } else if (outcome.isEmpty()) {
            String why = problems.sorted().stream()
                    .filter(p -> p.severity() == Problem.Severity.ERROR)
                    .map(Sweep::words)
                    .findFirst()
                    .orElse("");
            return new SweepResult(name, one.place(), SweepResult.Answer.DOES_NOT_APPLY, why);
        } else if (!outcome.get().findings().isEmpty()) {
            return new SweepResult(name, one.place(), SweepResult.Answer.BREAKS, words(outcome.get()));
        } else if (outcome.get().cut().isPresent()) {
            return new SweepResult(
                    name, one.place(), SweepResult.Answer.UNDECIDED, outcome.get().cut().get());
        } else if (outcome.get().answer() == Outcome.Answer.NOT_PROVED) {
            return new SweepResult(name, one.place(), SweepResult.Answer.NOT_PROVED, "no rule that stops came up");
        }
        return new SweepResult(name, one.place(), SweepResult.Answer.HOLDS, outcome.get().states() + (outcome.get().states() == 1 ? " state" : " states"));
    }

    private static String words(Problem problem) {
        String line = problem.span().source().line(problem.span().line()).trim();
        return problem.message() + (line.isEmpty() ? "" : ": " + line);
    }

    private static String words(Outcome outcome) {
        Finding first = outcome.findings().get(0);
        int more = outcome.findings().size() - 1;
        return first.name()
                + (first.step().isEmpty() ? "" : " at " + first.step())
                + first.phase().map(p -> " on phase " + p).orElse("")
                + ": " + first.sentence()
                + (more > 0 ? ", and " + more + " more" : "");
    }
}
