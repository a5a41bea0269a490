package org.keeplit.outcome;

import com.google.common.collect.ImmutableList;
import java.util.Optional;
import org.keeplit.procedure.Instance;

/**
 * The ways back to normal from wherever a procedure may stand.
 *
 * @param instance the procedure, where it was tried and from which start
 * @param holds whether it holds as it is; if not, nothing was tried
 * @param outage what a called outage takes, from the start
 * @param states how many states there are, those told apart only by what the text has next counted once
 * @param longest the longest of the ways
 * @param none how many states have no way back that was found
 * @param cut whether there were more states than were looked at; without holding, that it is not known whether it holds
 * @param stops the steps in the order in which they are first done, each with its way back
 */
public record RetreatTable(
        Instance instance,
        boolean holds,
        Optional<CalledOutage> outage,
        int states,
        int longest,
        int none,
        boolean cut,
        ImmutableList<Stop> stops) {

    /**
     * A step after which the crew may be called back.
     *
     * @param part the step
     * @param states in how many states the procedure may stand once the step is done and the next is not begun
     * @param longest the longest way back from one of them
     * @param way the way back from the one that comes first; nothing if there is none
     * @param atLeast how many acts any way back from there takes at least
     * @param none from how many of them no way back was found
     * @param proved whether there is none: everything that can be reached was looked at
     */
    public record Stop(
            Part part, int states, int longest, Optional<ImmutableList<ChosenAct>> way, int atLeast, int none, boolean proved) {}
}
