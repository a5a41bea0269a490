package org.keeplit.program;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;
import org.keeplit.procedure.Block;

/** Changes one leaf of a plan. */
final class PlanEdit {
    private PlanEdit() {}

    /** {@return the leaf of an act, if the act is its only outcome; null else} */
    static Plan.Leaf leaf(Plan plan, int act) {
        if (plan instanceof Plan.Leaf leaf) {
            return leaf.acts().size() == 1 && leaf.acts().get(0).id() == act ? leaf : null;
        }
        for (Plan part : parts(plan)) {
            Plan.Leaf found = leaf(part, act);
            if (found != null) {
                return found;
            }
        }
        return null;
    }

    /** {@return how many leaves there are} */
    static int leaves(Plan plan) {
        return plan instanceof Plan.Leaf
                ? 1
                : parts(plan).stream().mapToInt(PlanEdit::leaves).sum();
    }

    /** {@return what a plan is made of} */
    static List<Plan> parts(Plan plan) {
        if (plan instanceof Plan.Node node) {
            return node.parts();
        } else if (plan instanceof Plan.Choice choice) {
            return List.of(choice.then(), choice.otherwise());
        } else if (plan instanceof Plan.Either either) {
            return List.of(either.body(), either.skip());
        } else if (plan instanceof Plan.Partial partial) {
            return partial.parts();
        }
        return List.of();
    }

    /** {@return the plan with one leaf changed} */
    static Plan change(Plan plan, Plan.Leaf leaf, UnaryOperator<Plan> change) {
        if (plan.equals(leaf)) {
            return change.apply(plan);
        } else if (plan instanceof Plan.Node node) {
            ImmutableList.Builder<Plan> parts = ImmutableList.builder();
            node.parts().forEach(part -> parts.add(change(part, leaf, change)));
            return new Plan.Node(node.order(), parts.build(), node.step());
        } else if (plan instanceof Plan.Choice choice) {
            return new Plan.Choice(
                    choice.item(),
                    choice.outcome(),
                    change(choice.then(), leaf, change),
                    change(choice.otherwise(), leaf, change));
        } else if (plan instanceof Plan.Either either) {
            return new Plan.Either(change(either.body(), leaf, change), change(either.skip(), leaf, change));
        }
        return plan;
    }

    /**
     * The plan with a leaf done at any moment before its turn. What counts as before is all that stands before the step or
     * group of the outermost sequence in which the leaf is.
     *
     * @return the plan, or null if nothing stands before
     */
    static Plan early(Plan plan, Plan.Leaf leaf) {
        List<Plan> sequence = new ArrayList<>();
        flatten(plan, sequence);
        for (int i = 0; i < sequence.size(); i++) {
            if (leaf(sequence.get(i), leaf.acts().get(0).id()) == null) {
                continue;
            }
            if (i == 0) {
                return null;
            }
            Plan before = order(Block.Order.IN_ORDER, sequence.subList(0, i));
            List<Plan> all = new ArrayList<>();
            all.add(order(Block.Order.TOGETHER, List.of(before, leaf)));
            all.add(change(sequence.get(i), leaf, l -> order(Block.Order.IN_ORDER, List.of())));
            all.addAll(sequence.subList(i + 1, sequence.size()));
            return order(Block.Order.IN_ORDER, all);
        }
        return null;
    }

    private static void flatten(Plan plan, List<Plan> into) {
        if (plan instanceof Plan.Node node && node.order() == Block.Order.IN_ORDER && node.step() < 0) {
            node.parts().forEach(part -> flatten(part, into));
        } else {
            into.add(plan);
        }
    }

    static Plan order(Block.Order order, List<Plan> parts) {
        return new Plan.Node(order, ImmutableList.copyOf(parts), -1);
    }
}
