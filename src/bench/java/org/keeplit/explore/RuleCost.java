package org.keeplit.explore;

import java.nio.file.Path;
import java.util.List;
import org.keeplit.Keeplit;
import org.keeplit.language.Library;
import org.keeplit.outcome.Limits;
import org.keeplit.outcome.Outcome;
import org.keeplit.outcome.RuleResult;
import org.keeplit.outcome.Watcher;
import org.keeplit.procedure.Procedure;
import org.keeplit.text.Problems;

/** What a transition and a rule instance cost in a search that is warm, and how often a position was known: printed for procedures. */
public final class RuleCost {
    private RuleCost() {}

    /**
     * Prints a line for each file.
     *
     * @param arguments procedure files
     */
    public static void main(String[] arguments) {
        List<String> files = arguments.length > 0
                ? List.of(arguments)
                : List.of("procedures/recloser-out.procedure", "procedures/recloser-back.procedure", "procedures/two-jobs.procedure");
        for (String file : files) {
            Library library = Keeplit.read(List.of(Path.of(file)));
            Procedure procedure = library.givenProcedures().get(0);
            Procedure.Proof proof = procedure.proofs().get(0);
            Outcome outcome = null;
            double best = Double.MAX_VALUE;
            for (int i = 0; i < 12; i++) {
                Proving.Prepared prepared = Proving.prepare(
                                procedure, library.networks().get(proof.network()), proof, new Problems())
                        .orElseThrow();
                long start = System.nanoTime();
                outcome = Proving.explore(prepared, Limits.USUAL, Watcher.NOBODY);
                best = Math.min(best, System.nanoTime() - start);
            }
            long judged = outcome.rules().stream().mapToLong(RuleResult::judged).sum();
            System.out.printf(
                    "%s: %,d states, %,d transitions, %,d rule instances judged, %,.0f ms: %,.0f ns a transition, %.0f ns a rule instance; "
                            + "%,d positions worked out (%.1f %% of states found theirs known), %,d load flows; %.1f bytes a state of %d bits%n",
                    procedure.name(), outcome.states(), outcome.transitions(), judged, best / 1e6, best / outcome.transitions(),
                    best / judged, outcome.electricStates(), 100.0 * (1 - (double) outcome.electricStates() / outcome.states()),
                    outcome.loadFlows(), (double) outcome.bytes() / outcome.states(), outcome.stateBits());
        }
    }
}
