package org.keeplit.command;

import java.util.List;
import org.keeplit.Keeplit;
import org.keeplit.exchange.Answer;
import org.keeplit.language.Library;
import org.keeplit.outcome.Limits;
import org.keeplit.outcome.OrderTable;
import org.keeplit.outcome.Watcher;
import org.keeplit.text.Problems;
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
            paramLabel = "N",
            description = "leave it undecided whether every other order is safe after N states (default: ${DEFAULT-VALUE})",
            defaultValue = "200000")
    private int maxStates;

    @Override
    int maxStates() {
        return maxStates;
    }

    @Override
    String verb() {
        return "try";
    }

    @Override
    List<OrderTable> workOut(Library library, Limits limits, Watcher watcher, Problems problems) {
        return Keeplit.order(library, limits, watcher, problems);
    }

    @Override
    Answer answer(List<OrderTable> tables) {
        return new Answer.Orders(tables);
    }

    @Override
    boolean isFull() {
        return all;
    }

    @Override
    boolean isBroken(OrderTable one) {
        return !one.holds();
    }

    @Override
    boolean isUndecided(OrderTable one) {
        return one.asWritten().answer() == OrderTable.Answer.UNDECIDED;
    }
}
