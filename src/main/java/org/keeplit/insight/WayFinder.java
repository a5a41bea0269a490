package org.keeplit.insight;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.PriorityQueue;
import java.util.Set;
import org.keeplit.explore.Stepper;
import org.keeplit.outcome.ChosenAct;
import org.keeplit.program.Orders;
import org.keeplit.program.StateKey;

/**
 * Looks for short safe ways to a goal. The order is ours to choose; what comes by itself is not, so only acts after which nothing is left
 * to chance are taken. What it finds is safe; that it is the shortest is said only where it takes no more acts than any way must.
 */
final class WayFinder {
    private final Repair repair;
    private final Goal goal;

    WayFinder(Stepper stepper, Goal goal) {
        this.repair = new Repair(stepper);
        this.goal = goal;
    }

    Repair repair() {
        return repair;
    }

    /**
     * What came of a search.
     *
     * @param way the acts; nothing if no way was found
     * @param exhausted whether everything that can be reached was looked at, so that there is none
     */
    record Found(Optional<List<Orders.Move>> way, boolean exhausted) {}

    private record Node(long[] state, Node parent, List<Orders.Move> moves, int far, int rest, boolean wanted, int number)
            implements Comparable<Node> {
        @Override
        public int compareTo(Node other) {
            if (far != other.far) {
                return Integer.compare(far, other.far);
            } else if (far == 0 && rest != other.rest) {
                // Settings, tags and people are put back last: until then they protect.
                return Integer.compare(rest, other.rest);
            } else if (wanted != other.wanted) {
                return wanted ? -1 : 1;
            }
            return Integer.compare(number, other.number);
        }

        List<Orders.Move> way() {
            List<Orders.Move> all = new ArrayList<>();
            if (parent != null) {
                all.addAll(parent.way());
            }
            all.addAll(moves);
            return all;
        }
    }

    /** Looks for a way from a state, the nearest to the goal first. @param most how many states are gone on from at most */
    Found find(long[] from, int most) {
        Found plain = find(from, most, false);
        return plain.way.isPresent() ? plain : find(from, most, true);
    }

    private Found find(long[] from, int most, boolean tidy) {
        PriorityQueue<Node> open = new PriorityQueue<>();
        Set<StateKey> met = new HashSet<>();
        open.add(node(from, null, List.of(), true, 0));
        met.add(StateKey.of(from));
        int expanded = 0;
        while (!open.isEmpty() && expanded < most) {
            Node now = open.poll();
            Optional<List<Orders.Move>> way = finish(now.state, now.way());
            if (way.isPresent()) {
                return new Found(Optional.of(shortened(from, way.get())), false);
            }
            expanded++;
            expand(now, open, met, tidy);
        }
        return new Found(Optional.empty(), open.isEmpty());
    }

    private Node node(long[] state, Node parent, List<Orders.Move> moves, boolean wanted, int number) {
        return new Node(state, parent, moves, goal.far(state), goal.rest(state), wanted, number);
    }

    private void expand(Node now, PriorityQueue<Node> open, Set<StateKey> met, boolean tidy) {
        List<Repair.Done> all = new ArrayList<>();
        long[] asked = new long[now.state.length];
        for (Orders.Move move : repair.moving()) {
            Repair.Result result = repair.perform(now.state, move, tidy);
            result.done().ifPresent(all::add);
            for (int i = 0; i < result.asked().length; i++) {
                asked[i] |= result.asked()[i];
            }
        }
        for (Repair.Done done : all) {
            if (met.add(StateKey.of(done.state()))) {
                Orders.Move last = done.moves().get(done.moves().size() - 1);
                boolean wanted = Repair.meet(repair.writes(last), asked);
                open.add(node(done.state(), now, done.moves(), wanted, met.size()));
            }
        }
    }

    /** {@return a way with what is still to be done once everything is in its place; nothing if it is not} */
    Optional<List<Orders.Move>> finish(long[] state, List<Orders.Move> way) {
        if (goal.far(state) > 0 || goal.rest(state) > 0) {
            return Optional.empty();
        }
        if (goal.isReached(state)) {
            return Optional.of(way);
        }
        return repair.end(state).map(end -> {
            List<Orders.Move> all = new ArrayList<>(way);
            all.addAll(end.moves());
            return all;
        });
    }

    /** {@return where some acts lead, one after another; nothing if one of them cannot be done so} */
    Optional<long[]> follow(long[] from, List<Orders.Move> moves) {
        Optional<long[]> now = Optional.of(from);
        for (int i = 0; i < moves.size() && now.isPresent(); i++) {
            now = repair.surely(now.get(), moves.get(i));
        }
        return now;
    }

    /** {@return the same way from another state, with looks put in where they are missing; nothing if that does not do} */
    Optional<List<Orders.Move>> adapted(long[] from, List<Orders.Move> moves) {
        Optional<List<Orders.Move>> plain = adapted(from, moves, false);
        return plain.isPresent() ? plain : adapted(from, moves, true);
    }

    private Optional<List<Orders.Move>> adapted(long[] from, List<Orders.Move> moves, boolean tidy) {
        List<Orders.Move> all = new ArrayList<>();
        long[] now = from;
        for (Orders.Move move : moves) {
            Optional<Repair.Done> done = repair.perform(now, move, tidy).done();
            if (done.isEmpty()) {
                return Optional.empty();
            }
            all.addAll(done.get().moves());
            now = done.get().state();
        }
        return finish(now, all);
    }

    /** {@return a way without what it can do without} */
    List<Orders.Move> shortened(long[] from, List<Orders.Move> way) {
        List<Orders.Move> now = new ArrayList<>(way);
        boolean again = true;
        while (again) {
            again = false;
            for (int i = now.size() - 1; i >= 0; i--) {
                List<Orders.Move> less = new ArrayList<>(now);
                less.remove(i);
                if (reaches(from, less)) {
                    now = less;
                    again = true;
                }
            }
        }
        return now;
    }

    boolean reaches(long[] from, List<Orders.Move> way) {
        return follow(from, way).map(goal::isReached).orElse(false);
    }

    /** {@return the acts of a way} */
    static ImmutableList<ChosenAct> acts(List<Orders.Move> way) {
        return way.stream()
                .map(Orders.Move::act)
                .map(act -> new ChosenAct(act.actor(), act.text(), act.stepName(), act.step().span()))
                .collect(ImmutableList.toImmutableList());
    }
}
