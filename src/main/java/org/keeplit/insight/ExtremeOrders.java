package org.keeplit.insight;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;

/**
 * Looks for an order that keeps to some arrows and goes wrong, where all orders are too many: each part as early, and as late, as the arrows
 * let it, with the others as near to the text, and as far from it, as can be. That nothing is found says nothing.
 */
final class ExtremeOrders {
    private final PartRunner runner;
    private final int count;
    private final BitSet[] before;
    private final BooleanSupplier goesOn;

    private ExtremeOrders(PartRunner runner, BitSet[] before, BooleanSupplier goesOn) {
        this.runner = runner;
        this.count = before.length;
        this.before = before;
        this.goesOn = goesOn;
    }

    /**
     * Looks for an order that goes wrong.
     *
     * @param runner does parts
     * @param before for each part those that come before it, all earlier in the text
     * @param goesOn whether it may go on
     * @return the parts of such an order up to the one at which it goes wrong; all of them where the end is not as it should be
     */
    static Optional<List<Integer>> unsafe(PartRunner runner, BitSet[] before, BooleanSupplier goesOn) {
        return new ExtremeOrders(runner, before, goesOn).find();
    }

    /**
     * Leaves out of an order that goes wrong what that does not need.
     *
     * @param runner does parts
     * @param before for each part those that come before it
     * @param wrong the parts up to the one at which it goes wrong
     * @return as many of them, in the same order, that none can be left out with the same part going wrong
     */
    static List<Integer> shortened(PartRunner runner, BitSet[] before, List<Integer> wrong) {
        return new ExtremeOrders(runner, before, () -> true).shortened(wrong);
    }

    private Optional<List<Integer>> find() {
        for (int part = count - 1; part >= 0 && goesOn.getAsBoolean(); part--) {
            for (boolean backwards : new boolean[] {false, true}) {
                Optional<List<Integer>> early = goesWrong(around(part, true, backwards));
                Optional<List<Integer>> found = early.isPresent() ? early : goesWrong(around(part, false, backwards));
                if (found.isPresent()) {
                    return found;
                }
            }
        }
        return Optional.empty();
    }

    /** {@return all parts, with one as early or as late as can be} @param backwards whether of others the last in the text comes first */
    private List<Integer> around(int part, boolean early, boolean backwards) {
        BitSet first = new BitSet();
        if (early) {
            needs(part, first);
        } else {
            for (int i = 0; i < count; i++) {
                BitSet needed = new BitSet();
                needs(i, needed);
                first.set(i, i != part && !needed.get(part));
            }
        }
        List<Integer> order = new ArrayList<>();
        add(first, backwards, order);
        order.add(part);
        BitSet rest = new BitSet();
        rest.set(0, count);
        order.forEach(rest::clear);
        add(rest, backwards, order);
        return order;
    }

    private void needs(int part, BitSet into) {
        before[part].stream().filter(i -> !into.get(i)).forEach(i -> {
            into.set(i);
            needs(i, into);
        });
    }

    private void add(BitSet some, boolean backwards, List<Integer> order) {
        BitSet open = (BitSet) some.clone();
        BitSet done = new BitSet();
        order.forEach(done::set);
        while (!open.isEmpty()) {
            int next = backwards ? open.length() - 1 : open.nextSetBit(0);
            while (!ReducedOrders.isNext(next, before, done)) {
                next = backwards ? open.previousSetBit(next - 1) : open.nextSetBit(next + 1);
            }
            order.add(next);
            done.set(next);
            open.clear(next);
        }
    }

    /** {@return the parts up to the one at which it goes wrong; nothing if it goes well, or is not known to go wrong} */
    private Optional<List<Integer>> goesWrong(List<Integer> order) {
        PartRunner.Ran ran = runner.run(runner.start(), order, order.size() == count);
        if (ran.harm().isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(ran.part() < 0 ? order : order.subList(0, order.indexOf(ran.part()) + 1));
    }

    private List<Integer> shortened(List<Integer> found) {
        List<Integer> now = found;
        for (int i = found.size() - 2; i >= 0 && now.size() < count; i--) {
            Integer part = found.get(i);
            List<Integer> less = new ArrayList<>(now);
            less.remove(part);
            boolean needed = less.stream().anyMatch(other -> before[other].get(part));
            if (!needed && goesWrong(less).map(way -> way.equals(less)).orElse(false)) {
                now = less;
            }
        }
        return now;
    }
}
