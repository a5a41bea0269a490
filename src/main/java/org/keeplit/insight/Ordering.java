package org.keeplit.insight;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.keeplit.explore.Proving;
import org.keeplit.explore.Stepper;
import org.keeplit.outcome.Harm;
import org.keeplit.outcome.Limits;
import org.keeplit.outcome.OrderTable;
import org.keeplit.outcome.Outcome;
import org.keeplit.outcome.Watcher;
import org.keeplit.procedure.Instance;
import org.keeplit.program.Parts;

/**
 * Finds which steps must come before which, by trying to have the later before the earlier.
 *
 * <p>For each step all that can be done without it is done first. What cannot be done so needs it. What can is put before it with nothing
 * else changed but what it needs itself. If that goes well to the end, the two may change places. If not, it is tried after all
 * that can be done without: where that goes well, only the text as it is written has them in this order.
 */
public final class Ordering {
    /** Up to how many combinations of steps done and not done every order is tried. */
    private static final int MOST = 5_000;
    /** How many combinations are gone on from, of equal orders only one, before an order that goes wrong is looked for. */
    private static final int FEW = 12_000;
    /** Up to how many states the shortest way of an order that goes wrong is told. */
    private static final int SHORTEST = 20_000;

    private static final OrderTable.Every NOT_ASKED =
            new OrderTable.Every(OrderTable.Answer.UNDECIDED, 0, Optional.empty());

    private final Parts parts;
    private final PartRunner runner;
    private final Watcher watcher;
    private final int count;
    /** For each number of parts done in the order of the text, where that leads. */
    private final List<States> prefix = new ArrayList<>();
    /** For each part those that must come before it. */
    private final BitSet[] needs;
    /** For each part those before which it cannot come with nothing else changed. */
    private final BitSet[] wants;

    private final BitSet silent = new BitSet();
    private final List<OrderTable.Pair> pairs = new ArrayList<>();
    private boolean exhaustive;

    private Ordering(Stepper stepper, Parts parts, Watcher watcher) {
        this.parts = parts;
        this.runner = new PartRunner(stepper, parts);
        this.watcher = watcher;
        this.count = parts.all().size();
        this.needs = new BitSet[count];
        this.wants = new BitSet[count];
        for (int i = 0; i < count; i++) {
            needs[i] = new BitSet();
            wants[i] = new BitSet();
            silent.set(i, parts.all().get(i).acts().stream().allMatch(act -> stepper.isSilent(act.id())));
        }
    }

    /**
     * Finds which steps must come before which.
     *
     * @param instance the procedure, where it is tried and from which start
     * @param prepared the same, ready to be explored
     * @param limits how far to go for the orders that are left
     * @param watcher is told how it gets on; may stop it, and then nothing is told
     * @return the pairs; none of what does not hold as it is
     */
    public static OrderTable of(Instance instance, Proving.Prepared prepared, Limits limits, Watcher watcher) {
        return of(instance, prepared, limits, watcher, true);
    }

    /**
     * Like {@link #of}, but does not ask whether every order that keeps to the pairs is safe: that is left undecided.
     *
     * @param instance the procedure, where it is proved and from which start
     * @param prepared the same, ready to be explored
     * @param limits how many states are looked at
     * @param watcher is told how it gets on
     * @return the table
     */
    public static OrderTable pairs(Instance instance, Proving.Prepared prepared, Limits limits, Watcher watcher) {
        return of(instance, prepared, limits, watcher, false);
    }

