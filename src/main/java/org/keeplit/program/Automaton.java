package org.keeplit.program;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.keeplit.outcome.Effort;

/**
 * The orders in which the acts of a plan may come, as a deterministic automaton that is built in full before the
 * search, so that its numbers depend on nothing but the procedure. A control state is the set of leaves that are
 * done, with both ways of a choice that is over. Meant for plans whose {@link Orders#count} is small.
 */
final class Automaton {
    /** One move. @param next the control state after it; the rest as in {@link Orders.Move} */
    record Move(Act act, int next, boolean first, boolean last, List<Orders.Guard> guards) {}

    private final List<List<Move>> moves;
    private final int end;

    private Automaton(List<List<Move>> moves, int end) {
        this.moves = moves;
        this.end = end;
    }

    /** {@return how many control states there are} */
    int size() {
        return moves.size();
    }

    /** {@return the moves from a control state, in the order of the text} */
    List<Move> moves(int state) {
        return moves.get(state);
    }

    /** {@return the control state in which all is done} */
    int end() {
        return end;
    }

    static Automaton of(Plan plan) {
        return new Builder(plan).build();
    }

    private static final class Builder {
        private final Plan root;
        private final Map<BitSet, Integer> numbers = new HashMap<>();
        private final ArrayDeque<BitSet> open = new ArrayDeque<>();
        private final List<List<Move>> moves = new ArrayList<>();

        Builder(Plan root) {
            this.root = root;
        }

        Automaton build() {
            number(new BitSet());
            int end = -1;
            while (!open.isEmpty()) {
                BitSet done = open.poll();
                List<Candidate> candidates = new ArrayList<>();
                enabled(root, done, null, candidates);
                List<Move> here = new ArrayList<>(candidates.size());
                for (Candidate candidate : candidates) {
                    here.add(move(done, candidate));
                }
                moves.add(here);
                if (isDone(root, done)) {
                    end = moves.size() - 1;
                }
            }
            return new Automaton(moves, end);
        }

        private record Candidate(Plan.Leaf leaf, Act act, Plan step, List<Orders.Guard> guards) {}

        private Move move(BitSet done, Candidate candidate) {
            Effort.step();
            BitSet next = (BitSet) done.clone();
            next.set(candidate.leaf.number());
            close(root, next);
            Plan step = candidate.step == null ? candidate.leaf : candidate.step;
            return new Move(
                    candidate.act,
                    number(next),
                    !isBegun(step, done),
                    isDone(step, next),
                    candidate.guards);
        }

        /** Once a choice is done it does not matter which way was taken: both count as done. */
        private static boolean close(Plan plan, BitSet done) {
            if (plan instanceof Plan.Leaf leaf) {
                return done.get(leaf.number());
            } else if (plan instanceof Plan.Node node) {
                boolean all = true;
                for (int i = 0; i < node.parts().size(); i++) {
                    all &= close(node.parts().get(i), done);
                }
                return all;
            }
            Plan one = plan instanceof Plan.Choice choice ? choice.then() : ((Plan.Either) plan).body();
            Plan other = plan instanceof Plan.Choice choice ? choice.otherwise() : ((Plan.Either) plan).skip();
            boolean either = close(one, done) | close(other, done);
            if (either) {
                fill(one, done);
                fill(other, done);
            }
            return either;
        }

        private static void fill(Plan plan, BitSet done) {
            if (plan instanceof Plan.Leaf leaf) {
                done.set(leaf.number());
            } else if (plan instanceof Plan.Node node) {
                node.parts().forEach(part -> fill(part, done));
            } else if (plan instanceof Plan.Choice choice) {
                fill(choice.then(), done);
                fill(choice.otherwise(), done);
            } else if (plan instanceof Plan.Either either) {
                fill(either.body(), done);
                fill(either.skip(), done);
            }
        }

        private int number(BitSet done) {
            Integer known = numbers.get(done);
            if (known != null) {
                return known;
            }
            int number = numbers.size();
            numbers.put(done, number);
            open.add(done);
            return number;
        }

