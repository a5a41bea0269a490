package org.keeplit.command;

import org.keeplit.Keeplit;
import org.keeplit.exchange.Answer;
import org.keeplit.outcome.PlanResult;
import picocli.CommandLine;

/** {@code plan}: a shortest safe way from a start to an end. */
@CommandLine.Command(
        name = "plan",
        description = "Take the steps of a procedure as what may be done, in whatever order, and find a shortest safe way from its start to its end.",
        mixinStandardHelpOptions = true)
final class PlanCommand extends TellingCommand<PlanResult> {
    @CommandLine.Option(
            names = "--max-states",
            converter = AtLeast.One.class,
            paramLabel = "N",
            description = "go on from N states at most before a shortest way is given up (default: ${DEFAULT-VALUE})",
            defaultValue = "2000")
    private int maxStates;

    PlanCommand() {
        super("plan", Keeplit::plan, Answer.Plans::new, one -> !one.broken().isEmpty() || one.way().isEmpty() && one.exhausted(), one -> one.way().isEmpty());
    }

    @Override
    int maxStates() {
        return maxStates;
    }

    @Override
    boolean isFull() {
        return false;
    }
}
