package org.keeplit.command;

import org.keeplit.Keeplit;
import org.keeplit.exchange.Answer;
import org.keeplit.outcome.RetreatTable;
import picocli.CommandLine;

/** {@code retreat}: the ways back to normal. */
@CommandLine.Command(
        name = "retreat",
        description = "Find a safe way back to normal from every state of procedures that hold, and every point of no return.",
        mixinStandardHelpOptions = true)
final class RetreatCommand extends TellingCommand<RetreatTable> {
    @CommandLine.Option(names = "--all", description = "tell every way in full")
    private boolean all;

    @CommandLine.Option(
            names = "--max-states",
            converter = AtLeast.One.class,
            paramLabel = "N",
            description = "look at N states at most (default: ${DEFAULT-VALUE})",
            defaultValue = "200000")
    private int maxStates;

    RetreatCommand() {
        super("try", Keeplit::retreat, Answer.Retreats::new, one -> !one.holds() && !one.cut() || one.none() > 0, RetreatTable::cut);
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
