package org.keeplit.explore;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.IdentityHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.keeplit.condition.Condition;
import org.keeplit.condition.Truth;
import org.keeplit.outcome.RulePart;
import org.keeplit.outcome.RuleSeen;
import org.keeplit.rule.Rule;

/** Finds which questions of the rules came out true, and which false, wherever the rules were judged in a run. */
final class Covering {
    /** A question of a rule with its variables bound. */
    private record Probe(int rule, int part, boolean scoped, Node moment, Node scope, Node value) {}

    private final Machine machine;
    private final List<ImmutableList<RulePart>> parts = new ArrayList<>();
    private final List<Map<Condition, Integer>> numbers = new ArrayList<>();
    private final List<BitSet> isTrue = new ArrayList<>();
    private final List<BitSet> isFalse = new ArrayList<>();

    Covering(Machine machine) {
        this.machine = machine;
        for (Rule rule : machine.rules()) {
            ImmutableList<RulePart> of = RuleParts.of(rule);
            Map<Condition, Integer> number = new IdentityHashMap<>();
            for (int i = 0; i < of.size(); i++) {
                number.putIfAbsent(of.get(i).condition(), i);
            }
            parts.add(of);
            numbers.add(number);
            isTrue.add(new BitSet());
            isFalse.add(new BitSet());
        }
    }

    /** {@return what was seen of each rule in all states of a run, and at all acts that were tried there} */
    ImmutableList<RuleSeen> over(StateWalk walk) {
        Set<Probe> inStates = probes(machine.inStates());
        Set<Probe> atStart = probes(machine.atStart());
        Set<Probe> atEnd = probes(machine.atEnd());
        List<Set<Probe>> before = new ArrayList<>();
        List<Set<Probe>> after = new ArrayList<>();
        machine.world().program().acts().forEach(act -> {
            before.add(probes(machine.before(act.id())));
            after.add(probes(machine.after(act.id())));
        });
        walk.walk(new StateWalk.Visitor() {
            private final Set<Probe> due = new LinkedHashSet<>();

            @Override
            public void state(int number, Scene scene) {
                ask(inStates, scene);
                if (number == 0) {
                    ask(atStart, scene);
                }
            }

            @Override
            public void ending(Scene scene) {
                ask(atEnd, scene);
            }

            @Override
            public void before(int act, Scene scene) {
                ask(before.get(act), scene);
                due.clear();
                after.get(act).stream().filter(p -> p.moment.eval(scene) == Truth.TRUE).forEach(due::add);
            }

            @Override
            public void after(int act, Scene scene) {
                ask(inStates, scene);
                ask(due, scene);
            }
        });
        ImmutableList.Builder<RuleSeen> all = ImmutableList.builder();
        for (int i = 0; i < parts.size(); i++) {
            all.add(seen(i));
        }
        return all.build();
    }

    private RuleSeen seen(int rule) {
        ImmutableList.Builder<RuleSeen.PartSeen> seen = ImmutableList.builder();
        for (RulePart part : parts.get(rule)) {
            int number = numbers.get(rule).get(part.condition());
            seen.add(new RuleSeen.PartSeen(
                    part, isTrue.get(rule).get(number), isFalse.get(rule).get(number)));
        }
        return new RuleSeen(machine.rules().get(rule), seen.build());
    }

    private void ask(Set<Probe> probes, Scene scene) {
        for (Probe probe : probes) {
            boolean known = isTrue.get(probe.rule).get(probe.part) && isFalse.get(probe.rule).get(probe.part);
            if (known || probe.scoped && probe.scope.eval(scene) == Truth.FALSE) {
                continue;
            }
            // What cannot be shown counts as false, as it does where a rule is judged.
            boolean so = probe.value.eval(scene) == Truth.TRUE;
            (so ? isTrue : isFalse).get(probe.rule).set(probe.part);
        }
    }

    private Set<Probe> probes(List<RuleInstance> instances) {
        Set<Probe> all = new LinkedHashSet<>();
        for (RuleInstance instance : instances) {
            Rule rule = instance.rule();
            for (Environment environment : instance.environments()) {
                rule.triggers().forEach(t -> t.binders().forEach(b -> such(b, instance, environment, all)));
                rule.binders().forEach(b -> such(b, instance, environment, all));
                rule.scope().ifPresent(c -> add(c, instance, false, environment, all));
                // What must become so is looked at wherever the procedure ends, not only where it is still missing.
                add(rule.body(), instance, !instance.isDuty(), environment, all);
                rule.unless().ifPresent(c -> add(c, instance, true, environment, all));
            }
        }
        return all;
    }

    private void such(Condition.Binder binder, RuleInstance instance, Environment environment, Set<Probe> all) {
        if (environment.get(binder.variable()) != null) {
            binder.such().ifPresent(c -> add(c, instance, false, environment, all));
        }
    }

    private void add(
            Condition condition, RuleInstance instance, boolean scoped, Environment environment, Set<Probe> all) {
        if (condition instanceof Condition.All and) {
            and.parts().forEach(p -> add(p, instance, scoped, environment, all));
        } else if (condition instanceof Condition.One or) {
            or.parts().forEach(p -> add(p, instance, scoped, environment, all));
        } else if (condition instanceof Condition.Quantified some) {
            each(some.binder(), some.body(), instance, scoped, environment, all);
        } else if (condition instanceof Condition.Counted some) {
            each(some.binder(), some.body(), instance, scoped, environment, all);
        } else if (condition instanceof Condition.Named named) {
            add(named.body(), instance, scoped, machine.conditions().inside(named, environment), all);
        } else if (condition instanceof Condition.Not not && !RuleParts.isSimple(not.body())) {
            add(not.body(), instance, scoped, environment, all);
        } else {
            int part = numbers.get(instance.number()).get(condition);
            Node value = machine.conditions().compile(condition, environment);
            all.add(new Probe(instance.number(), part, scoped, instance.moment(), instance.scope(), value));
        }
    }

    private void each(
            Condition.Binder binder,
            Condition body,
            RuleInstance instance,
            boolean scoped,
            Environment environment,
            Set<Probe> all) {
        for (Obj object : machine.conditions().domain(binder, environment)) {
            Environment inner = environment.with(binder.variable(), object);
            binder.such().ifPresent(c -> add(c, instance, scoped, inner, all));
            add(body, instance, scoped, inner, all);
        }
    }
}
