package org.keeplit.plain;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.keeplit.procedure.Block;

/** What is left to be done, as a term. Equal terms mean equal futures. */
sealed interface Process {
    /** Nothing. */
    record Done() implements Process {}

    /** What a procedure does at once, in one of several ways. */
    record Once(List<PlainAct> ways) implements Process {}

    /** The acts of one step. @param begun whether one of them was done @param order how they follow one another */
    record OfStep(int step, boolean begun, Block.Order order, List<Process> left) implements Process {}

    /** Parts. @param active the part that was begun, when parts may not be mixed; -1 if none was */
    record Parts(Block.Order order, int active, List<Process> left) implements Process {}

    /** One way or the other, by what was found. */
    record Branch(String item, String outcome, Process then, Process otherwise) implements Process {}

    /** One way or the other, as the crew likes. */
    record Either(Process body, Process skip) implements Process {}

    /** The end of everything. */
    Done DONE = new Done();

    /**
     * A next act.
     *
     * @param act the act
     * @param rest what is left then
     * @param first whether it begins its step
     * @param last whether it ends its step
     */
    record Next(PlainAct act, Process rest, boolean first, boolean last) {}

    /** {@return what may come next} @param process what is left @param found tells what an inspection found */
    static List<Next> next(Process process, java.util.function.Function<String, Optional<String>> found) {
        List<Next> all = new ArrayList<>();
        if (process instanceof Once once) {
            once.ways().forEach(act -> all.add(new Next(act, DONE, true, true)));
        } else if (process instanceof OfStep step) {
            int count = step.order() == Block.Order.IN_ORDER ? 1 : step.left().size();
            for (int i = 0; i < count; i++) {
                List<Process> others = without(step.left(), i);
                Process rest = others.isEmpty() ? DONE : new OfStep(step.step(), true, step.order(), others);
                for (Next one : next(step.left().get(i), found)) {
                    Process left = rest;
                    if (!(one.rest() instanceof Done)) {
                        List<Process> more = new ArrayList<>(step.left());
                        more.set(i, one.rest());
                        left = new OfStep(step.step(), true, step.order(), more);
                    }
                    all.add(new Next(one.act(), left, !step.begun(), left instanceof Done));
                }
            }
        } else if (process instanceof Parts parts) {
            nextOfParts(parts, found, all);
        } else if (process instanceof Branch branch) {
            boolean is = found.apply(branch.item()).equals(Optional.of(branch.outcome()));
            all.addAll(next(is ? branch.then() : branch.otherwise(), found));
        } else if (process instanceof Either either) {
            all.addAll(next(either.body(), found));
            all.addAll(next(either.skip(), found));
        }
        return all;
    }

    private static void nextOfParts(
            Parts parts, java.util.function.Function<String, Optional<String>> found, List<Next> all) {
        boolean mixes = parts.order() == Block.Order.TOGETHER;
        for (int i = 0; i < parts.left().size(); i++) {
            boolean mayGo = switch (parts.order()) {
                case IN_ORDER -> i == 0;
                case ANY_ORDER -> parts.active() < 0 || parts.active() == i;
                case TOGETHER -> true;
            };
            if (!mayGo) {
                continue;
            }
            for (Next one : next(parts.left().get(i), found)) {
                List<Process> left = new ArrayList<>(parts.left());
                int active = -1;
                if (one.rest() instanceof Done) {
                    left.remove(i);
                } else {
                    left.set(i, one.rest());
                    active = mixes ? -1 : i;
                }
                Process rest = left.isEmpty() ? DONE : new Parts(parts.order(), active, left);
                all.add(new Next(one.act(), rest, one.first(), one.last()));
            }
        }
    }

    /** Gathers all acts that may come up. */
    static void acts(Process process, List<PlainAct> all) {
        if (process instanceof Once once) {
            all.addAll(once.ways());
        } else if (process instanceof OfStep step) {
            step.left().forEach(p -> acts(p, all));
        } else if (process instanceof Parts parts) {
            parts.left().forEach(p -> acts(p, all));
        } else if (process instanceof Branch branch) {
            acts(branch.then(), all);
            acts(branch.otherwise(), all);
        } else if (process instanceof Either either) {
            acts(either.body(), all);
            acts(either.skip(), all);
        }
    }

    private static List<Process> without(List<Process> all, int index) {
        List<Process> rest = new ArrayList<>(all);
        rest.remove(index);
        return rest;
    }

    /** {@return parts in an order, empty parts left out} */
    static Process of(Block.Order order, List<Process> parts) {
        List<Process> left = parts.stream().filter(p -> !(p instanceof Done)).toList();
        return left.isEmpty() ? DONE : new Parts(order, -1, left);
    }
}
