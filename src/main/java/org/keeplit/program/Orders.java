package org.keeplit.program;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.keeplit.procedure.Block;

/**
 * The orders in which the acts of a program may come. How far a run has come stands in the first bits of the packed state.
 * Plans of few combinations are numbered through before the search; larger ones are taken apart into parts that keep
 * their own bits, so that crews that work at once never have their combinations written out.
 */
public final class Orders {
    /** Up to how many combinations a plan is numbered through. */
    public static final int NUMBERED = 20_000;

    private final OrderPart root;
    private final Map<OrderPart, OrderPart> stepOf;
    private final double count;
    private final int bits;

    private Orders(Builder builder, OrderPart root, double count) {
        this.root = root;
        this.stepOf = builder.stepOf;
        this.count = count;
        this.bits = builder.space.next();
    }

    /**
     * What must have been found for a branch to be taken.
     *
     * @param item the inspection
     * @param outcome the number of the outcome, from 0
     * @param wanted whether that outcome is wanted, or any other
     */
    public record Guard(FieldKey.Found item, int outcome, boolean wanted) {}

    /** What may come next. */
    public static final class Move {
        private final Act act;
        private final boolean first;
        private final boolean last;
        private final List<Guard> guards;
        private final OrderPart part;
        private final int next;

        /**
         * An act that no order calls for: it may come whenever, and how far the orders have come stays as it is.
         *
         * @param act the act
         * @return the move; it begins and ends its step
         */
        public static Move atWill(Act act) {
            return new Move(act, true, true, List.of(), new OrderPart.Nowhere(), 0);
        }

        Move(Act act, boolean first, boolean last, List<Guard> guards, OrderPart part, int next) {
            this.act = act;
            this.first = first;
            this.last = last;
            this.guards = guards;
            this.part = part;
            this.next = next;
        }

        /** {@return the act} */
        public Act act() {
            return act;
        }

        /** {@return what must have been found, where the move belongs to branches that were not yet begun} */
        public List<Guard> guards() {
            return guards;
        }

        Move with(List<Guard> more) {
            List<Guard> all = new ArrayList<>(more);
            all.addAll(guards);
            return new Move(act, first, last, List.copyOf(all), part, next);
        }
    }

    /**
     * Works the orders out.
     *
     * @param plan the plan
     * @param numbered up to how many combinations are numbered through
     */
    static Orders of(Plan plan, int numbered) {
        Builder builder = new Builder(numbered);
        OrderPart root = builder.part(plan);
        double count = root instanceof OrderPart.Numbered ? builder.numberedSize : count(plan);
        return new Orders(builder, root, count);
    }

    /** {@return how many combinations of acts done and not done there are; nearly so where they are very many} */
    public double count() {
        return count;
    }

    /** {@return how many bits at the head of the state it takes} */
    public int bits() {
        return bits;
    }

    /** {@return what may come next, in the order of the text; nothing at the end} @param state the packed state */
    public List<Move> moves(long[] state) {
        if (root instanceof OrderPart.Numbered numbered) {
            return numbered.moves(state);
        }
        List<Move> all = new ArrayList<>();
        root.moves(state, List.of(), all);
        return all;
    }

    /**
     * Of orders that are made of whole parts, see {@link Parts}: whether a part is done.
     *
     * @param state the packed state
     * @param part the part's number
     */
    public boolean isDone(long[] state, int part) {
        return ((OrderPart.AnyOrder) root).isDone(state, part);
    }

    /** {@return whether a move begins its step} @param move the move @param state the state that it leaves */
    public boolean isFirst(Move move, long[] state) {
        OrderPart step = stepOf.isEmpty() ? null : stepOf.get(move.part);
        return step == null ? move.first : step.isFresh(state);
    }

    /** {@return whether a move ends its step} @param move the move @param state the state that it leaves */
    public boolean isLast(Move move, long[] state) {
        OrderPart step = stepOf.isEmpty() ? null : stepOf.get(move.part);
        if (step == null) {
            return move.last;
        }
        long[] next = state.clone();
        apply(move, next, step);
        return step.isDone(next);
    }

    /** Notes in a state that a move was made. @param move the move @param state the state, changed in place */
    public void apply(Move move, long[] state) {
        apply(move, state, root);
    }

    /** Notes a move, and what is done with it up to a part, which itself is left as it is. */
    private static void apply(Move move, long[] state, OrderPart top) {
        for (OrderPart part = move.part; part.parent() != null; part = part.parent()) {
            part.parent().enters(state, part.place());
        }
        move.part.set(state, move.next);
        for (OrderPart part = move.part; part != top && part.parent() != null && part.isDone(state); part = part.parent()) {
            part.parent().finishes(state, part.place());
        }
    }