    private static OrderTable of(
            Instance instance, Proving.Prepared prepared, Limits limits, Watcher watcher, boolean asksEvery) {
        Parts parts = Parts.of(prepared.program());
        Outcome plain = Proving.explore(prepared, limits, (states, open) -> watcher.goOn(0, 1));
        if (plain.answer() != Outcome.Answer.HOLDS) {
            boolean cut = plain.answer() == Outcome.Answer.UNDECIDED;
            return new OrderTable(instance, false, cut, parts.told(), ImmutableList.of(), false, NOT_ASKED, NOT_ASKED);
        }
        return Stepper.with(Proving.with(prepared, parts.free()), stepper -> {
            Ordering ordering = new Ordering(stepper, parts, watcher);
            if (!ordering.run()) {
                return new OrderTable(instance, true, true, parts.told(), ImmutableList.of(), false, NOT_ASKED, NOT_ASKED);
            }
            if (!asksEvery) {
                return new OrderTable(
                        instance, true, parts.told(), ordering.told(), ordering.exhaustive, NOT_ASKED, NOT_ASKED);
            }
            BitSet[] touching = ReducedOrders.dependent(stepper, parts);
            OrderTable.Every necessary = ordering.every(ordering.needs, touching, prepared, limits);
            OrderTable.Every asWritten = Arrays.equals(ordering.needs, ordering.wants)
                    ? necessary
                    : ordering.every(ordering.wants, touching, prepared, limits);
            return new OrderTable(
                    instance, true, parts.told(), ordering.told(), ordering.exhaustive, necessary, asWritten);
        });
    }

    /** Tries the pairs. {@return false if it was stopped} */
    private boolean run() {
        List<long[]> now = runner.start();
        prefix.add(new States(now));
        for (int i = 0; i < count; i++) {
            PartRunner.Ran ran = runner.run(now, i);
            if (!ran.isSafe()) {
                throw new IllegalStateException("a procedure that holds does not hold part by part: " + ran);
            }
            now = ran.states();
            prefix.add(new States(now));
        }
        for (int i = count - 2; i >= 0; i--) {
            if (!watcher.goOn(count - i, i)) {
                return false;
            }
            without(i);
        }
        AllOrders.before(runner, count, silent, MOST).ifPresent(this::correct);
        return true;
    }

    /** Takes back what is called necessary, where all orders are known and one of them shows that it is not. */
    private void correct(List<BitSet> before) {
        exhaustive = true;
        for (int i = 0; i < pairs.size(); i++) {
            OrderTable.Pair pair = pairs.get(i);
            if (pair.kind() == OrderTable.Kind.NECESSARY && before.get(pair.before()).get(pair.after())) {
                needs[pair.after()].clear(pair.before());
                pairs.set(i, new OrderTable.Pair(pair.before(), pair.after(), OrderTable.Kind.AS_WRITTEN, pair.direct(), pair.harm()));
            }
        }
    }

    /** What was done without a part. @param order the parts, in the order in which they were done @param harms for each part why not, if not */
    private record Without(List<Integer> order, PartRunner.Ran[] failures) {}

    /** Tells the pairs of which a part is the earlier. */
    private void without(int part) {
        Without all = closure(part);
        for (int later = part + 1; later < count; later++) {
            PartRunner.Ran alone = all.failures[later];
            OrderTable.Kind kind = OrderTable.Kind.NECESSARY;
            if (all.order.contains(later)) {
                alone = exchanged(part, later);
                kind = alone == null ? OrderTable.Kind.FREE : OrderTable.Kind.AS_WRITTEN;
                List<Integer> first = all.order.subList(0, all.order.indexOf(later));
                if (alone != null && finish(part, later, first) != null && !earlier(part, later)) {
                    kind = OrderTable.Kind.NECESSARY;
                }
            } else if (earlier(part, later)) {
                kind = OrderTable.Kind.AS_WRITTEN;
            }
            if (alone != null && alone.trouble().isPresent()) {
                // Nothing is built on what is not known.
                kind = OrderTable.Kind.UNKNOWN;
            }
            if (kind == OrderTable.Kind.NECESSARY || kind == OrderTable.Kind.UNKNOWN) {
                needs[later].set(part);
            }
            if (kind != OrderTable.Kind.FREE) {
                wants[later].set(part);
            }
            add(part, later, kind, alone == null ? Optional.empty() : alone.harm());
        }
    }

    private void add(int before, int after, OrderTable.Kind kind, Optional<Harm> harm) {
        if (parts.isBefore(before, after)) {
            pairs.add(new OrderTable.Pair(before, after, kind, false, harm));
        }
    }

