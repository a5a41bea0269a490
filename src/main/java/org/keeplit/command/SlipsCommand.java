package org.keeplit.command;

import org.keeplit.Keeplit;
import org.keeplit.exchange.Answer;
import org.keeplit.outcome.SlipResult;
import org.keeplit.outcome.SlipTable;
import picocli.CommandLine;

/** {@code slips}: tries every single slip in procedures that hold. */
@CommandLine.Command(
        name = "slips",
        description = "Try every single human slip in procedures that hold, and tell which are exposed: harm comes before anybody looks.",
        mixinStandardHelpOptions = true)
final class SlipsCommand extends TellingCommand<SlipTable> {
    @CommandLine.Option(names = "--all", description = "tell every slip, not only the exposed ones")
    private boolean all;

    @CommandLine.Option(
            names = "--max-states",
            converter = AtLeast.One.class,
            paramLabel = "N",
            description = "leave a slip undecided after N states (default: ${DEFAULT-VALUE})",
            defaultValue = "200000")
    private int maxStates;

    SlipsCommand() {
        super("try", Keeplit::slips, Answer.Slips::new, one -> !one.holds() && !one.cut(), one -> one.cut() || one.count(SlipResult.Ending.UNDECIDED) > 0);
    }

    @Override
    int maxStates() {
        return maxStates;
    }

    @Override
    boolean isFull() {
        return all;
    }
}
