package org.keeplit.explore;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableSet;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.keeplit.condition.Condition;
import org.keeplit.condition.Truth;
import org.keeplit.network.Element;
import org.keeplit.outcome.TraceStep;
import org.keeplit.outcome.Why;
import org.keeplit.program.Orders;
import org.keeplit.rule.Rule;

/** Makes frames of ways through a procedure. */
final class Frames {
    /** How many figures of one rule are told of what is not at the site. */
    private static final int FAR = 1;

    /** How many ways are taken at most, so that every branch is seen. */
    private static final int WAYS = 8;

    private final Machine machine;
    private final Tracer tracer;
    private final WhyTree trees;
    private final Scene scene;
    private final List<Pattern> names;
    private final Map<RuleInstance, Boolean> compares = new HashMap<>();

    Frames(Machine machine, Tracer tracer) {
        this.machine = machine;
        this.tracer = tracer;
        this.trees = new WhyTree(machine, new Explaining(machine));
        this.scene = machine.scene();
        this.names = near(machine).stream().map(name -> Pattern.compile("(?<![\\w-])" + Pattern.quote(name) + "(?![\\w-])")).toList();
    }

    /** {@return the names of what is at the structures where people go up, and of what is brought there} */
    private static ImmutableSet<String> near(Machine machine) {
        ImmutableSet<String> sites = ImmutableSet.copyOf(machine.world().program().sites());
        ImmutableSet.Builder<String> all = ImmutableSet.builder();
        machine.world().bound().temporaries().forEach(t -> all.add(t.name()));
        machine.world().bound().network().all(Element.class)
                .filter(e -> e instanceof Element.Device d && sites.contains(d.site())
                        || e instanceof Element.Regulator r && sites.contains(r.site()))
                .forEach(e -> all.add(e.name()));
        return all.build();
    }

    /** {@return the frames of a way, the start first} */
    ImmutableList<Frame> of(List<Edges.Edge> way) {
        List<Frame> all = new ArrayList<>();
        all.add(frame(null, -1, null, machine.world().program().layout().initial()));
        tracer.follow(way, (step, edge, reaction, before, after) ->
                all.add(frame(step, edge.act(), reaction == null ? before : null, after)));
        return ImmutableList.copyOf(all);
    }

    /** @param before the state that the act leaves; null where no act leads there */
    private Frame frame(TraceStep step, int act, long[] before, long[] state) {
        Map<Rule, Seen> rules = new LinkedHashMap<>();
        List<Frame.Limited> limits = new ArrayList<>();
        List<RuleInstance> due = List.of();
        if (before != null) {
            scene.at(before);
            look(machine.before(act), true, rules, limits);
            due = machine.after(act, scene);
        }
        scene.at(state);
        // After a flash the model is void: only what was judged before it counts.
        if (!scene.analysis().status().shortedAnywhere()) {
            look(due, true, rules, limits);
            look(machine.inStates(), false, rules, limits);
        }
        return new Frame(
                Optional.ofNullable(step),
                act,
                new Standing(machine.world(), scene),
                rules.values().stream()
                        .map(Seen::judged)
                        .sorted(Comparator.comparing(j -> !j.atAct()))
                        .collect(ImmutableList.toImmutableList()),
                nearest(limits),
                Supply.without(machine.world(), scene.analysis()));
    }

    /** A rule while its bindings are gathered. */
    private static final class Seen {
        private final Rule rule;
        private boolean atAct;
        private int bindings;
        private Truth truth = Truth.TRUE;

        Seen(Rule rule) {
            this.rule = rule;
        }

        Frame.Judged judged() {
            return new Frame.Judged(rule, atAct, bindings, truth);
        }
    }

    private void look(List<RuleInstance> instances, boolean atAct, Map<Rule, Seen> rules, List<Frame.Limited> limits) {
        for (RuleInstance instance : instances) {
            if (instance.isExercised(scene)) {
                Seen seen = rules.computeIfAbsent(instance.rule(), Seen::new);
                seen.atAct |= atAct;
                seen.bindings += instance.environments().size();
                seen.truth = seen.truth.and(instance.judge(scene));
                if (compares.computeIfAbsent(instance, i -> compares(i.rule().body()))) {
                    limits(instance.rule().name(), trees.rule(instance, scene), limits);
                }
            }
        }
    }

