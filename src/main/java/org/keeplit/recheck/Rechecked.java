package org.keeplit.recheck;

import com.google.common.collect.ImmutableList;
import java.util.List;

/**
 * What came of re-checking a proof.
 *
 * @param place the procedure and where it is, in words, as the proof has it
 * @param status what came of it
 * @param states how many states were met
 * @param reasons why it is refused; none otherwise
 */
public record Rechecked(String place, Status status, int states, ImmutableList<String> reasons) {
    /** What may come of it. */
    public enum Status {
        /** The plain evaluator finds the same states, and nothing broken. */
        CONFIRMED,
        /** It finds something else. */
        REFUSED,
        /** It was stopped before it was through. */
        UNDECIDED
    }

    static Rechecked refused(String place, int states, List<String> reasons) {
        return new Rechecked(place, Status.REFUSED, states, ImmutableList.copyOf(reasons));
    }
}
