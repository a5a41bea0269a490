package org.keeplit.insight;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.BooleanSupplier;
import org.keeplit.explore.Stepper;
import org.keeplit.program.Act;
import org.keeplit.program.Parts;
import org.keeplit.program.Primitive;
import org.keeplit.program.StateKey;

/**
 * Whether every order of the parts of a procedure that keeps to some arrows is safe, with one order tried of all those that differ only in
 * parts that do not touch each other (persistent sets; P. Godefroid, "Partial-Order Methods for the Verification of Concurrent Systems", 1996,
 * from memory). An order that goes wrong is told as it was met, not the shortest.
 */
final class ReducedOrders {
    private final PartRunner runner;
    private final int count;
    private final BitSet[] before;
    private final BitSet[] dependent;
    private final int most;
    private int nodes;
    private Optional<List<Integer>> wrong = Optional.empty();

    /** Which answer there is. */
    enum Answer {
        /** Every order is safe. */
        SAFE,
        /** One is not, or it is not known of one. */
        PERHAPS_NOT,
        /** There are too many, or it was stopped. */
        UNDECIDED
    }

    private ReducedOrders(PartRunner runner, BitSet[] before, BitSet[] dependent, int most) {
        this.runner = runner;
        this.count = before.length;
        this.before = before;
        this.dependent = dependent;
        this.most = most;
    }

    /**
     * Tells for each part which others it touches.
     *
     * @param stepper knows the acts
     * @param parts the parts
     * @return for each part the others whose order with it may matter
     */
    static BitSet[] dependent(Stepper stepper, Parts parts) {
        int count = parts.all().size();
        BitSet[] all = new BitSet[count];
        for (int i = 0; i < count; i++) {
            all[i] = new BitSet();
        }
        for (int i = 0; i < count; i++) {
            for (int j = i + 1; j < count; j++) {
                if (touch(stepper, parts.all().get(i), parts.all().get(j))) {
                    all[i].set(j);
                    all[j].set(i);
                }
            }
        }
        return all;
    }

    private static boolean touch(Stepper stepper, Parts.Part one, Parts.Part other) {
        if (decides(one, other) || decides(other, one)) {
            return true;
        }
        for (Act act : one.acts()) {
            for (Act next : other.acts()) {
                if (!stepper.isIndependent(act.id(), next.id())) {
                    return true;
                }
            }
        }
        return false;
    }

    /** {@return whether what is found in one part may decide what is done in another} */
    private static boolean decides(Parts.Part one, Parts.Part other) {
        return !other.when().isEmpty()
                && one.acts().stream()
                        .flatMap(a -> a.primitives().stream())
                        .anyMatch(Primitive.ComeOut.class::isInstance);
    }

    /**
     * Tries the orders.
     *
     * @param runner does parts
     * @param before for each part those that come before it
     * @param dependent for each part those that it touches
     * @param most how many combinations are gone on from
     * @param goesOn whether it may go on
     * @return the answer
     */
    static ReducedOrders.Found safe(
            PartRunner runner, BitSet[] before, BitSet[] dependent, int most, BooleanSupplier goesOn) {
        ReducedOrders orders = new ReducedOrders(runner, before, dependent, most);
        Answer answer = orders.run(goesOn);
        return new Found(answer, orders.nodes, orders.wrong);
    }

    /**
     * An answer.
     *
     * @param nodes how many combinations were gone on from
     * @param wrong the parts, up to the one at which it goes wrong, of an order that does; nothing where none was met, or it is only not known
     */
    record Found(Answer answer, int nodes, Optional<List<Integer>> wrong) {}

    /** @param part the part done last, after what the node before it had done; -1 at the start */
    private record Node(BitSet done, List<long[]> states, int part, Node before) {
        List<Integer> order() {
            ArrayDeque<Integer> order = new ArrayDeque<>();
            for (Node node = this; node.part >= 0; node = node.before) {
                order.push(node.part);
            }
            return new ArrayList<>(order);
        }
    }

    private Answer run(BooleanSupplier goesOn) {
        ArrayDeque<Node> open = new ArrayDeque<>();
        Set<Set<StateKey>> met = new HashSet<>();
        open.push(new Node(new BitSet(), runner.start(), -1, null));
        while (!open.isEmpty()) {
            Node now = open.pop();
            if (++nodes > most || !goesOn.getAsBoolean()) {
                return Answer.UNDECIDED;
            }
            if (now.done.cardinality() == count) {
                PartRunner.Ran end = runner.run(now.states, List.of(), true);
                if (!end.isSafe()) {
                    return perhapsNot(end, now.order());
                }
                continue;
            }
            for (int part : persistent(now.done)) {
                PartRunner.Ran ran = runner.run(now.states, part);
                if (!ran.isSafe()) {
                    List<Integer> order = now.order();
                    order.add(part);
                    return perhapsNot(ran, order);
                }
                if (met.add(new States(ran.states()).key())) {
                    BitSet done = (BitSet) now.done.clone();
                    done.set(part);
                    open.push(new Node(done, ran.states(), part, now));
                }
            }
        }
        return Answer.SAFE;
    }

    private Answer perhapsNot(PartRunner.Ran ran, List<Integer> order) {
        wrong = ran.harm().map(harm -> order);
        return Answer.PERHAPS_NOT;
    }

    /** {@return parts that may come next, such that nothing that comes before all of them touches one of them; as few as are found} */
    private List<Integer> persistent(BitSet done) {
        List<Integer> best = null;
        for (int part = done.nextClearBit(0); part < count; part = done.nextClearBit(part + 1)) {
            if (isNext(part, done)) {
                List<Integer> some = from(part, done);
                best = best == null || some.size() < best.size() ? some : best;
                if (best.size() == 1) {
                    return best;
                }
            }
        }
        return best;
    }

    private boolean isNext(int part, BitSet done) {
        return isNext(part, before, done);
    }

    /** {@return whether all that comes before a part is done} @param before for each part those that come before it */
    static boolean isNext(int part, BitSet[] before, BitSet done) {
        BitSet missing = (BitSet) before[part].clone();
        missing.andNot(done);
        return missing.isEmpty();
    }

    private List<Integer> from(int first, BitSet done) {
        BitSet taken = new BitSet();
        ArrayDeque<Integer> open = new ArrayDeque<>(List.of(first));
        taken.set(first);
        List<Integer> next = new ArrayList<>();
        while (!open.isEmpty()) {
            int part = open.poll();
            BitSet more = new BitSet();
            if (isNext(part, done)) {
                next.add(part);
                more.or(dependent[part]);
                more.andNot(done);
            } else {
                more.or(before[part]);
                more.andNot(done);
                int one = more.intersects(taken) ? -1 : more.nextSetBit(0);
                more.clear();
                if (one >= 0) {
                    more.set(one);
                }
            }
            more.andNot(taken);
            taken.or(more);
            more.stream().forEach(open::add);
        }
        next.sort(null);
        return next;
    }
}
