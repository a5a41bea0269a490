package org.keeplit.outcome;

import com.google.common.collect.ImmutableList;
import java.util.Optional;
import org.keeplit.procedure.Instance;

/**
 * What came of the search for a plan.
 *
 * @param instance the procedure whose steps may be done, where, and from which start
 * @param broken what is broken at the start, so that nothing was planned
 * @param outage what a called outage takes, which is the other way
 * @param way the acts of the plan; nothing if none was found
 * @param atLeast how many acts any plan takes at least
 * @param exhausted whether everything that can be reached was looked at, so that there is no plan where none was found
 * @param states how many states were gone on from
 */
public record PlanResult(
        Instance instance,
        ImmutableList<Harm> broken,
        CalledOutage outage,
        Optional<ImmutableList<ChosenAct>> way,
        int atLeast,
        boolean exhausted,
        int states) {

    /** {@return whether no plan can be shorter} */
    public boolean isShortest() {
        return way.isPresent() && way.get().size() <= atLeast;
    }
}
