package org.keeplit.report;

import com.google.common.collect.ImmutableList;
import java.util.Optional;
import org.keeplit.explore.Explored;
import org.keeplit.explore.Frame;
import org.keeplit.explore.Proving;
import org.keeplit.explore.Whereabouts;
import org.keeplit.outcome.Finding;
import org.keeplit.outcome.Limits;
import org.keeplit.outcome.Outcome;
import org.keeplit.outcome.Watcher;
import org.keeplit.page.InputHash;
import org.keeplit.procedure.Instance;
import org.keeplit.verdict.Judgement;

/**
 * What can be looked through of a procedure.
 *
 * @param instance the procedure, where it was explored and from which start
 * @param judgement the verdict
 * @param hash a short hash of everything that the proof read
 * @param ways the story of each finding; where nothing is broken, the procedure as written, once for each branch
 * @param whereabouts where people may be in all orders
 */
public record ProofReport(
        Instance instance, Judgement judgement, String hash, ImmutableList<Way> ways, Whereabouts whereabouts) {

    /**
     * A way through the procedure.
     *
     * @param finding what goes wrong at its end, if it does
     * @param frames its states, the start first
     */
    public record Way(Optional<Finding> finding, ImmutableList<Frame> frames) {}

    /**
     * Explores a procedure and gathers what can be looked through.
     *
     * @param instance the procedure, where it is explored and from which start
     * @param prepared the same, ready to be explored
     * @param limits how far to go
     * @param watcher is told how it gets on
     * @return the report
     */
    public static ProofReport of(Instance instance, Proving.Prepared prepared, Limits limits, Watcher watcher) {
        Explored explored = Proving.proved(prepared, limits, watcher);
        Outcome outcome = explored.outcome();
        ImmutableList.Builder<Way> ways = ImmutableList.builder();
        outcome.findings().forEach(finding -> ways.add(new Way(Optional.of(finding), explored.story(finding))));
        if (outcome.findings().isEmpty()) {
            explored.asWritten().forEach(frames -> ways.add(new Way(Optional.empty(), frames)));
        }
        return new ProofReport(
                instance, Judgement.of(instance, outcome), InputHash.of(instance), ways.build(), explored.whereabouts());
    }
}
