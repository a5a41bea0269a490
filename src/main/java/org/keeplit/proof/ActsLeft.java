package org.keeplit.proof;

import com.google.common.collect.ImmutableList;
import java.util.ArrayDeque;
import java.util.BitSet;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.keeplit.program.Layout;
import org.keeplit.program.Orders;
import org.keeplit.program.Program;

/**
 * The acts that may still come up, whatever was found. Each act has its number in the order of the text and comes up once at most, so that
 * these tell how far the orders have come, for whoever keeps that otherwise.
 */
final class ActsLeft {
    private final Orders orders;
    private final Layout layout;
    private final Map<BitSet, BitSet> known = new HashMap<>();

    ActsLeft(Program program) {
        this.orders = program.orders();
        this.layout = program.layout();
    }

    /** {@return their numbers, in order} */
    ImmutableList<Integer> in(long[] state) {
        return of(state).stream().boxed().collect(ImmutableList.toImmutableList());
    }

    /** A place in the orders of which not all is known that comes after it. */
    private record Open(BitSet key, List<Orders.Move> moves, long[] state) {}

    private BitSet of(long[] state) {
        BitSet asked = key(state);
        Deque<Open> open = new ArrayDeque<>();
        push(asked, state, open);
        while (!open.isEmpty()) {
            Open last = open.peek();
            int before = open.size();
            BitSet all = new BitSet();
            for (Orders.Move move : last.moves) {
                long[] next = last.state.clone();
                orders.apply(move, next);
                BitSet key = key(next);
                all.set(move.act().id());
                BitSet after = known.get(key);
                if (after == null) {
                    push(key, next, open);
                } else {
                    all.or(after);
                }
            }
            if (open.size() == before) {
                known.put(last.key, all);
                open.pop();
            }
        }
        return known.get(asked);
    }

    private void push(BitSet key, long[] state, Deque<Open> open) {
        if (!known.containsKey(key)) {
            open.push(new Open(key, orders.moves(state), state));
        }
    }

    /** {@return the bits of the orders alone} */
    private BitSet key(long[] state) {
        long[] without = layout.withoutOrders(state);
        long[] only = new long[state.length];
        for (int i = 0; i < only.length; i++) {
            only[i] = state[i] ^ without[i];
        }
        return BitSet.valueOf(only);
    }
}
