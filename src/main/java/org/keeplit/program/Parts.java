package org.keeplit.program;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.stream.IntStream;
import org.keeplit.condition.PhaseTerm;
import org.keeplit.procedure.Block;

/**
 * A program taken apart into whole parts that could change places: each step, and each choice with all that hangs on it. What the
 * text says of their order is kept beside them, so that other orders can be put together.
 */
public final class Parts {
    private final Program program;
    private final List<Plan> plans = new ArrayList<>();
    private final List<BitSet> before = new ArrayList<>();
    private final ImmutableList<Part> parts;
    private final int[] partOf;

    /**
     * A part.
     *
     * @param number its number in the order of the text, from 0
     * @param acts the acts in it
     * @param name the name of its step, with the phase if it is done on one only
     * @param line the line of the procedure file on which it begins
     */
    public record Part(int number, ImmutableList<Act> acts, String name, int line) {}

    private Parts(Program program) {
        this.program = program;
        take(program.plan(), new BitSet());
        this.partOf = new int[program.acts().size()];
        ImmutableList.Builder<Part> all = ImmutableList.builder();
        for (int i = 0; i < plans.size(); i++) {
            List<Act> acts = new ArrayList<>();
            acts(plans.get(i), acts);
            for (Act act : acts) {
                partOf[act.id()] = i;
            }
            all.add(new Part(
                    i, ImmutableList.copyOf(acts), name(acts), acts.get(0).step().span().line()));
        }
        this.parts = all.build();
    }

    /** {@return a program taken apart} @param program the program */
    public static Parts of(Program program) {
        return new Parts(program);
    }

    /** {@return the parts in the order of the text} */
    public ImmutableList<Part> all() {
        return parts;
    }

    /** {@return the number of the part to which an act belongs} @param act the act's number */
    public int of(int act) {
        return partOf[act];
    }

    /** {@return whether the text has one part before another in every order that it allows} @param one the one @param other the other */
    public boolean isBefore(int one, int other) {
        return before.get(other).get(one);
    }

    /** {@return the same parts in whatever order} */
    public Program free() {
        return obeying(IntStream.range(0, plans.size()).mapToObj(i -> new BitSet()).toList());
    }

    /** {@return the same parts in every order that keeps to what comes before what} @param after for each part those before it */
    public Program obeying(List<BitSet> after) {
        ImmutableList.Builder<ImmutableList<Integer>> lists = ImmutableList.builder();
        after.forEach(set -> lists.add(set.stream().boxed().collect(ImmutableList.toImmutableList())));
        Plan plan = new Plan.Partial(ImmutableList.copyOf(plans), lists.build());
        return Assembly.again(program, plan, program.acts(), program.steps());
    }

    /** Takes a plan apart. @param earlier what comes before all of it */
    private BitSet take(Plan plan, BitSet earlier) {
        BitSet mine = new BitSet();
        if (plan instanceof Plan.Node node && node.step() < 0) {
            BitSet sofar = (BitSet) earlier.clone();
            for (Plan part : node.parts()) {
                BitSet taken = take(part, sofar);
                mine.or(taken);
                if (node.order() == Block.Order.IN_ORDER) {
                    sofar.or(taken);
                }
            }
        } else if (PlanEdit.leaves(plan) > 0) {
            mine.set(plans.size());
            plans.add(plan);
            before.add(earlier);
        }
        return mine;
    }

    private static void acts(Plan plan, List<Act> into) {
        if (plan instanceof Plan.Leaf leaf) {
            into.addAll(leaf.acts());
        }
        PlanEdit.parts(plan).forEach(part -> acts(part, into));
    }

    private static String name(List<Act> acts) {
        Act first = acts.get(0);
        boolean onOne = first.step().phases() instanceof PhaseTerm.Given given
                && given.phases().size() == 1;
        return first.stepName() + (onOne ? " on phase " + ((PhaseTerm.Given) first.step().phases()).phases() : "");
    }
}
