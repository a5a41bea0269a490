package org.keeplit.program;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import com.google.common.collect.Lists;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import org.keeplit.network.Element;
import org.keeplit.outcome.Effort;
import org.keeplit.procedure.Action;
import org.keeplit.procedure.Block;
import org.keeplit.procedure.Bound;
import org.keeplit.procedure.DeviceSet;
import org.keeplit.procedure.Permit;
import org.keeplit.text.Problem;
import org.keeplit.text.Problems;

/** Lowers a bound procedure to a program. */
public final class Lowering {
    /** About what a step takes with its acts and orders. */
    public static final int BYTES_OF_A_STEP = 2048;

    private final Bound bound;
    private final StartValues start;
    private final Function<String, ImmutableList<String>> feeding;
    private final int numbered;
    private final Problems problems;
    private final List<Act> acts = new ArrayList<>();
    private final List<Block.Step> steps = new ArrayList<>();
    private final Set<String> sites = new LinkedHashSet<>();
    private final Map<FieldKey.Clamp, List<Vertex>> spots = new LinkedHashMap<>();
    private final Map<String, List<String>> outcomes = new LinkedHashMap<>();
    private int leaves;
    /** Made only for a step that names a side. */
    private ClampSides sides;

    private Lowering(
            Bound bound,
            StartValues start,
            Function<String, ImmutableList<String>> feeding,
            int numbered,
            Problems problems) {
        this.bound = bound;
        this.start = start;
        this.feeding = feeding;
        this.numbered = numbered;
        this.problems = problems;
    }

    /**
     * Lowers.
     *
     * @param bound the bound procedure
     * @param start the values at the start
     * @param feeding the reclosing devices that feed a site in the starting state
     * @param numbered up to how many combinations of acts are numbered through, see {@link Orders}
     * @param problems collects what cannot be lowered
     * @return the program, or nothing if something cannot be lowered
     */
    public static Optional<Program> lower(
            Bound bound,
            StartValues start,
            Function<String, ImmutableList<String>> feeding,
            int numbered,
            Problems problems) {
        return new Lowering(bound, start, feeding, numbered, problems).lower();
    }

    private Optional<Program> lower() {
        start.spots().forEach((key, vertex) -> spot((FieldKey.Clamp) key, vertex));
        Plan plan = sequence(bound.body(), Block.Order.IN_ORDER);
        if (problems.hasErrors()) {
            return Optional.empty();
        }
        return Optional.of(Assembly.of(
                bound, start, plan, numbered, acts, steps, new Assembly.Things(sites, spots, outcomes, heldAt()), Set.of()));
    }

    private ImmutableMap<String, ImmutableList<String>> heldAt() {
        ImmutableMap.Builder<String, ImmutableList<String>> all = ImmutableMap.builder();
        for (Permit permit : bound.permits()) {
            Set<String> devices = new LinkedHashSet<>();
            permit.heldAt().forEach(set -> devices.addAll(devices(set)));
            all.put(permit.name(), ImmutableList.copyOf(devices));
        }
        return all.build();
    }

    /** {@return the devices of a set, in a fixed order} */
    List<String> devices(DeviceSet set) {
        if (set instanceof DeviceSet.One one) {
            return List.of(one.device().toString());
        }
        String of = ((DeviceSet.Feeding) set).of().toString();
        return feeding.apply(Points.siteOf(bound, of)).stream()
                .filter(d -> !d.equals(of))
                .toList();
    }

    /** {@return the number of a place among those where a clamp may be, plus one} */
    int spot(FieldKey.Clamp clamp, Vertex vertex) {
        List<Vertex> all = spots.computeIfAbsent(clamp, k -> new ArrayList<>());
        if (!all.contains(vertex)) {
            all.add(vertex);
        }
        return all.indexOf(vertex) + 1;
    }

    /** Notes that somebody may go up there. */
    void site(String site) {
        sites.add(site);
    }

    Bound bound() {
        return bound;
    }

    /** {@return on which side each clamp of a jumper sits} */
    ClampSides sides() {
        if (sides == null) {
            sides = new ClampSides(bound, start);
        }
        return sides;
    }

    Problems problems() {
        return problems;
    }

    private Plan sequence(List<Block> blocks, Block.Order order) {
        ImmutableList.Builder<Plan> parts = ImmutableList.builder();
        for (Block block : blocks) {
            parts.add(plan(block));
        }
        return new Plan.Node(order, parts.build(), -1);
    }

    private Plan plan(Block block) {
        if (block instanceof Block.Step step) {
            return step(step);
        } else if (block instanceof Block.Group group) {
            return sequence(group.parts(), group.order());
        } else if (block instanceof Block.Stage stage) {
            return sequence(stage.parts(), Block.Order.IN_ORDER);
        } else if (block instanceof Block.Repeat repeat) {
            return repeat(repeat, repeat.times());
        } else if (block instanceof Block.IfFound choice) {
            return choice(choice);
        }
        throw new IllegalStateException("not a written-out block: " + block);
    }

