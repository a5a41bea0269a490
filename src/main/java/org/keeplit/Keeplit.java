package org.keeplit;

import com.google.common.collect.ImmutableList;
import java.nio.file.Path;
import java.util.List;
import org.keeplit.explore.Limits;
import org.keeplit.explore.Outcome;
import org.keeplit.explore.Proving;
import org.keeplit.explore.Watcher;
import org.keeplit.insight.SlipTable;
import org.keeplit.insight.Slips;
import org.keeplit.language.Library;
import org.keeplit.language.Reader;
import org.keeplit.network.Network;
import org.keeplit.procedure.Procedure;
import org.keeplit.text.Problems;
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
        ImmutableList.Builder<Judgement> all = ImmutableList.builder();
        for (Procedure procedure : library.givenProcedures()) {
            for (Procedure.Proof proof : procedure.proofs()) {
                Network network = library.networks().get(proof.network());
                if (network != null) {
                    // A network with mistakes is not there; the reader has said what is wrong with it.
                    for (Procedure.Begun begun : procedure.everyStart()) {
                        Proving.prove(begun.procedure(), network, proof, limits, watcher, problems)
                                .map(outcome -> Judgement.of(
                                        begun.procedure(), network, proof, begun.start(), outcome))
                                .ifPresent(all::add);
                    }
                }
            }
        }
        return all.build();
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
        ImmutableList.Builder<SlipTable> all = ImmutableList.builder();
        for (Procedure procedure : library.givenProcedures()) {
            for (Procedure.Proof proof : procedure.proofs()) {
                Network network = library.networks().get(proof.network());
                if (network != null && procedure.mustFail().isEmpty()) {
                    Proving.prepare(procedure, network, proof, problems).ifPresent(prepared -> {
                        Outcome plain = Proving.explore(prepared, limits, Watcher.NOBODY);
                        boolean holds = plain.findings().isEmpty() && plain.cut().isEmpty();
                        all.add(new SlipTable(
                                procedure,
                                network,
                                proof,
                                holds,
                                holds ? Slips.of(prepared, limits, watcher) : ImmutableList.of()));
                    });
                }
            }
        }
        return all.build();
    }
}
