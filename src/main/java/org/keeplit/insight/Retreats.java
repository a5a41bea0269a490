package org.keeplit.insight;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.PriorityQueue;
import java.util.Set;
import org.keeplit.explore.Proving;
import org.keeplit.explore.Stepper;
import org.keeplit.outcome.Limits;
import org.keeplit.outcome.Outcome;
import org.keeplit.outcome.RetreatTable;
import org.keeplit.outcome.Watcher;
import org.keeplit.procedure.Instance;
import org.keeplit.program.Orders;
import org.keeplit.program.Parts;
import org.keeplit.program.StateKey;
import org.keeplit.program.WaysBack;

/**
 * Finds a safe way back to normal from every state that a procedure can reach.
 *
 * <p>What is known of one state is tried for the next: from where an act led, take it back and go on as from where it left, or do the
 * next act and go on from there. Only where neither does a way is searched for anew.
 */
public final class Retreats {
    /** How many states are gone on from at most in the search for one way; half as many after each that was in vain, down to a few. */
    private static final int MOST = 400;

    private static final int FEW = 10;
    /** How many acts are tried to lead from one known state to another. */
    private static final int TRIED = 60_000;
    /** How many states are gone on from in the search for shorter ways from where the crew may be called back: for all of these, and for one. */
    private static final int SHORTER = 400;

    private static final int SHORTER_FOR_ONE = 60;

    private final Parts parts;
    private final WayFinder finder;
    private final Stepper stepper;
    private final Watcher watcher;
    private int left = SHORTER;
    private final List<Place> places = new ArrayList<>();
    private final Map<StateKey, Integer> numbers = new HashMap<>();
    /** For each part the places where it was just done. */
    private final Map<Integer, Set<Integer>> afterPart = new LinkedHashMap<>();

    private Retreats(Stepper stepper, Parts parts, Watcher watcher) {
        this.parts = parts;
        this.stepper = stepper;
        this.watcher = watcher;
        this.finder = new WayFinder(stepper, new Normal(stepper));
    }

    /** A state of the procedure, without how far its orders have come. */
    private static final class Place {
        private final long[] state;
        private final int from;
        private final Set<Integer> next = new LinkedHashSet<>();
        private final List<Orders.Move> moves = new ArrayList<>();
        private List<Orders.Move> way;
        private boolean exhausted;

        Place(long[] state, int from) {
            this.state = state;
            this.from = from;
        }
    }

    /**
     * Finds the ways back.
     *
     * @param instance the procedure, where it is tried and from which start
     * @param prepared the same, ready to be explored
     * @param limits how many states are looked at
     * @param watcher is told how it gets on; may stop it
     * @return the ways; none of what does not hold as it is
     */
    public static RetreatTable of(Instance instance, Proving.Prepared prepared, Limits limits, Watcher watcher) {
        Outcome plain = Proving.explore(prepared, limits, (states, open) -> watcher.goOn(0, states));
        if (plain.answer() != Outcome.Answer.HOLDS) {
            boolean cut = plain.answer() == Outcome.Answer.UNDECIDED;
            return new RetreatTable(instance, false, Optional.empty(), 0, 0, 0, cut, ImmutableList.of());
        }
        Parts parts = Parts.of(prepared.program());
        return Stepper.with(Proving.with(prepared, WaysBack.of(prepared.program())), stepper -> {
            Retreats retreats = new Retreats(stepper, parts, watcher);
            boolean cut = retreats.explore(limits.states());
            return retreats.find() ? retreats.table(instance, cut) : retreats.table(instance, true);
        });
    }

    /** Goes through all states in which nothing is broken. {@return whether there were too many} */
    private boolean explore(int most) {
        States met = new States();
        List<long[]> level = List.of(stepper.start());
        met.add(level.get(0));
        place(level.get(0), -1);
        while (!level.isEmpty()) {
            List<long[]> following = new ArrayList<>();
            for (long[] state : level) {
                for (Orders.Move move : stepper.moves(state)) {
                    boolean last = stepper.isLast(move, state);
                    Stepper.Tried tried = stepper.attempt(state, move);
                    for (long[] next : tried.isSafe() ? tried.states() : List.<long[]>of()) {
                        edge(state, move, next, last);
                        if (met.add(next)) {
                            following.add(next);
                        }
                    }
                }
            }
            if (met.size() > most) {
                return true;
            }
            level = following;
        }
        return false;
    }

    private int place(long[] state, int from) {
        long[] bare = stepper.withoutOrders(state);
        return numbers.computeIfAbsent(StateKey.of(bare), k -> {
            places.add(new Place(bare, from));
            return places.size() - 1;
        });
    }

    private void edge(long[] state, Orders.Move move, long[] next, boolean last) {
        int from = place(state, -1);
        int to = place(next, from);
        if (from != to && places.get(from).next.add(to)) {
            places.get(from).moves.add(Orders.Move.atWill(move.act()));
        }
        if (last) {
            afterPart.computeIfAbsent(parts.of(move.act().id()), k -> new LinkedHashSet<>()).add(to);
        }
    }

