package org.keeplit.program;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.keeplit.procedure.Block;

/** Programs in which one slip happens. */
public final class Slipping {
    private Slipping() {}

    /**
     * Every single slip at every act of a program, in the order of its acts.
     *
     * @param program the program
     * @return the slips
     */
    public static List<Slip> of(Program program) {
        List<Slip> all = new ArrayList<>();
        for (Act act : program.acts()) {
            if (PlanEdit.leaf(program.plan(), act.id()) != null) {
                all.addAll(new SlipsOfAct(program, act).all());
            }
        }
        return all;
    }

    /**
     * A program in which a slip happens.
     *
     * @param program the program
     * @param slip the slip
     * @return the other program; nothing if the slip cannot happen there
     */
    public static Optional<Program> with(Program program, Slip slip) {
        Act act = program.acts().get(slip.act());
        Plan.Leaf leaf = PlanEdit.leaf(program.plan(), slip.act());
        List<Act> acts = new ArrayList<>(program.acts());
        List<Block.Step> steps = new ArrayList<>(program.steps());
        Plan plan = program.plan();
        switch (slip.kind()) {
            case LEFT_OUT -> {
                // Nobody asks for what the step requires, and nothing is written down.
                Act none = new Act(
                        act.id(), act.step().silent(), act.stepNumber(), act.actor(), slip.words(), nothing());
                acts.set(act.id(), none);
                if (program.acts().stream().filter(a -> a.stepNumber() == act.stepNumber()).count() == 1) {
                    steps.set(act.stepNumber(), act.step().silent());
                }
                plan = PlanEdit.change(plan, leaf, l -> leaf(leaf.number(), none));
            }
            case TWICE -> {
                Act again = new Act(
                        acts.size(), act.step(), act.stepNumber(), act.actor(), slip.words(), act.primitives());
                acts.add(again);
                int number = PlanEdit.leaves(plan);
                plan = PlanEdit.change(plan, leaf, l ->
                        PlanEdit.order(Block.Order.IN_ORDER, List.of(leaf, leaf(number, again))));
            }
            case EARLY -> plan = PlanEdit.early(plan, leaf);
            case APART -> {
                List<Plan> parts = new ArrayList<>();
                int number = PlanEdit.leaves(plan);
                for (int i = 0; i < act.primitives().size(); i++) {
                    int id = i == 0 ? act.id() : acts.size();
                    Act part = new Act(
                            id,
                            act.step(),
                            act.stepNumber(),
                            act.actor(),
                            "part " + (i + 1) + " of: " + act.text(),
                            ImmutableList.of(act.primitives().get(i)));
                    if (i == 0) {
                        acts.set(id, part);
                    } else {
                        acts.add(part);
                    }
                    parts.add(leaf(i == 0 ? leaf.number() : number + i - 1, part));
                }
                plan = PlanEdit.change(plan, leaf, l -> PlanEdit.order(Block.Order.TOGETHER, parts));
            }
            default -> {
                Act other = new Act(
                        act.id(), act.step(), act.stepNumber(), act.actor(), slip.words(), slip.primitives());
                acts.set(act.id(), other);
                plan = PlanEdit.change(plan, leaf, l -> leaf(leaf.number(), other));
            }
        }
        return plan == null ? Optional.empty() : Optional.of(Assembly.again(program, plan, acts, steps));
    }

    private static Plan.Leaf leaf(int number, Act act) {
        return new Plan.Leaf(number, ImmutableList.of(act));
    }

    private static ImmutableList<Primitive> nothing() {
        return ImmutableList.of(new Primitive.Nothing());
    }
}