    private static boolean compares(Condition condition) {
        if (condition instanceof Condition.Compare) {
            return true;
        }
        Stream<Condition> parts = condition instanceof Condition.Not not
                ? Stream.of(not.body())
                : condition instanceof Condition.All all
                        ? all.parts().stream()
                        : condition instanceof Condition.One one
                                ? one.parts().stream()
                                : condition instanceof Condition.Quantified q
                                        ? Stream.of(q.body())
                                        : condition instanceof Condition.Named named ? Stream.of(named.body()) : Stream.empty();
        return parts.anyMatch(Frames::compares);
    }

    private static void limits(String rule, Why why, List<Frame.Limited> into) {
        why.figures().stream()
                .filter(beside -> !Double.isNaN(beside.share()))
                .max(Comparator.comparingDouble(Why.Beside::share))
                .ifPresent(beside -> into.add(new Frame.Limited(rule, why.text(), beside, why.truth())));
        why.parts().forEach(part -> limits(rule, part, into));
    }

    /** Keeps what is said of things at the site, and of all else the nearest to its limit. */
    private ImmutableList<Frame.Limited> nearest(List<Frame.Limited> limits) {
        Map<String, Integer> kept = new HashMap<>();
        Set<Frame.Limited> all = new LinkedHashSet<>();
        limits.stream()
                .sorted(Comparator.comparingDouble((Frame.Limited l) -> -l.beside().share()))
                .forEach(l -> {
                    boolean here = names.stream().anyMatch(name -> name.matcher(l.words()).find());
                    if (here || kept.merge(l.rule(), 1, Integer::sum) <= FAR) {
                        all.add(l);
                    }
                });
        return ImmutableList.copyOf(all);
    }

    /**
     * Ways in the order of the text, so many that every act is on one of them as far as that goes: the first takes the first branch
     * of every choice, each further one a branch that was not taken.
     *
     * @return for each way its acts and what came by itself after them, up to the end or to what goes wrong
     */
    List<List<Edges.Edge>> asWritten() {
        List<List<Edges.Edge>> all = new ArrayList<>();
        BitSet taken = new BitSet();
        while (all.size() < WAYS) {
            List<Edges.Edge> way = way(taken);
            int known = taken.cardinality();
            way.forEach(edge -> taken.set(edge.act()));
            if (taken.cardinality() == known) {
                break;
            }
            all.add(way);
        }
        return all;
    }

    private List<Edges.Edge> way(BitSet taken) {
        List<Edges.Edge> way = new ArrayList<>();
        long[] state = machine.world().program().layout().initial();
        while (true) {
            Reached reached = next(state, taken);
            if (reached == null) {
                return way;
            }
            way.add(reached.edge);
            state = reached.state;
        }
    }

    private record Reached(Edges.Edge edge, long[] state) {}

    /** {@return what comes next in the order of the text; null at the end, or where something goes wrong} */
    private Reached next(long[] state, BitSet taken) {
        scene.at(state);
        List<Orders.Move> moves = machine.orders().moves(state).stream()
                .filter(move -> machine.isOpen(move, state) && !machine.waits(move, scene))
                .toList();
        if (moves.isEmpty()) {
            return null;
        }
        // The first way takes what comes first in the text; what no way took yet is then on a branch.
        Orders.Move move = moves.stream()
                .filter(m -> !taken.get(m.act().id()))
                .findFirst()
                .orElse(moves.get(0));
        List<Reached> reached = new ArrayList<>();
        Judging judging = new Judging(machine, scene.at(state), new Tally(machine.rules().size()));
        new Trying(machine, scene, judging, new Trying.Reached() {
            @Override
            public Trying.Met met(long[] there) {
                return Trying.Met.NEVER;
            }

            @Override
            public void keep(long[] there, Judging.At at) {
                if (at.because() == null && scene.trouble() == null) {
                    reached.add(new Reached(new Edges.Edge(at.act(), at.reactions()), there));
                }
            }
        }).attempt(move, state, new Judging.At(0, move.act().id(), 1, null));
        return reached.isEmpty() ? null : reached.get(0);
    }
}
