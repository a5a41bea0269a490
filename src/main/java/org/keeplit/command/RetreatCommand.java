package org.keeplit.command;

import java.util.List;
import org.keeplit.Keeplit;
import org.keeplit.exchange.Answer;
import org.keeplit.language.Library;
import org.keeplit.outcome.Limits;
import org.keeplit.outcome.RetreatTable;
import org.keeplit.outcome.Watcher;
import org.keeplit.text.Problems;
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
            paramLabel = "N",
            description = "look at N states at most (default: ${DEFAULT-VALUE})",
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
    List<RetreatTable> workOut(Library library, Limits limits, Watcher watcher, Problems problems) {
        return Keeplit.retreat(library, limits, watcher, problems);
    }

    @Override
    Answer answer(List<RetreatTable> tables) {
        return new Answer.Retreats(tables);
    }

    @Override
    boolean isFull() {
        return all;
    }

    @Override
    boolean isBroken(RetreatTable one) {
        return !one.holds() || one.none() > 0;
    }

    @Override
    boolean isUndecided(RetreatTable one) {
        return one.cut();
    }
}