    /** {@return how many combinations a plan has} */
    private static double count(Plan plan) {
        if (plan instanceof Plan.Leaf) {
            return 2;
        } else if (plan instanceof Plan.Choice choice) {
            return count(choice.then()) + count(choice.otherwise()) - 2;
        } else if (plan instanceof Plan.Either either) {
            return count(either.body()) + count(either.skip()) - 2;
        } else if (plan instanceof Plan.Partial partial) {
            return Math.pow(2, partial.parts().size());
        }
        Plan.Node node = (Plan.Node) plan;
        double count = 1;
        double inside = 0;
        for (Plan part : node.parts()) {
            double one = count(part);
            count = node.order() == Block.Order.TOGETHER ? count * one : count + one - 1;
            inside += one - 2;
        }
        if (node.order() == Block.Order.ANY_ORDER && !node.parts().isEmpty()) {
            double sets = Math.pow(2, node.parts().size());
            return sets + inside * sets / 2;
        }
        return count;
    }

    /** Takes a plan apart and gives each part its bits. */
    private static final class Builder {
        private final int numbered;
        private final Map<OrderPart, OrderPart> stepOf = new HashMap<>();
        private final BitSpace space = new BitSpace(0);
        private double numberedSize;

        Builder(int numbered) {
            this.numbered = numbered;
        }

        OrderPart part(Plan plan) {
            if (plan instanceof Plan.Partial partial) {
                // Never numbered through: who asks for it wants to follow orders of which most are never taken.
                List<BitSpace.Bits> done = partial.parts().stream().map(p -> space.take(2)).toList();
                BitSpace.Bits active = space.take(partial.parts().size() + 1);
                return new OrderPart.AnyOrder(overlaid(partial.parts()), done, active, partial.after());
            } else if (plan instanceof Plan.Leaf || count(plan) <= numbered) {
                Automaton automaton = Automaton.of(plan);
                numberedSize = automaton.size();
                return new OrderPart.Numbered(automaton, space.take(automaton.size()));
            } else if (plan instanceof Plan.Choice choice) {
                return either(
                        List.of(choice.then(), choice.otherwise()),
                        List.of(
                                List.of(new Guard(choice.item(), choice.outcome(), true)),
                                List.of(new Guard(choice.item(), choice.outcome(), false))));
            } else if (plan instanceof Plan.Either either) {
                return either(List.of(either.body(), either.skip()), List.of(List.of(), List.of()));
            }
            return node((Plan.Node) plan);
        }

        private OrderPart either(List<Plan> ways, List<List<Guard>> guards) {
            BitSpace.Bits way = space.take(4);
            return new OrderPart.Either(overlaid(ways), guards, way);
        }

        private OrderPart node(Plan.Node node) {
            List<Plan> parts = node.parts().stream().filter(p -> count(p) > 1).toList();
            OrderPart made =
                    switch (node.order()) {
                        case IN_ORDER -> {
                            BitSpace.Bits stage = space.take(parts.size() + 1);
                            yield new OrderPart.Sequence(overlaid(parts), stage);
                        }
                        case TOGETHER -> new OrderPart.Together(
                                new ArrayList<>(parts.stream().map(this::part).toList()));
                        case ANY_ORDER -> {
                            List<BitSpace.Bits> done = parts.stream().map(p -> space.take(2)).toList();
                            BitSpace.Bits active = space.take(parts.size() + 1);
                            List<List<Integer>> free = Collections.nCopies(parts.size(), List.of());
                            yield new OrderPart.AnyOrder(overlaid(parts), done, active, free);
                        }
                    };
            if (node.step() >= 0) {
                belongs(made, made);
            }
            return made;
        }

        private void belongs(OrderPart part, OrderPart step) {
            if (part instanceof OrderPart.Numbered numbered) {
                stepOf.put(numbered, step);
            } else {
                part.children().forEach(child -> belongs(child, step));
            }
        }

        /** Parts of which one at most is under way use the same bits. */
        private List<OrderPart> overlaid(List<Plan> plans) {
            int from = space.next();
            int to = from;
            List<OrderPart> all = new ArrayList<>();
            for (Plan plan : plans) {
                space.goTo(from);
                all.add(part(plan));
                to = Math.max(to, space.next());
            }
            space.goTo(to);
            return Collections.unmodifiableList(all);
        }
    }
}
