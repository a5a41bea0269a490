package org.keeplit.verdict;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.keeplit.network.Element;
import org.keeplit.outcome.Outcome;
import org.keeplit.procedure.Action;
import org.keeplit.procedure.Block;
import org.keeplit.procedure.Edit;
import org.keeplit.procedure.Instance;
import org.keeplit.procedure.Procedure;
import org.keeplit.rule.Rulebook;
import org.keeplit.text.Span;

/**
 * What a verdict rests on, besides the text of the procedure and the network.
 *
 * @param rulebooks the rulebooks that were kept
 * @param settings the figures of rulebooks that are set otherwise than the rulebook says
 * @param outages the loads that go without supply by plan
 * @param calls the procedures that are done as a part of this one
 * @param orders the orders that a word of the text fixes, each in a sentence: no other was looked at
 */
public record Basis(
        ImmutableList<Rulebook> rulebooks,
        ImmutableList<Setting> settings,
        ImmutableList<Element.Load> outages,
        ImmutableList<Procedure> calls,
        ImmutableList<String> orders) {

    /**
     * A figure of a rulebook that is set otherwise.
     *
     * @param rulebook the rulebook
     * @param parameter the figure's name
     * @param value its value, with its unit
     * @param usual what the rulebook says
     */
    public record Setting(String rulebook, String parameter, String value, String usual) {
        /** {@return the setting in words} */
        public String words() {
            return parameter + " of " + rulebook + " is " + value + ", not " + usual;
        }
    }

    /**
     * {@return what the verdict on a procedure rests on}
     *
     * @param instance the procedure and where it was run
     * @param outcome what was found
     */
    public static Basis of(Instance instance, Outcome outcome) {
        Procedure procedure = instance.procedure();
        List<Setting> settings = new ArrayList<>();
        for (Rulebook book : procedure.keeps()) {
            book.usual().forEach((name, usual) -> settings.add(
                    new Setting(book.name(), name, book.parameters().get(name).toString(), usual.toString())));
        }
        // By name: a procedure that calls others twice each is as long as they are together, and so is its hash.
        Map<String, Procedure> calls = new LinkedHashMap<>();
        Set<String> orders = new LinkedHashSet<>();
        List<Block> blocks = new ArrayList<>(procedure.body());
        for (Edit edit : procedure.edits()) {
            if (edit instanceof Edit.Replace replace) {
                blocks.addAll(replace.blocks());
            } else if (edit instanceof Edit.Insert insert) {
                blocks.addAll(insert.blocks());
            }
        }
        walk(blocks, calls, orders);
        outcome.steps().forEach(step -> fixed(step, orders));
        return new Basis(
                procedure.keeps(),
                ImmutableList.copyOf(settings),
                procedure.outages().stream()
                        .flatMap(term -> instance.network().element(argument(term.toString(), instance)).stream())
                        .filter(Element.Load.class::isInstance)
                        .map(Element.Load.class::cast)
                        .collect(ImmutableList.toImmutableList()),
                ImmutableList.copyOf(calls.values()),
                ImmutableList.copyOf(orders));
    }

    private static String argument(String name, Instance instance) {
        return instance.proof().arguments().containsKey(name)
                ? instance.proof().arguments().get(name).toString()
                : name;
    }

    private static void walk(List<Block> blocks, Map<String, Procedure> calls, Set<String> orders) {
        for (Block block : blocks) {
            if (block instanceof Block.Group group) {
                if (group.order() == Block.Order.IN_ORDER) {
                    orders.add("what stands below “in order” (" + place(group.span()) + ") is done in the order of the text");
                }
                walk(group.parts(), calls, orders);
            } else if (block instanceof Block.ForEachPhase each) {
                if (each.ordered()) {
                    orders.add("the phases of " + each.of() + " (" + place(each.span()) + ") follow one another, A before B before C");
                }
                walk(each.parts(), calls, orders);
            } else if (block instanceof Block.Stage stage) {
                walk(stage.parts(), calls, orders);
            } else if (block instanceof Block.Repeat repeat) {
                walk(repeat.parts(), calls, orders);
            } else if (block instanceof Block.IfFound choice) {
                walk(choice.then(), calls, orders);
                walk(choice.otherwise(), calls, orders);
            } else if (block instanceof Block.Call call && calls.putIfAbsent(call.procedure().name(), call.procedure()) == null) {
                walk(call.procedure().body(), calls, orders);
            }
        }
    }

    /** Adds the order in which the text has the acts of one step, if it says one. */
    private static void fixed(Block.Step step, Set<String> orders) {
        Action action = step.action();
        boolean silent = action instanceof Action.Do || action instanceof Action.Happen;
        if (step.ordered() && !silent) {
            orders.add("“" + step.sentence() + "” is done in the order of the text, A before B before C");
        }
        boolean endFirst = action instanceof Action.Install install && install.ordered()
                || action instanceof Action.Remove remove && remove.first().isPresent()
                || action instanceof Action.ApplyGround on && on.order() != Action.Order.EITHER
                || action instanceof Action.RemoveGround off && off.order() != Action.Order.EITHER;
        if (endFirst) {
            orders.add("“" + step.sentence() + "”: on each phase the end that is named goes first");
        }
    }

    private static String place(Span span) {
        return span.source().name() + ":" + span.line();
    }

    /**
     * {@return the customers of a load that goes without supply by plan, in words}
     *
     * @param load the load
     */
    public static String words(Element.Load load) {
        return load.name() + ", " + load.customers() + (load.customers() == 1 ? " customer" : " customers")
                + load.critical().map(c -> ", critical: " + c).orElse("");
    }

    /** {@return what a reader of the verdict should know at once: figures set otherwise, and loads that go without supply} */
    public ImmutableList<String> told() {
        ImmutableList.Builder<String> all = ImmutableList.builder();
        settings.forEach(s -> all.add("set otherwise: " + s.words()));
        if (!outages.isEmpty()) {
            int customers = outages.stream().mapToInt(Element.Load::customers).sum();
            all.add((customers == 1 ? "1 customer goes" : customers + " customers go") + " without supply by plan: "
                    + outages.stream().map(Basis::words).collect(Collectors.joining("; ")));
        }
        return all.build();
    }

    /** {@return all of it, a sentence each} */
    public ImmutableList<String> all() {
        ImmutableList.Builder<String> all = ImmutableList.builder();
        rulebooks.forEach(book -> all.add("rulebook " + book.name() + " revision " + book.revision() + " ("
                + book.span().source().name() + ")"
                + (book.extended().isEmpty() ? "" : ", which extends " + String.join(", ", book.extended()))));
        rulebooks.stream().filter(b -> !b.parameters().isEmpty()).forEach(book -> all.add("figures of " + book.name() + ": "
                + book.parameters().entrySet().stream()
                        .map(p -> p.getKey() + " " + p.getValue())
                        .collect(Collectors.joining(", "))));
        all.addAll(told());
        calls.forEach(call -> all.add(
                "does " + call.name() + " revision " + call.revision() + " (" + call.span().source().name() + ") as a part of it"));
        orders.forEach(order -> all.add("order: " + order));
        return all.build();
    }
}
