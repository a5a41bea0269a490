package org.keeplit.program;

import java.util.ArrayList;
import java.util.List;

/**
 * A part of a plan that keeps how far it has come in bits of the packed state. With nothing done all its bits are 0.
 * Parts that are never under way at once share their bits.
 */
abstract class OrderPart {
    private OrderPart parent;
    private int place;

    final <T extends OrderPart> List<T> adopt(List<T> children) {
        for (int i = 0; i < children.size(); i++) {
            OrderPart child = children.get(i);
            child.parent = this;
            child.place = i;
        }
        return children;
    }

    final OrderPart parent() {
        return parent;
    }

    final int place() {
        return place;
    }

    /** {@return the parts that it is made of} */
    List<OrderPart> children() {
        return List.of();
    }

    abstract boolean isDone(long[] state);

    abstract boolean isFresh(long[] state);

    /** Takes everything back. */
    abstract void clear(long[] state);

    /** Adds what may come next. @param guards what must have been found for it */
    abstract void moves(long[] state, List<Orders.Guard> guards, List<Orders.Move> into);

    /** Goes on. @param number where to, as its moves say */
    void set(long[] state, int number) {
        throw new IllegalStateException("only what makes moves goes on");
    }

    /** An act of a child comes. */
    void enters(long[] state, int child) {}

    /** A child is done. */
    void finishes(long[] state, int child) {}

    /** Acts whose every state was numbered before the search. */
    static final class Numbered extends OrderPart {
        private final Automaton automaton;
        private final BitSpace.Bits bits;
        private final List<List<Orders.Move>> moves = new ArrayList<>();

        Numbered(Automaton automaton, BitSpace.Bits bits) {
            this.automaton = automaton;
            this.bits = bits;
            for (int i = 0; i < automaton.size(); i++) {
                List<Orders.Move> here = new ArrayList<>();
                for (Automaton.Move move : automaton.moves(i)) {
                    here.add(new Orders.Move(move.act(), move.first(), move.last(), move.guards(), this, move.next()));
                }
                moves.add(List.copyOf(here));
            }
        }

        List<Orders.Move> moves(long[] state) {
            return moves.get(bits.get(state));
        }

        @Override
        void set(long[] state, int number) {
            bits.set(state, number);
        }

        @Override
        boolean isDone(long[] state) {
            return bits.get(state) == automaton.end();
        }

        @Override
        boolean isFresh(long[] state) {
            return bits.get(state) == 0;
        }

        @Override
        void clear(long[] state) {
            bits.set(state, 0);
        }

        @Override
        void moves(long[] state, List<Orders.Guard> guards, List<Orders.Move> into) {
            if (guards.isEmpty()) {
                into.addAll(moves(state));
            } else {
                moves(state).forEach(move -> into.add(move.with(guards)));
            }
        }
    }

    /** What is outside all orders: it keeps nothing and is never done. */
    static final class Nowhere extends OrderPart {
        @Override
        boolean isDone(long[] state) {
            return false;
        }

        @Override
        boolean isFresh(long[] state) {
            return true;
        }

        @Override
        void clear(long[] state) {}

        @Override
        void moves(long[] state, List<Orders.Guard> guards, List<Orders.Move> into) {}

        @Override
        void set(long[] state, int number) {}
    }

    /** One child after another. */
    static final class Sequence extends OrderPart {
        private final List<OrderPart> children;
        private final BitSpace.Bits stage;

        Sequence(List<OrderPart> children, BitSpace.Bits stage) {
            this.children = adopt(children);
            this.stage = stage;
        }

        @Override
        List<OrderPart> children() {
            return children;
        }

        @Override
        boolean isDone(long[] state) {
            return stage.get(state) == children.size();
        }

        @Override
        boolean isFresh(long[] state) {
            return stage.get(state) == 0 && children.get(0).isFresh(state);
        }

        @Override
        void clear(long[] state) {
            if (!isDone(state)) {
                children.get(stage.get(state)).clear(state);
            }
            stage.set(state, 0);
        }

        @Override
        void moves(long[] state, List<Orders.Guard> guards, List<Orders.Move> into) {
            if (!isDone(state)) {
                children.get(stage.get(state)).moves(state, guards, into);
            }
        }

        @Override
        void finishes(long[] state, int child) {
            children.get(child).clear(state);
            stage.set(state, child + 1);
        }
    }

    /** All children at once. */
    static final class Together extends OrderPart {
        private final List<OrderPart> children;