    /** {@return false if it was stopped} */
    private boolean find() {
        int most = MOST;
        for (int i = 0; i < places.size(); i++) {
            if (!watcher.goOn(i, places.size() - i)) {
                return false;
            }
            Place place = places.get(i);
            if (finder.reaches(place.state, List.of())) {
                place.way = List.of();
            } else if (place.from >= 0 && places.get(place.from).way != null) {
                place.way = backwards(place, places.get(place.from)).orElse(null);
            }
            if (place.way == null) {
                WayFinder.Found found = finder.find(place.state, most);
                place.way = found.way().orElse(null);
                place.exhausted = found.exhausted();
                most = place.way == null ? Math.max(FEW, most / 2) : MOST;
            }
        }
        forwards();
        across();
        return true;
    }

    /** Takes back what led to a place, and goes on as from where that was. */
    private Optional<List<Orders.Move>> backwards(Place place, Place before) {
        Optional<List<Orders.Move>> best = finder.adapted(place.state, before.way);
        for (Orders.Move move : finder.repair().moving()) {
            if (!differs(place.state, before.state, finder.repair().writes(move))) {
                continue;
            }
            List<Orders.Move> way = new ArrayList<>(List.of(move));
            way.addAll(before.way);
            Optional<List<Orders.Move>> found = finder.adapted(place.state, way);
            if (found.isPresent() && (best.isEmpty() || found.get().size() < best.get().size())) {
                best = found;
            }
        }
        return best.map(way -> finder.shortened(place.state, way));
    }

    private static boolean differs(long[] one, long[] other, long[] bits) {
        for (int i = 0; i < bits.length; i++) {
            if (((one[i] ^ other[i]) & bits[i]) != 0) {
                return true;
            }
        }
        return false;
    }

    /** Going on with the procedure may be the shorter way, where it ends as it began. */
    private void forwards() {
        boolean again = true;
        while (again) {
            again = false;
            for (int i = places.size() - 1; i >= 0; i--) {
                Place place = places.get(i);
                int number = 0;
                for (int next : place.next) {
                    Orders.Move move = place.moves.get(number++);
                    List<Orders.Move> way = places.get(next).way;
                    if (way == null || place.way != null && way.size() + 1 >= place.way.size()) {
                        continue;
                    }
                    List<Orders.Move> longer = new ArrayList<>(List.of(move));
                    longer.addAll(way);
                    if (finder.reaches(place.state, longer)) {
                        place.way = longer;
                        again = true;
                    }
                }
            }
        }
    }

    /** From one known state any act may lead to another, from which the way is short. */
    private void across() {
        List<Orders.Move> moving = finder.repair().moving();
        if ((long) places.size() * moving.size() > TRIED) {
            return;
        }
        List<List<Step>> from = new ArrayList<>();
        for (int i = 0; i < places.size(); i++) {
            from.add(new ArrayList<>());
        }
        for (int i = 0; i < places.size(); i++) {
            for (Orders.Move move : moving) {
                Integer to = finder.repair().surely(places.get(i).state, move)
                        .map(next -> numbers.get(StateKey.of(next)))
                        .orElse(null);
                if (to != null) {
                    from.get(to).add(new Step(i, move));
                }
            }
        }
        // The nearest first, so that each is told of once.
        PriorityQueue<Integer> open = new PriorityQueue<>(
                Comparator.comparing((Integer i) -> places.get(i).way.size()).thenComparing(i -> i));
        for (int i = 0; i < places.size(); i++) {
            if (places.get(i).way != null) {
                open.add(i);
            }
        }
        while (!open.isEmpty()) {
            int to = open.poll();
            for (Step step : from.get(to)) {
                Place place = places.get(step.from);
                if (place.way == null || place.way.size() > places.get(to).way.size() + 1) {
                    List<Orders.Move> way = new ArrayList<>(List.of(step.move));
                    way.addAll(places.get(to).way);
                    open.remove(step.from);
                    place.way = way;
                    open.add(step.from);
                }
            }
        }
    }

    /** An act by which one known state leads to another. */
    private record Step(int from, Orders.Move move) {}

    /** Looks whether a shorter way leads from where a crew may be called back; {@return how many acts any takes at least} */
    private int shorten(Place place, Normal normal) {
        if (place.way == null || place.way.size() == normal.atLeast(place.state)) {
            return normal.atLeast(place.state);
        }
        int most = Math.min(SHORTER_FOR_ONE, left);
        ShortestWay search =
                ShortestWay.of(finder, normal, place.state, place.way.size() - 1, done -> done < most);
        left -= search.expanded();
        search.way().ifPresent(way -> place.way = way);
        return search.atLeast();
    }

    private RetreatTable table(Instance instance, boolean cut) {
        Normal normal = new Normal(stepper);
        ImmutableList.Builder<RetreatTable.Stop> stops = ImmutableList.builder();
        afterPart.forEach((part, at) -> {
            List<Place> there = at.stream().map(places::get).toList();
            Place first = there.get(0);
            int atLeast = shorten(first, normal);
            long none = there.stream().filter(p -> p.way == null).count();
            stops.add(new RetreatTable.Stop(
                    parts.all().get(part).told(),
                    there.size(),
                    longest(there),
                    Optional.ofNullable(first.way).map(WayFinder::acts),
                    atLeast,
                    (int) none,
                    there.stream().filter(p -> p.way == null).allMatch(p -> p.exhausted)));
        });
        return new RetreatTable(
                instance,
                true,
                Optional.of(stepper.outage(stepper.start())),
                places.size(),
                longest(places),
                (int) places.stream().filter(p -> p.way == null).count(),
                cut,
                stops.build());
    }

    private static int longest(List<Place> places) {
        return places.stream().mapToInt(p -> p.way == null ? 0 : p.way.size()).max().orElse(0);
    }
}
