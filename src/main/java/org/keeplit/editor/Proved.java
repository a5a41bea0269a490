package org.keeplit.editor;

import java.util.List;
import java.util.Optional;
import org.keeplit.insight.AsWritten;
import org.keeplit.text.Problem;
import org.keeplit.verdict.Judgement;

/**
 * What the proof of one open file came to.
 *
 * @param version the editor's number of the text that was proved
 * @param verdicts the verdicts, as far as they are there
 * @param problems what does not fit on the networks
 * @param done whether nothing is left to prove
 */
record Proved(int version, List<Verdict> verdicts, List<Problem> problems, boolean done) {
    /** Nothing yet. */
    static final Proved NOTHING = new Proved(-1, List.of(), List.of(), false);

    /**
     * One procedure at one place.
     *
     * @param judgement the verdict
     * @param written the steps done in the order of the text, as far as that goes well
     */
    record Verdict(Judgement judgement, Optional<AsWritten> written) {}

    /** {@return the verdicts on one procedure} @param procedure its name */
    List<Verdict> of(String procedure) {
        return verdicts.stream().filter(v -> v.judgement().procedure().name().equals(procedure)).toList();
    }
}