    private Plan repeat(Block.Repeat repeat, int left) {
        if (repeat.exactly()) {
            ImmutableList.Builder<Plan> parts = ImmutableList.builder();
            for (int i = 0; i < repeat.times(); i++) {
                parts.add(sequence(repeat.parts(), Block.Order.IN_ORDER));
            }
            return new Plan.Node(Block.Order.IN_ORDER, parts.build(), -1);
        }
        if (left == 0) {
            return new Plan.Node(Block.Order.IN_ORDER, ImmutableList.of(), -1);
        }
        Plan once = sequence(repeat.parts(), Block.Order.IN_ORDER);
        Plan rest = repeat(repeat, left - 1);
        Plan body = new Plan.Node(Block.Order.IN_ORDER, ImmutableList.of(once, rest), -1);
        return new Plan.Either(body, goesOn(repeat));
    }

    private Plan choice(Block.IfFound choice) {
        List<String> known = outcomes.getOrDefault(choice.item(), List.of());
        int outcome = known.indexOf(choice.outcome());
        if (outcome < 0) {
            problems.add(Problem.error(
                            "unknown-outcome",
                            choice.span(),
                            "no step before this one inspects \"" + choice.item() + "\" and may find \""
                                    + choice.outcome() + "\"")
                    .help(known.isEmpty() ? "inspect it first" : "it may find " + String.join(" or ", known)));
            outcome = 0;
        }
        return new Plan.Choice(
                new FieldKey.Found(choice.item()),
                outcome,
                choice.then().isEmpty() ? goesOn(choice) : sequence(choice.then(), Block.Order.IN_ORDER),
                choice.otherwise().isEmpty()
                        ? goesOn(choice)
                        : sequence(choice.otherwise(), Block.Order.IN_ORDER));
    }

    /** A way on which nothing is done is one act, so that a trace shows that it was taken. */
    private Plan goesOn(Block block) {
        Block.Step step = Block.Step.unwritten(
                Optional.empty(), ImmutableList.of(), new Action.Do("goes on"), "goes on",
                block.span());
        return step(step);
    }

    private Plan step(Block.Step step) {
        Effort.step();
        Effort.keep(BYTES_OF_A_STEP);
        int number = steps.size();
        steps.add(step);
        List<List<Atomic>> atoms = new StepActs(this, step).atoms();
        if (step.action() instanceof Action.Inspect inspect) {
            outcomes.put(inspect.item(), inspect.outcomes());
        }
        if (step.asOne().isPresent() || step.action() instanceof Action.Run) {
            atoms = List.of(List.of(Atomic.asOne(atoms)));
        }
        ImmutableList.Builder<Plan> leaves = ImmutableList.builder();
        for (List<Atomic> alternatives : atoms) {
            ImmutableList.Builder<Act> all = ImmutableList.builder();
            for (Atomic atomic : alternatives) {
                Act act = new Act(acts.size(), step, number, atomic.actor(), atomic.text(), atomic.primitives());
                acts.add(act);
                all.add(act);
            }
            leaves.add(new Plan.Leaf(this.leaves++, all.build()));
        }
        return new Plan.Node(
                order(step.ordered()), phaseByPhase(step, leaves.build()), number);
    }

    private static Block.Order order(boolean inOrder) {
        return inOrder ? Block.Order.IN_ORDER : Block.Order.TOGETHER;
    }

    /** Of a step that moves both ends of something, the two ends on one phase are one part of it. */
    private static ImmutableList<Plan> phaseByPhase(Block.Step step, ImmutableList<Plan> leaves) {
        int ends = StepActs.ends(step.action());
        boolean endFirst = StepActs.isEndFirst(step.action());
        if (step.asOne().isPresent() || leaves.size() < ends || endFirst == step.ordered() && !endFirst || ends == 1) {
            return leaves;
        }
        return Lists.partition(leaves, ends).stream()
                .map(phase -> new Plan.Node(order(endFirst), ImmutableList.copyOf(phase), -1))
                .collect(ImmutableList.toImmutableList());
    }

    /**
     * What becomes one act.
     *
     * @param actor who does it
     * @param text the act in words
     * @param primitives what it does
     */
    record Atomic(String actor, String text, ImmutableList<Primitive> primitives) {
        static Atomic of(String actor, String text, Primitive primitive) {
            return new Atomic(actor, text, ImmutableList.of(primitive));
        }

        static Atomic asOne(List<List<Atomic>> atoms) {
            ImmutableList.Builder<Primitive> all = ImmutableList.builder();
            Set<String> texts = new LinkedHashSet<>();
            for (List<Atomic> alternatives : atoms) {
                all.addAll(alternatives.get(0).primitives());
                texts.add(alternatives.get(0).text());
            }
            return new Atomic(atoms.get(0).get(0).actor(), String.join(" and, as one, ", texts), all.build());
        }
    }

    /** {@return the element of that name} @param name the name */
    Element element(String name) {
        return bound.network()
                .element(name)
                .orElseThrow(() -> new IllegalStateException("no element " + name + " in the network"));
    }
}