    /** Does all that can be done after the parts before one, but without that one. */
    private Without closure(int part) {
        List<long[]> now = prefix.get(part).list();
        List<Integer> order = new ArrayList<>();
        PartRunner.Ran[] failures = new PartRunner.Ran[count];
        BitSet missing = new BitSet();
        missing.set(part, count);
        boolean more = true;
        while (more) {
            more = false;
            for (int next = part + 1; next < count; next++) {
                if (!missing.get(next) || waits(next, missing, part)) {
                    continue;
                }
                PartRunner.Ran ran = runner.run(now, next);
                if (ran.isSafe()) {
                    now = ran.states();
                    order.add(next);
                    missing.clear(next);
                    more = true;
                } else if (failures[next] == null) {
                    failures[next] = ran;
                }
            }
        }
        for (int next = part + 1; next < count; next++) {
            if (missing.get(next) && failures[next] == null) {
                failures[next] = runner.run(prefix.get(part).list(), next);
            }
            if (missing.get(next) && failures[next].isSafe()) {
                // It could be done at once, but what it needs to come after could not: that is what is told.
                failures[next] = blockedBy(next, missing, part, failures);
            }
        }
        return new Without(order, failures);
    }

    /** {@return whether a part needs another that is missing; the one left out does not count, it is to be found out about} */
    private boolean waits(int part, BitSet missing, int leftOut) {
        BitSet needed = (BitSet) needs[part].clone();
        needed.and(missing);
        needed.clear(leftOut);
        return !needed.isEmpty();
    }

    private PartRunner.Ran blockedBy(int part, BitSet missing, int leftOut, PartRunner.Ran[] failures) {
        return IntStream.range(leftOut + 1, part)
                .filter(i -> needs[part].get(i) && missing.get(i) && failures[i] != null && !failures[i].isSafe())
                .mapToObj(i -> failures[i])
                .findFirst()
                .orElseThrow();
    }

    /** Tries a later part before an earlier, with what the later needs itself; {@return what goes wrong, or null if it goes well} */
    private PartRunner.Ran exchanged(int earlier, int later) {
        PartRunner.Ran ran = finish(earlier, later, between(earlier, later, needs[later]));
        List<Integer> wanted = between(earlier, later, wants[later]);
        boolean more = wants[later].cardinality() > needs[later].cardinality()
                && wanted.stream().noneMatch(i -> wants[i].get(earlier));
        return ran != null && more && finish(earlier, later, wanted) == null ? null : ran;
    }

    /** {@return whether the later goes well to the end somewhere before the earlier, further ahead in the order of the text} */
    private boolean earlier(int earlier, int later) {
        for (int at = 0; at < earlier; at++) {
            if (finish(at, later, List.of()) == null) {
                return true;
            }
        }
        return false;
    }

    private static List<Integer> between(int earlier, int later, BitSet some) {
        return some.stream().filter(i -> i > earlier && i < later).boxed().toList();
    }

    /** Does the parts before one, some others, a later one, the one, and then the rest; {@return what goes wrong, or null} */
    private PartRunner.Ran finish(int part, int later, List<Integer> first) {
        List<Integer> order = new ArrayList<>(first);
        order.add(later);
        order.add(part);
        for (int i = part + 1; i < count; i++) {
            if (i != later && !first.contains(i)) {
                order.add(i);
            }
        }
        BitSet done = new BitSet();
        done.set(0, part);
        List<long[]> now = prefix.get(part).list();
        for (int next : order) {
            PartRunner.Ran ran = runner.run(now, next);
            if (!ran.isSafe()) {
                return ran;
            }
            now = ran.states();
            done.set(next);
            int length = done.cardinality();
            if (done.length() == length && new States(now).same(prefix.get(length))) {
                // The same as in the order of the text, which is known to go well.
                return null;
            }
        }
        PartRunner.Ran end = runner.run(now, List.of(), true);
        return end.isSafe() ? null : end;
    }

