package org.keeplit.insight;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.keeplit.program.StateKey;

/**
 * Every order of the parts of a procedure that is safe, if they are not too many. Parts that nothing notices are done first: whenever they
 * come, the rest goes the same way.
 */
final class AllOrders {
    private final PartRunner runner;
    private final int count;
    private final BitSet silent;
    private final int most;
    private final List<Node> nodes = new ArrayList<>();
    private final Map<Set<StateKey>, Integer> numbers = new HashMap<>();

    /** What some parts, done in some safe order, led to. @param next where more of them lead */
    private record Node(BitSet done, States states, List<Integer> next) {}

    private AllOrders(PartRunner runner, int count, BitSet silent, int most) {
        this.runner = runner;
        this.count = count;
        this.silent = silent;
        this.most = most;
    }

    /**
     * Tells for each part which others come before it in some safe order.
     *
     * @param runner does parts
     * @param count how many parts there are
     * @param silent those that nothing notices
     * @param most how many combinations are looked at
     * @return for each part those that come before it in some order that goes well to the end; nothing if there are too many, or
     *     if something could not be worked out
     */
    static Optional<List<BitSet>> before(PartRunner runner, int count, BitSet silent, int most) {
        return new AllOrders(runner, count, silent, most).before();
    }

    private Optional<List<BitSet>> before() {
        PartRunner.Ran first = runner.run(runner.start(), silent.stream().boxed().toList(), false);
        node(silent, first.states());
        BitSet good = new BitSet();
        for (int i = 0; i < nodes.size(); i++) {
            if (nodes.size() > most || !expand(nodes.get(i), i, good)) {
                return Optional.empty();
            }
        }
        // Every edge leads to a node with more parts done, and nodes come in the order of that number.
        for (int i = nodes.size() - 1; i >= 0; i--) {
            good.set(i, good.get(i) || nodes.get(i).next.stream().anyMatch(good::get));
        }
        List<BitSet> all = new ArrayList<>();
        for (int part = 0; part < count; part++) {
            BitSet before = new BitSet();
            for (int i = good.nextSetBit(0); i >= 0; i = good.nextSetBit(i + 1)) {
                if (!nodes.get(i).done.get(part)) {
                    before.or(nodes.get(i).done);
                }
            }
            // What nothing notices comes before everything in some order, and after everything in another.
            if (silent.get(part)) {
                before.set(0, count);
            }
            before.clear(part);
            all.add(before);
        }
        return Optional.of(all);
    }

    /** {@return false if something could not be worked out} */
    private boolean expand(Node node, int number, BitSet good) {
        List<long[]> states = node.states.list();
        if (node.done.cardinality() == count) {
            good.set(number, runner.run(states, List.of(), true).isSafe());
            return true;
        }
        for (int part = node.done.nextClearBit(0); part < count; part = node.done.nextClearBit(part + 1)) {
            PartRunner.Ran ran = runner.run(states, part);
            if (ran.trouble().isPresent()) {
                return false;
            }
            if (ran.isSafe()) {
                BitSet done = (BitSet) node.done.clone();
                done.set(part);
                node.next.add(node(done, ran.states()));
            }
        }
        return true;
    }

    private int node(BitSet done, List<long[]> states) {
        States there = new States(states);
        return numbers.computeIfAbsent(there.key(), k -> {
            nodes.add(new Node(done, there, new ArrayList<>()));
            return nodes.size() - 1;
        });
    }
}
