package org.keeplit.insight;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.PriorityQueue;
import java.util.function.IntPredicate;
import org.keeplit.program.Orders;
import org.keeplit.program.StateKey;

/** The search that is sure to find a shortest safe way, with how many acts it still takes at least as its bound (A*; Hart, Nilsson and Raphael 1968). */
final class ShortestWay {
    private final Repair repair;
    private final Goal goal;
    private final List<Orders.Move> moves;
    private final int longest;

    private int expanded;
    private int atLeast;
    private boolean exhausted;
    private Optional<List<Orders.Move>> way = Optional.empty();

    private ShortestWay(WayFinder finder, Goal goal, int longest) {
        this.repair = finder.repair();
        this.goal = goal;
        this.longest = longest;
        this.moves = new ArrayList<>(repair.moving());
        moves.addAll(repair.looks());
    }

    /**
     * Looks for one.
     *
     * @param finder knows the acts
     * @param goal where to
     * @param start where from
     * @param longest ways of more acts are of no use
     * @param goesOn is told how many states were gone on from, and says whether one more may be
     * @return what came of it
     */
    static ShortestWay of(WayFinder finder, Goal goal, long[] start, int longest, IntPredicate goesOn) {
        ShortestWay search = new ShortestWay(finder, goal, longest);
        search.run(start, goesOn);
        return search;
    }

    /** {@return a shortest way; nothing if none was found} */
    Optional<List<Orders.Move>> way() {
        return way;
    }

    /** {@return whether everything that can be reached was looked at} */
    boolean exhausted() {
        return exhausted;
    }

    /** {@return how many acts any way takes at least; one more than the longest of use where all of those were looked at} */
    int atLeast() {
        return atLeast;
    }

    /** {@return how many states were gone on from} */
    int expanded() {
        return expanded;
    }

    private record Node(long[] state, Node parent, Orders.Move move, int length, int bound, int number)
            implements Comparable<Node> {
        @Override
        public int compareTo(Node other) {
            if (bound != other.bound) {
                return Integer.compare(bound, other.bound);
            }
            // Of equal promise the one that is further on.
            return length != other.length
                    ? Integer.compare(other.length, length)
                    : Integer.compare(number, other.number);
        }

        List<Orders.Move> way() {
            List<Orders.Move> all = parent == null ? new ArrayList<>() : parent.way();
            if (move != null) {
                all.add(move);
            }
            return all;
        }
    }

    private void run(long[] start, IntPredicate goesOn) {
        PriorityQueue<Node> open = new PriorityQueue<>();
        Map<StateKey, Integer> lengths = new HashMap<>();
        open.add(new Node(start, null, null, 0, goal.atLeast(start), 0));
        lengths.put(StateKey.of(start), 0);
        int number = 0;
        boolean pruned = false;
        while (!open.isEmpty()) {
            Node now = open.peek();
            atLeast = now.bound;
            if (!goesOn.test(expanded)) {
                return;
            }
            open.poll();
            if (lengths.get(StateKey.of(now.state)) < now.length) {
                continue;
            } else if (goal.isReached(now.state)) {
                way = Optional.of(now.way());
                return;
            }
            expanded++;
            for (Orders.Move move : moves) {
                Optional<long[]> next = repair.surely(now.state, move);
                if (next.isEmpty()) {
                    continue;
                }
                int length = now.length + 1;
                StateKey key = StateKey.of(next.get());
                if (length < lengths.getOrDefault(key, Integer.MAX_VALUE)) {
                    lengths.put(key, length);
                    int bound = Math.max(now.bound, length + goal.atLeast(next.get()));
                    if (bound <= longest) {
                        open.add(new Node(next.get(), now, move, length, bound, ++number));
                    } else {
                        pruned = true;
                    }
                }
            }
        }
        exhausted = !pruned;
        atLeast = longest == Integer.MAX_VALUE ? atLeast : longest + 1;
    }
}
