package org.keeplit.explore;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.keeplit.condition.Condition;
import org.keeplit.network.Element;
import org.keeplit.program.Act;
import org.keeplit.rule.Rule;
import org.keeplit.rule.Trigger;

/** Binds rules over the finite objects of a run. */
final class RuleCompiler {
    private final World world;
    private final ConditionCompiler conditions;
    private final AtomCompiler atoms;
    private final Memories memories;

    RuleCompiler(World world, ConditionCompiler conditions, Memories memories) {
        this.world = world;
        this.conditions = conditions;
        this.memories = memories;
        this.atoms = new AtomCompiler(world);
    }

    /** {@return the instances of a rule that is judged in states: always, while, at the start, at the end} */
    List<RuleInstance> inStates(int number, Rule rule) {
        Map<List<Node>, List<Environment>> grouped = new LinkedHashMap<>();
        for (Environment environment : conditions.environments(rule.binders(), Environment.EMPTY)) {
            group(grouped, rule, environment, Node.Constant.TRUE, Node.Constant.TRUE, rule.body());
        }
        return instances(number, rule, grouped);
    }

    /** {@return the instances of a rule that is judged in every state of a stretch} */
    List<RuleInstance> between(int number, Rule rule, Moments moments) {
        Map<List<Node>, List<Environment>> grouped = new LinkedHashMap<>();
        for (Environment environment : environments(rule, moments)) {
            group(grouped, rule, environment, Node.Constant.TRUE, memories.ofRule(number, environment), rule.body());
        }
        return instances(number, rule, grouped);
    }

    /** {@return the instances of a rule that is judged at the endings: a duty that is still pending breaks it} */
    List<RuleInstance> eventually(int number, Rule rule, Moments moments) {
        Map<List<Node>, List<Environment>> grouped = new LinkedHashMap<>();
        Condition never = new Condition.One(ImmutableList.of(), rule.span());
        for (Environment environment : environments(rule, moments)) {
            group(grouped, rule, environment, Node.Constant.TRUE, memories.ofRule(number, environment), never);
        }
        return instances(number, rule, grouped);
    }

    /** {@return all bindings that can come up in a run, their further conditions left aside} */
    List<Environment> environments(Rule rule, Moments moments) {
        if (rule.triggers().isEmpty()) {
            return conditions.environments(rule.binders(), Environment.EMPTY);
        }
        Set<Environment> all = new LinkedHashSet<>();
        for (Act act : world.program().acts()) {
            for (Events.Event event : moments.events(act)) {
                for (Trigger trigger : rule.triggers()) {
                    for (Environment matched : matches(trigger, event, act)) {
                        all.addAll(conditions.environments(rule.binders(), matched));
                    }
                }
            }
        }
        return List.copyOf(all);
    }

    /** {@return the instances of a rule that is judged before or after an act} */
    List<RuleInstance> atAct(int number, Rule rule, Act act) {
        Map<List<Node>, List<Environment>> grouped = new LinkedHashMap<>();
        // The moment only begins what a rule asks for the endings: it is put to the question, and kept so far.
        Condition body = rule.form() == Rule.Form.EVENTUALLY
                ? new Condition.All(ImmutableList.of(), rule.span())
                : rule.body();
        boolean isBefore = rule.form() == Rule.Form.BEFORE;
        for (Events.Event event : Events.of(world, atoms, act)) {
            // Which contact breaks is seen in the state that the act leaves; in the one that it reaches none of them is closed.
            Node moment = isBefore ? Node.Constant.TRUE : event.when();
            for (Trigger trigger : rule.triggers()) {
                for (Environment matched : matches(trigger, event, act)) {
                    for (Environment environment : conditions.environments(rule.binders(), matched)) {
                        Node such = suchThat(trigger, matched);
                        Node when = isBefore ? Node.all(List.of(event.when(), such)) : such;
                        group(grouped, rule, environment, moment, when, body);
                    }
                }
            }
        }
        return instances(number, rule, grouped);
    }

    private void group(
            Map<List<Node>, List<Environment>> grouped,
            Rule rule,
            Environment environment,
            Node moment,
            Node when,
            Condition required) {
        Node such = binders(rule.binders(), environment);
        Node scope = rule.scope().map(c -> conditions.compile(c, environment)).orElse(Node.Constant.TRUE);
        Node all = Node.all(List.of(when, such, scope));
        if (all.equals(Node.Constant.FALSE) || moment.equals(Node.Constant.FALSE)) {
            return;
        }
        Node excuse = Node.one(List.of(
                rule.unless().map(c -> conditions.compile(c, environment)).orElse(Node.Constant.FALSE),
                world.besides(rule.evenIf())));
        Node body = conditions.compile(required, environment);
        grouped.computeIfAbsent(List.of(moment, all, excuse, body), k -> new ArrayList<>()).add(environment);
    }

    private static List<RuleInstance> instances(
            int number, Rule rule, Map<List<Node>, List<Environment>> grouped) {
        List<RuleInstance> all = new ArrayList<>();
        grouped.forEach((nodes, environments) -> all.add(new RuleInstance(
                number, rule, nodes.get(0), nodes.get(1), nodes.get(2), nodes.get(3), ImmutableList.copyOf(environments))));
        return all;
    }

    private Node binders(List<Condition.Binder> binders, Environment environment) {
        List<Node> all = new ArrayList<>();
        for (Condition.Binder binder : binders) {
            binder.such().ifPresent(c -> all.add(conditions.compile(c, environment)));
        }
        return Node.all(all);
    }

    private Node suchThat(Trigger trigger, Environment matched) {
        return binders(trigger.binders(), matched);
    }

    /** {@return what a moment binds if it is one that a rule asks for} */
    List<Environment> matches(Trigger trigger, Events.Event event, Act act) {
        if (trigger.act() != event.kind() || !event.words().containsAll(trigger.words())) {
            return List.of();
        }
        Environment environment = Environment.EMPTY;
        for (int i = 0; i < trigger.binders().size(); i++) {
            Obj participant = event.participants().get(i);
            if (!isOne(trigger.binders().get(i), participant)) {
                return List.of();
            }
            environment = environment.with(trigger.binders().get(i).variable(), participant);
        }
        if (trigger.phase().isPresent()) {
            if (event.phase() == null) {
                return List.of();
            }
            environment = environment.with(trigger.phase().get(), new Obj.OnPhase(event.phase()));
        }
        if (trigger.by().isEmpty()) {
            return List.of(environment);
        }
        List<Environment> all = new ArrayList<>();
        for (String actor : Events.actors(act)) {
            all.add(environment.with(trigger.by().get(), new Obj.Someone(actor)));
        }
        return all;
    }

    /** {@return whether a participant is one of what a binder ranges over} */
    private boolean isOne(Condition.Binder binder, Obj object) {
        if (object instanceof Obj.Of of) {
            boolean type = switch (binder.noun().type()) {
                case DEVICE -> of.element() instanceof Element.Device;
                case REGULATOR -> of.element() instanceof Element.Regulator;
                default -> false;
            };
            return type && isOfKind(binder, of.element().kind().name());
        } else if (object instanceof Obj.Joint joint) {
            return isOfKind(binder, joint.contact().kind().name());
        } else if (object instanceof Obj.Family || object instanceof Obj.Paper || object instanceof Obj.Someone) {
            return world.domain(binder.noun()).contains(object);
        }
        return true;
    }

    private static boolean isOfKind(Condition.Binder binder, String kind) {
        return binder.noun().kinds().isEmpty() || binder.noun().kinds().contains(kind);
    }
}