    /** {@return the pairs by their earlier part, those that follow from two others marked} */
    private ImmutableList<OrderTable.Pair> told() {
        List<OrderTable.Pair> all = new ArrayList<>();
        for (OrderTable.Pair pair : pairs) {
            boolean wrong =
                    pair.kind() == OrderTable.Kind.NECESSARY || pair.kind() == OrderTable.Kind.AS_WRITTEN;
            boolean direct = wrong
                    && IntStream.range(pair.before() + 1, pair.after())
                            .noneMatch(i -> wants[pair.after()].get(i) && wants[i].get(pair.before()));
            all.add(new OrderTable.Pair(pair.before(), pair.after(), pair.kind(), direct, pair.harm()));
        }
        all.sort((a, b) -> a.before() != b.before() ? a.before() - b.before() : a.after() - b.after());
        return ImmutableList.copyOf(all);
    }

    /** Tries every order that keeps to some arrows: first few of them, then those that go wrong first if any does, then as many as the limits allow. */
    private OrderTable.Every every(
            BitSet[] arrows, BitSet[] touching, Proving.Prepared prepared, Limits limits) {
        ReducedOrders.Found found = reduced(arrows, touching, Math.min(FEW, limits.states()));
        if (found.answer() == ReducedOrders.Answer.SAFE) {
            return new OrderTable.Every(OrderTable.Answer.SAFE, found.nodes(), Optional.empty());
        }
        Outcome shortest = obeying(outOfTheWay(arrows), prepared, limits, Math.min(SHORTEST, limits.states()));
        if (!shortest.findings().isEmpty() || shortest.cut().isEmpty()) {
            return told(shortest);
        }
        Optional<List<Integer>> wrong = found.wrong();
        if (found.answer() == ReducedOrders.Answer.UNDECIDED) {
            wrong = ExtremeOrders.unsafe(runner, arrows, () -> watcher.goOn(0, 0));
            if (wrong.isEmpty()) {
                found = reduced(arrows, touching, limits.states());
                wrong = found.wrong();
            }
        }
        if (wrong.isPresent()) {
            return told(obeying(inOrder(ExtremeOrders.shortened(runner, arrows, wrong.get())), prepared, limits, limits.states()));
        }
        OrderTable.Answer answer =
                found.answer() == ReducedOrders.Answer.SAFE ? OrderTable.Answer.SAFE : OrderTable.Answer.UNDECIDED;
        return new OrderTable.Every(answer, found.nodes(), Optional.empty());
    }

    private ReducedOrders.Found reduced(BitSet[] arrows, BitSet[] touching, int most) {
        return ReducedOrders.safe(runner, arrows, touching, most, () -> watcher.goOn(0, 0));
    }

    private Outcome obeying(List<BitSet> before, Proving.Prepared prepared, Limits limits, int most) {
        Limits fewer = new Limits(most, limits.time(), limits.bytes(), limits.events());
        return Proving.explore(Proving.with(prepared, parts.obeying(before)), fewer, watcher);
    }

    private static OrderTable.Every told(Outcome outcome) {
        OrderTable.Answer answer = !outcome.findings().isEmpty()
                ? OrderTable.Answer.NOT_SAFE
                : outcome.cut().isPresent() ? OrderTable.Answer.UNDECIDED : OrderTable.Answer.SAFE;
        return new OrderTable.Every(answer, outcome.states(), outcome.findings().stream().findFirst());
    }

    /** {@return the arrows, with steps that nothing notices before all others: whenever they come, the rest goes the same way} */
    private List<BitSet> outOfTheWay(BitSet[] arrows) {
        List<BitSet> all = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            BitSet before = (BitSet) arrows[i].clone();
            if (silent.get(i)) {
                before.clear();
                before.or(silent.get(0, i));
            } else {
                before.or(silent);
            }
            all.add(before);
        }
        return all;
    }

    /** {@return arrows that leave one order: some parts, and then the others in the order of the text} */
    private List<BitSet> inOrder(List<Integer> first) {
        List<Integer> order = new ArrayList<>(first);
        IntStream.range(0, count).filter(i -> !first.contains(i)).forEach(order::add);
        BitSet[] all = new BitSet[count];
        BitSet done = new BitSet();
        for (int part : order) {
            all[part] = (BitSet) done.clone();
            done.set(part);
        }
        return List.of(all);
    }
}
