package org.keeplit.insight;

import com.google.common.collect.ImmutableList;
import org.keeplit.network.Network;
import org.keeplit.procedure.Procedure;

/**
 * All single slips of a procedure at one place, each with its end.
 *
 * @param procedure the procedure
 * @param network the network
 * @param proof what its parameters stand for
 * @param holds whether it holds without a slip; if not, nothing was tried
 * @param slips the slips, in the order of the acts
 */
public record SlipTable(
        Procedure procedure,
        Network network,
        Procedure.Proof proof,
        boolean holds,
        ImmutableList<SlipResult> slips) {
    /** {@return how many slips end in one way} @param ending the way */
    public long count(SlipResult.Ending ending) {
        return slips.stream().filter(s -> s.ending() == ending).count();
    }
}
