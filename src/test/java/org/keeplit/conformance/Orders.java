package org.keeplit.conformance;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * The possible orders of a case, by brute force: every permutation of its acts is tried, and kept if it breaks none of the constraints
 * that its expectation states. It knows nothing of procedures.
 */
final class Orders {
    /**
     * Acts and what is said of their order.
     *
     * @param acts their names, each once
     * @param before pairs: the first of each comes before the second
     * @param whole what is done without a break
     */
    record Way(List<String> acts, List<List<String>> before, List<Whole> whole) {}

    /**
     * Acts between which none of some others comes.
     *
     * @param acts the acts that stay together
     * @param others what does not come between two of them
     */
    record Whole(List<String> acts, List<String> others) {}

    /**
     * What was counted.
     *
     * @param orders how many permutations keep to what is said
     * @param sets how many different sets of done acts come up in them, the empty one and the full one included
     * @param moves how many ways lead from one of these sets to the next by one act
     */
    record Counted(BigInteger orders, int sets, int moves) {}

    private final Way way;
    private final Set<Set<String>> sets = new HashSet<>();
    private final Set<List<Set<String>>> moves = new HashSet<>();
    private long complete;

    private Orders(Way way) {
        this.way = way;
    }

    /** {@return the orders of all ways together} */
    static Counted count(List<Way> ways) {
        BigInteger orders = BigInteger.ZERO;
        Set<Set<String>> sets = new HashSet<>();
        Set<List<Set<String>>> moves = new HashSet<>();
        for (Way way : ways) {
            Orders one = new Orders(way);
            one.goOn(new ArrayList<>(), new BitSet());
            orders = orders.add(BigInteger.valueOf(one.complete));
            sets.addAll(one.sets);
            moves.addAll(one.moves);
        }
        return new Counted(orders, sets.size(), moves.size());
    }

    /** Goes on with each act that is not done; an order counts when it is complete, and its beginnings count with it. */
    private boolean goOn(List<String> done, BitSet used) {
        boolean leads = false;
        if (done.size() == way.acts().size()) {
            complete++;
            leads = true;
        }
        for (int next = 0; next < way.acts().size(); next++) {
            if (!used.get(next) && mayCome(way.acts().get(next), done)) {
                used.set(next);
                done.add(way.acts().get(next));
                boolean further = goOn(done, used);
                Set<String> after = Set.copyOf(done);
                done.remove(done.size() - 1);
                used.clear(next);
                if (further) {
                    moves.add(List.of(Set.copyOf(done), after));
                    leads = true;
                }
            }
        }
        if (leads) {
            sets.add(Set.copyOf(done));
        }
        return leads;
    }

    private boolean mayCome(String act, List<String> done) {
        for (List<String> pair : way.before()) {
            if (pair.get(1).equals(act) && !done.contains(pair.get(0))) {
                return false;
            }
        }
        for (Whole whole : way.whole()) {
            long begun = whole.acts().stream().filter(done::contains).count();
            if (whole.others().contains(act) && begun > 0 && begun < whole.acts().size()) {
                return false;
            }
        }
        return true;
    }
}
