package org.keeplit.command;

import org.keeplit.Keeplit;
import org.keeplit.exchange.Answer;
import org.keeplit.outcome.OrderTable;
import picocli.CommandLine;

/** {@code order}: which steps must come before which. */
@CommandLine.Command(
        name = "order",
        description = "Tell which steps must come before which and what goes wrong otherwise, and whether every order that keeps to that is safe.",
        mixinStandardHelpOptions = true)
final class OrderCommand extends TellingCommand<OrderTable> {
    @CommandLine.Option(names = "--all", description = "tell every pair of steps, not only what must come directly before what")
    private boolean all;

    @CommandLine.Option(
            names = "--max-states",
            converter = AtLeast.One.class,
            paramLabel = "N",
            description = "leave it undecided whether every other order is safe after N states (default: ${DEFAULT-VALUE})",
            defaultValue = "200000")
    private int maxStates;

    OrderCommand() {
        super("try", Keeplit::order, Answer.Orders::new, one -> !one.holds() && !one.cut(), one -> one.cut() || one.asWritten().answer() == OrderTable.Answer.UNDECIDED);
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
