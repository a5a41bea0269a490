package org.keeplit.command;

import java.util.List;
import org.keeplit.Keeplit;
import org.keeplit.exchange.Answer;
import org.keeplit.language.Library;
import org.keeplit.outcome.Limits;
import org.keeplit.outcome.SlipResult;
import org.keeplit.outcome.SlipTable;
import org.keeplit.outcome.Watcher;
import org.keeplit.text.Problems;
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
            paramLabel = "N",
            description = "leave a slip undecided after N states (default: ${DEFAULT-VALUE})",
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
    List<SlipTable> workOut(Library library, Limits limits, Watcher watcher, Problems problems) {
        return Keeplit.slips(library, limits, watcher, problems);
    }

    @Override
    Answer answer(List<SlipTable> tables) {
        return new Answer.Slips(tables);
    }

    @Override
    boolean isFull() {
        return all;
    }

    @Override
    boolean isBroken(SlipTable one) {
        return !one.holds();
    }

    @Override
    boolean isUndecided(SlipTable one) {
        return one.count(SlipResult.Ending.UNDECIDED) > 0;
    }
}
