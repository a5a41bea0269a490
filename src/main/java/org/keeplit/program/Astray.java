package org.keeplit.program;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.keeplit.outcome.SlipKind;
import org.keeplit.procedure.Block;

/**
 * A program in which beside each act stand the single slips at it, as other outcomes of the same place in the orders: whoever chooses
 * what is done can make them, and the orders go on as if nothing had happened.
 *
 * @param program the longer program; the acts of the other keep their numbers
 * @param slips the slip by the number of its act
 * @param leftOut for each act of the other program the act that leaves it out
 */
public record Astray(Program program, ImmutableMap<Integer, Slip> slips, ImmutableMap<Integer, Integer> leftOut) {

    /** {@return the longer program} @param program the program */
    public static Astray of(Program program) {
        List<Act> acts = new ArrayList<>(program.acts());
        List<Block.Step> steps = new ArrayList<>(program.steps());
        Map<Integer, List<Act>> beside = new HashMap<>();
        ImmutableMap.Builder<Integer, Slip> slips = ImmutableMap.builder();
        ImmutableMap.Builder<Integer, Integer> leftOut = ImmutableMap.builder();
        for (Slip slip : Slipping.of(program)) {
            Act right = program.acts().get(slip.act());
            boolean out = slip.kind() == SlipKind.LEFT_OUT;
            boolean other = slip.kind() == SlipKind.WRONG_PHASE
                    || slip.kind() == SlipKind.NEIGHBOUR
                    || slip.kind() == SlipKind.WRONG_WAY;
            if (!out && !other) {
                continue;
            }
            // Nobody who leaves something out asks for what its step requires, or writes anything down.
            Block.Step step = out ? right.step().silent() : right.step();
            int number = out ? steps.size() : right.stepNumber();
            if (out) {
                steps.add(step);
                leftOut.put(right.id(), acts.size());
            }
            ImmutableList<Primitive> done = out ? ImmutableList.of(new Primitive.Nothing()) : slip.primitives();
            slips.put(acts.size(), slip);
            Act wrong = new Act(acts.size(), step, number, right.actor(), slip.words(), done);
            beside.computeIfAbsent(right.id(), k -> new ArrayList<>()).add(wrong);
            acts.add(wrong);
        }
        return new Astray(
                Assembly.again(program, with(program.plan(), beside), acts, steps), slips.buildOrThrow(), leftOut.buildOrThrow());
    }

    private static Plan with(Plan plan, Map<Integer, List<Act>> beside) {
        if (plan instanceof Plan.Leaf leaf) {
            ImmutableList.Builder<Act> acts = ImmutableList.<Act>builder().addAll(leaf.acts());
            leaf.acts().forEach(act -> acts.addAll(beside.getOrDefault(act.id(), List.of())));
            return new Plan.Leaf(leaf.number(), acts.build());
        } else if (plan instanceof Plan.Node node) {
            return new Plan.Node(node.order(), all(node.parts(), beside), node.step());
        } else if (plan instanceof Plan.Choice choice) {
            return new Plan.Choice(choice.item(), choice.outcome(), with(choice.then(), beside), with(choice.otherwise(), beside));
        } else if (plan instanceof Plan.Either either) {
            return new Plan.Either(with(either.body(), beside), with(either.skip(), beside));
        }
        Plan.Partial partial = (Plan.Partial) plan;
        return new Plan.Partial(all(partial.parts(), beside), partial.after());
    }

    private static ImmutableList<Plan> all(List<Plan> parts, Map<Integer, List<Act>> beside) {
        return parts.stream().map(part -> with(part, beside)).collect(ImmutableList.toImmutableList());
    }
}