        Together(List<OrderPart> children) {
            this.children = adopt(children);
        }

        @Override
        List<OrderPart> children() {
            return children;
        }

        @Override
        boolean isDone(long[] state) {
            for (int i = 0; i < children.size(); i++) {
                if (!children.get(i).isDone(state)) {
                    return false;
                }
            }
            return true;
        }

        @Override
        boolean isFresh(long[] state) {
            return children.stream().allMatch(c -> c.isFresh(state));
        }

        @Override
        void clear(long[] state) {
            children.forEach(c -> c.clear(state));
        }

        @Override
        void moves(long[] state, List<Orders.Guard> guards, List<Orders.Move> into) {
            for (int i = 0; i < children.size(); i++) {
                children.get(i).moves(state, guards, into);
            }
        }
    }

    /** Children of which one at most is under way. */
    private abstract static class OneAtATime extends OrderPart {
        private final List<OrderPart> children;
        /** 0 for none, or one more than the place of a child; {@code Either} knows one more value. */
        private final BitSpace.Bits active;

        OneAtATime(List<OrderPart> children, BitSpace.Bits active) {
            this.children = adopt(children);
            this.active = active;
        }

        @Override
        final List<OrderPart> children() {
            return children;
        }

        final int active(long[] state) {
            return active.get(state);
        }

        @Override
        final void enters(long[] state, int child) {
            active.set(state, child + 1);
        }

        @Override
        void clear(long[] state) {
            int begun = active.get(state);
            if (begun > 0 && begun <= children.size()) {
                children.get(begun - 1).clear(state);
            }
            active.set(state, 0);
        }

        /** Ends the child that is under way. @param then the value that says what is under way now */
        final void leave(long[] state, int child, int then) {
            children.get(child).clear(state);
            active.set(state, then);
        }
    }

    /** One whole child after another, whichever is first; some only after others. */
    static final class AnyOrder extends OneAtATime {
        private final List<BitSpace.Bits> done;
        /** For each child those that come before it. */
        private final List<? extends List<Integer>> after;

        AnyOrder(
                List<OrderPart> children,
                List<BitSpace.Bits> done,
                BitSpace.Bits active,
                List<? extends List<Integer>> after) {
            super(children, active);
            this.done = done;
            this.after = after;
        }

        boolean isDone(long[] state, int child) {
            return done.get(child).get(state) == 1;
        }

        private boolean mayBegin(long[] state, int child) {
            for (int earlier : after.get(child)) {
                if (!isDone(state, earlier)) {
                    return false;
                }
            }
            return !isDone(state, child);
        }

        @Override
        boolean isDone(long[] state) {
            return done.stream().allMatch(d -> d.get(state) == 1);
        }

        @Override
        boolean isFresh(long[] state) {
            return active(state) == 0 && done.stream().allMatch(d -> d.get(state) == 0);
        }

        @Override
        void clear(long[] state) {
            super.clear(state);
            done.forEach(d -> d.set(state, 0));
        }

        @Override
        void moves(long[] state, List<Orders.Guard> guards, List<Orders.Move> into) {
            int begun = active(state);
            for (int i = 0; i < children().size(); i++) {
                if (begun == i + 1 || begun == 0 && mayBegin(state, i)) {
                    children().get(i).moves(state, guards, into);
                }
            }
        }

        @Override
        void finishes(long[] state, int child) {
            leave(state, child, 0);
            done.get(child).set(state, 1);
        }
    }

    /** One child or the other; by what was found, if there is a guard. */
    static final class Either extends OneAtATime {
        private static final int DONE = 3;
        private final List<List<Orders.Guard>> guards;

        Either(List<OrderPart> children, List<List<Orders.Guard>> guards, BitSpace.Bits way) {
            super(children, way);
            this.guards = guards;
        }

        @Override
        boolean isDone(long[] state) {
            return active(state) == DONE;
        }

        @Override
        boolean isFresh(long[] state) {
            return active(state) == 0;
        }

        @Override
        void moves(long[] state, List<Orders.Guard> outer, List<Orders.Move> into) {
            int taken = active(state);
            for (int i = 0; i < children().size(); i++) {
                if (taken == 0) {
                    List<Orders.Guard> all = new ArrayList<>(outer);
                    all.addAll(guards.get(i));
                    children().get(i).moves(state, all, into);
                } else if (taken == i + 1) {
                    children().get(i).moves(state, outer, into);
                }
            }
        }

        @Override
        void finishes(long[] state, int child) {
            leave(state, child, DONE);
        }
    }
}
