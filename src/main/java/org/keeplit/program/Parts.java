package org.keeplit.program;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
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
     * @param when for each step of it that is not always done, by its number in the program, when it is, in words
     */
    public record Part(int number, ImmutableList<Act> acts, String name, int line, ImmutableMap<Integer, String> when) {
        /** {@return what is told of it} */
        public org.keeplit.outcome.Part told() {
            return new org.keeplit.outcome.Part(number, name, line);
        }
    }

    private Parts(Program program) {
        this.program = program;
        take(program.plan(), new BitSet());
        this.partOf = new int[program.acts().size()];
        ImmutableList.Builder<Part> all = ImmutableList.builder();
        for (int i = 0; i < plans.size(); i++) {
            List<Act> acts = new ArrayList<>();
            Map<Integer, String> when = new LinkedHashMap<>();
            acts(plans.get(i), acts, "", when);
            for (Act act : acts) {
                partOf[act.id()] = i;
            }
            all.add(new Part(
                    i, ImmutableList.copyOf(acts), name(acts), acts.get(0).step().span().line(), ImmutableMap.copyOf(when)));
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

    /** {@return what is told of the parts, in the order of the text} */
    public ImmutableList<org.keeplit.outcome.Part> told() {
        return parts.stream().map(Part::told).collect(ImmutableList.toImmutableList());
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
            // A copy: what comes before a part does not grow with the parts behind it.
            before.add((BitSet) earlier.clone());
        }
        return mine;
    }

    /** Gathers acts and when they are done. @param when the conditions of what is around; empty for none */
    private void acts(Plan plan, List<Act> into, String when, Map<Integer, String> all) {
        if (plan instanceof Plan.Leaf leaf) {
            into.addAll(leaf.acts());
            if (!when.isEmpty()) {
                leaf.acts().forEach(act -> all.put(act.stepNumber(), when));
            }
        } else if (plan instanceof Plan.Choice choice) {
            String found = "“" + choice.item().item() + "” is %sfound “" + program.outcomes(choice.item().item()).get(choice.outcome()) + "”";
            acts(choice.then(), into, joined(when, "if " + found.replace("%s", "")), all);
            acts(choice.otherwise(), into, joined(when, "if " + found.replace("%s", "not ")), all);
        } else if (plan instanceof Plan.Either either) {
            acts(either.body(), into, joined(when, "if it is done once more"), all);
            acts(either.skip(), into, joined(when, "if not"), all);
        } else {
            PlanEdit.parts(plan).forEach(part -> acts(part, into, when, all));
        }
    }

    private static String joined(String one, String other) {
        return one.isEmpty() || one.equals(other) ? other : one + " and " + other.replaceFirst("^if ", "");
    }

    private static String name(List<Act> acts) {
        Act first = acts.get(0);
        boolean onOne = first.step().phases() instanceof PhaseTerm.Given given
                && given.phases().size() == 1;
        return first.stepName() + (onOne ? " on phase " + ((PhaseTerm.Given) first.step().phases()).phases() : "");
    }
}