        private void enabled(Plan plan, BitSet done, Enclosing enclosing, List<Candidate> out) {
            if (plan instanceof Plan.Leaf leaf) {
                if (!done.get(leaf.number())) {
                    for (Act act : leaf.acts()) {
                        out.add(new Candidate(
                                leaf,
                                act,
                                enclosing == null ? null : enclosing.step,
                                enclosing == null ? List.of() : enclosing.guards));
                    }
                }
            } else if (plan instanceof Plan.Node node) {
                enabledNode(node, done, node.step() >= 0 ? Enclosing.step(enclosing, node) : enclosing, out);
            } else if (plan instanceof Plan.Choice choice) {
                if (isBegun(choice.then(), done)) {
                    enabled(choice.then(), done, enclosing, out);
                } else if (isBegun(choice.otherwise(), done)) {
                    enabled(choice.otherwise(), done, enclosing, out);
                } else {
                    Orders.Guard yes = new Orders.Guard(choice.item(), choice.outcome(), true);
                    Orders.Guard no = new Orders.Guard(choice.item(), choice.outcome(), false);
                    enabled(choice.then(), done, Enclosing.guard(enclosing, yes), out);
                    enabled(choice.otherwise(), done, Enclosing.guard(enclosing, no), out);
                }
            } else if (plan instanceof Plan.Either either) {
                if (!isBegun(either.skip(), done)) {
                    enabled(either.body(), done, enclosing, out);
                }
                if (!isBegun(either.body(), done)) {
                    enabled(either.skip(), done, enclosing, out);
                }
            }
        }

        private void enabledNode(Plan.Node node, BitSet done, Enclosing enclosing, List<Candidate> out) {
            switch (node.order()) {
                case IN_ORDER -> {
                    for (Plan part : node.parts()) {
                        if (!isDone(part, done)) {
                            enabled(part, done, enclosing, out);
                            return;
                        }
                    }
                }
                case ANY_ORDER -> {
                    for (Plan part : node.parts()) {
                        // Whole parts change places: what was begun is finished first.
                        if (isBegun(part, done) && !isDone(part, done)) {
                            enabled(part, done, enclosing, out);
                            return;
                        }
                    }
                    node.parts().forEach(part -> enabled(part, done, enclosing, out));
                }
                case TOGETHER -> node.parts().forEach(part -> {
                    if (!isDone(part, done)) {
                        enabled(part, done, enclosing, out);
                    }
                });
            }
        }

        private static boolean isDone(Plan plan, BitSet done) {
            if (plan instanceof Plan.Leaf leaf) {
                return done.get(leaf.number());
            } else if (plan instanceof Plan.Node node) {
                for (int i = 0; i < node.parts().size(); i++) {
                    if (!isDone(node.parts().get(i), done)) {
                        return false;
                    }
                }
                return true;
            } else if (plan instanceof Plan.Choice choice) {
                return isDone(choice.then(), done) || isDone(choice.otherwise(), done);
            }
            Plan.Either either = (Plan.Either) plan;
            return isDone(either.body(), done) || isDone(either.skip(), done);
        }

        private static boolean isBegun(Plan plan, BitSet done) {
            if (plan instanceof Plan.Leaf leaf) {
                return done.get(leaf.number());
            } else if (plan instanceof Plan.Node node) {
                for (int i = 0; i < node.parts().size(); i++) {
                    if (isBegun(node.parts().get(i), done)) {
                        return true;
                    }
                }
                return false;
            } else if (plan instanceof Plan.Choice choice) {
                return isBegun(choice.then(), done) || isBegun(choice.otherwise(), done);
            }
            Plan.Either either = (Plan.Either) plan;
            return isBegun(either.body(), done) || isBegun(either.skip(), done);
        }
    }

    /** What a leaf is inside of: its step, and the branches that were not yet begun. */
    private record Enclosing(Plan step, List<Orders.Guard> guards) {
        static Enclosing step(Enclosing outer, Plan step) {
            return new Enclosing(step, outer == null ? List.of() : outer.guards);
        }

        static Enclosing guard(Enclosing outer, Orders.Guard guard) {
            List<Orders.Guard> guards = new ArrayList<>(outer == null ? List.of() : outer.guards);
            guards.add(guard);
            return new Enclosing(outer == null ? null : outer.step, List.copyOf(guards));
        }
    }
}
