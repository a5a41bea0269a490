package org.keeplit.explore;

import com.google.common.base.Supplier;
import com.google.common.base.Suppliers;
import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.keeplit.condition.Condition;
import org.keeplit.condition.Truth;
import org.keeplit.network.Conductor;
import org.keeplit.network.Element;
import org.keeplit.outcome.Why;

/** Explains a rule in a state in full: every part with its value, every witness, every figure, every path. */
final class WhyTree {
    private final Machine machine;
    private final Explaining explaining;
    /** Made when it is first asked for: it costs by the size of the network. */
    private final Supplier<Ways> ways;

    WhyTree(Machine machine, Explaining explaining) {
        this.machine = machine;
        this.explaining = explaining;
        this.ways = Suppliers.memoize(() -> new Ways(machine.world()));
    }

    /** {@return a rule with what its variables stand for, judged where the scene looks} */
    Why rule(RuleInstance instance, Scene scene) {
        Environment environment = instance.environments().get(0);
        List<Why> parts = new ArrayList<>();
        instance.rule().scope().ifPresent(c -> parts.add(under("while", c, environment, scene)));
        instance.rule().unless().ifPresent(c -> parts.add(under("unless", c, environment, scene)));
        parts.add(body(instance, environment, scene));
        String bindings = environment.objects().entrySet().stream()
                .map(e -> e.getKey() + " = " + e.getValue().words())
                .collect(Collectors.joining(", "));
        return new Why(
                "rule " + instance.rule().name() + (bindings.isEmpty() ? "" : " for " + bindings),
                instance.judge(scene),
                ImmutableList.copyOf(parts));
    }

    private Why body(RuleInstance instance, Environment environment, Scene scene) {
        if (instance.rule().until().isEmpty() || !instance.isDuty()) {
            return under("require", instance.rule().body(), environment, scene);
        }
        return explaining.duty(instance, environment, scene);
    }

    private Why under(String word, Condition condition, Environment environment, Scene scene) {
        Why why = of(condition, environment, scene);
        return new Why(word + " " + why.text(), why.truth(), "", why.figures(), why.path(), why.parts());
    }

    /** {@return a condition with the value under each part} */
    Why of(Condition condition, Environment environment, Scene scene) {
        Truth truth = machine.conditions().compile(condition, environment).eval(scene);
        List<Why> parts = new ArrayList<>();
        ImmutableList<Why.Beside> figures = ImmutableList.of();
        ImmutableList<String> path = ImmutableList.of();
        if (condition instanceof Condition.Not not) {
            parts.add(of(not.body(), environment, scene));
        } else if (condition instanceof Condition.All all) {
            all.parts().forEach(p -> parts.add(of(p, environment, scene)));
        } else if (condition instanceof Condition.One one) {
            one.parts().forEach(p -> parts.add(of(p, environment, scene)));
        } else if (condition instanceof Condition.Quantified some) {
            each(some.binder(), some.body(), environment, scene, parts);
        } else if (condition instanceof Condition.Counted some) {
            each(some.binder(), some.body(), environment, scene, parts);
        } else if (condition instanceof Condition.Named named) {
            parts.add(of(named.body(), machine.conditions().inside(named, environment), scene));
        } else if (condition instanceof Condition.Since since) {
            Why now = of(since.body(), environment, scene);
            parts.add(new Why("now " + now.text(), now.truth(), "", now.figures(), now.path(), now.parts()));
        } else if (condition instanceof Condition.Compare compare) {
            figures = ImmutableList.copyOf(explaining.figures(compare, environment, scene));
        } else if (condition instanceof Condition.Atom atom && truth == Truth.TRUE) {
            path = path(atom, environment, scene);
        }
        return new Why(
                new ConditionWords(environment).say(condition),
                truth,
                "",
                figures,
                path,
                ImmutableList.copyOf(parts));
    }

    private void each(
            Condition.Binder binder, Condition body, Environment environment, Scene scene, List<Why> parts) {
        for (Obj object : machine.conditions().domain(binder, environment)) {
            Environment inner = environment.with(binder.variable(), object);
            if (explaining.such(binder, inner, scene) != Truth.FALSE) {
                parts.add(of(body, inner, scene).about(binder.variable() + " = " + object.words()));
            }
        }
    }

    /** {@return what supplies or bypasses the thing, on the first phase that is asked about} */
    private ImmutableList<String> path(Condition.Atom atom, Environment environment, Scene scene) {
        if (atom.terms().isEmpty()) {
            return ImmutableList.of();
        }
        Obj object = machine.conditions().object(atom.terms().get(0), environment);
        Optional<Conductor> phase = machine.conditions().asked(atom, environment).stream().findFirst();
        return switch (atom.predicate()) {
            case ENERGIZED, ALIVE -> phase.map(p -> ways.get().supply(machine.conditions().vertex(object, p), scene))
                    .orElse(ImmutableList.of());
            case SUPPLIED -> ways.get().supply((Element.Load) ((Obj.Of) object).element(), scene);
            case BYPASSED -> phase.map(p -> ways.get().around((Element.Branch) ((Obj.Of) object).element(), p, true, scene))
                    .orElse(ImmutableList.of());
            case LOOPED -> phase.map(p -> ways.get().around((Element.Branch) ((Obj.Of) object).element(), p, false, scene))
                    .orElse(ImmutableList.of());
            default -> ImmutableList.of();
        };
    }
}
