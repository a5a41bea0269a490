package org.keeplit.command;

import java.util.List;
import org.keeplit.Keeplit;
import org.keeplit.exchange.Answer;
import org.keeplit.language.Library;
import org.keeplit.outcome.Limits;
import org.keeplit.outcome.PlanResult;
import org.keeplit.outcome.Watcher;
import org.keeplit.text.Problems;
import picocli.CommandLine;

/** {@code plan}: a shortest safe way from a start to an end. */
@CommandLine.Command(
        name = "plan",
        description = "Take the steps of a procedure as what may be done, in whatever order, and find a shortest safe way from its start to its end.",
        mixinStandardHelpOptions = true)
final class PlanCommand extends TellingCommand<PlanResult> {
    @CommandLine.Option(
            names = "--max-states",
            paramLabel = "N",
            description = "go on from N states at most before a shortest way is given up (default: ${DEFAULT-VALUE})",
            defaultValue = "2000")
    private int maxStates;

    @Override
    int maxStates() {
        return maxStates;
    }

    @Override
    String verb() {
        return "plan";
    }

    @Override
    List<PlanResult> workOut(Library library, Limits limits, Watcher watcher, Problems problems) {
        return Keeplit.plan(library, limits, watcher, problems);
    }

    @Override
    Answer answer(List<PlanResult> tables) {
        return new Answer.Plans(tables);
    }

    @Override
    boolean isBroken(PlanResult one) {
        return !one.broken().isEmpty() || one.way().isEmpty() && one.exhausted();
    }

    @Override
    boolean isUndecided(PlanResult one) {
        return one.way().isEmpty();
    }
}
