package org.keeplit.insight;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.keeplit.explore.Proving;
import org.keeplit.explore.Stepper;
import org.keeplit.outcome.Harm;
import org.keeplit.outcome.Limits;
import org.keeplit.outcome.PlanResult;
import org.keeplit.outcome.Watcher;
import org.keeplit.procedure.Instance;
import org.keeplit.program.Orders;
import org.keeplit.program.StateKey;
import org.keeplit.program.WaysBack;

/**
 * Looks for a shortest safe way from the start of a procedure to its end, when its steps, what takes them back, and the proofs that these
 * ask for may be done in whatever order.
 *
 * <p>First by a search that is sure to find the shortest, with how many acts it still takes at least as its bound (A*; Hart, Nilsson and
 * Raphael 1968). Where that comes to its limit, by doing what can be done in the order of the text, and then by going for what is nearest
 * to the end; what is found so may not be the shortest, and it is said how much shorter a plan could be.
 */
public final class Planning {
    /** How many states the second search goes on from. */
    private static final int GREEDY = 1_000;

    private final WayFinder finder;
    private final Goal goal;
    private final Watcher watcher;
    /** How many acts the text has; those behind them take something back, or prove something. */
    private final int written;
    private final Set<StateKey> met = new HashSet<>();
    private int expanded;
    private boolean exhausted;
    private int atLeast;

    private Planning(Stepper stepper, int written, Watcher watcher) {
        this.goal = new Ends(stepper);
        this.finder = new WayFinder(stepper, goal);
        this.watcher = watcher;
        this.written = written;
    }

    /**
     * Plans.
     *
     * @param instance the procedure, where it is planned and from which start
     * @param prepared the same, ready to be explored
     * @param limits how many states the first search goes on from
     * @param watcher is told how it gets on; may stop it
     * @return the plan, if there is one
     */
    public static PlanResult of(Instance instance, Proving.Prepared prepared, Limits limits, Watcher watcher) {
        return Stepper.with(Proving.with(prepared, WaysBack.of(prepared.program())), stepper -> {
            ImmutableList<Harm> broken = stepper.atStart();
            long[] start = stepper.withoutOrders(stepper.start());
            Planning planning = new Planning(stepper, prepared.program().acts().size(), watcher);
            Optional<List<Orders.Move>> way = broken.isEmpty() ? planning.plan(start, limits.states()) : Optional.empty();
            return new PlanResult(
                    instance,
                    broken,
                    stepper.outage(start),
                    way.map(WayFinder::acts),
                    planning.atLeast,
                    planning.exhausted,
                    planning.expanded);
        });
    }

    private Optional<List<Orders.Move>> plan(long[] start, int most) {
        Optional<List<Orders.Move>> shortest = shortest(start, most);
        if (shortest.isPresent() || exhausted) {
            return shortest;
        }
        Optional<List<Orders.Move>> told = inTheOrderOfTheText(start);
        return told.isPresent() ? told : finder.find(start, GREEDY).way();
    }

    /** Does what can be done in the order in which it is written, over and over, until the end is reached; what is of no use goes. */
    private Optional<List<Orders.Move>> inTheOrderOfTheText(long[] start) {
        List<Orders.Move> way = new ArrayList<>();
        long[] now = start;
        boolean more = true;
        while (more) {
            more = false;
            for (Orders.Move move : finder.repair().moving()) {
                Optional<Repair.Done> done = move.act().id() < written
                        ? finder.repair().perform(now, move, false).done()
                        : Optional.empty();
                if (done.isEmpty() || !met.add(StateKey.of(done.get().state()))) {
                    continue;
                }
                way.addAll(done.get().moves());
                now = done.get().state();
                more = true;
                Optional<List<Orders.Move>> whole = finder.finish(now, way);
                if (whole.isPresent()) {
                    return Optional.of(finder.shortened(start, whole.get()));
                }
            }
        }
        return Optional.empty();
    }

    private Optional<List<Orders.Move>> shortest(long[] start, int most) {
        ShortestWay search = ShortestWay.of(
                finder, goal, start, Integer.MAX_VALUE, done -> done < most && watcher.goOn(done, most - done));
        atLeast = search.atLeast();
        expanded = search.expanded();
        exhausted = search.exhausted();
        return search.way();
    }
}
