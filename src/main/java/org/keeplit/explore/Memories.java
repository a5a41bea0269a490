package org.keeplit.explore;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.keeplit.condition.Condition;
import org.keeplit.condition.Moment;
import org.keeplit.condition.Truth;
import org.keeplit.electric.Electric;
import org.keeplit.outcome.Effort;
import org.keeplit.program.Act;
import org.keeplit.program.Field;
import org.keeplit.program.FieldKey;
import org.keeplit.program.Program;
import org.keeplit.rule.Rule;
import org.keeplit.rule.Rulebook;
import org.keeplit.rule.Trigger;

/**
 * All that a run remembers: one memory for each binding of a rule over the objects of the run. What can never come
 * up is not remembered. A memory that another depends on comes before it.
 */
final class Memories {
    private record Key(Object what, ImmutableMap<String, Obj> objects) {}

    private final World world;
    private final ConditionCompiler conditions;
    private final RuleCompiler rules;
    private final Moments moments;
    private final Map<Key, Integer> numbers = new LinkedHashMap<>();
    private final List<Memory> all = new ArrayList<>();
    private int rule;

    Memories(World world, ConditionCompiler conditions) {
        this.world = world;
        this.conditions = conditions;
        this.rules = new RuleCompiler(world, conditions, this);
        List<Rule> needy = new ArrayList<>();
        List<Integer> which = new ArrayList<>();
        int number = 0;
        for (Rulebook book : world.bound().procedure().keeps()) {
            for (Rule one : book.rules()) {
                if (Past.isIn(one)) {
                    needy.add(one);
                    which.add(number);
                }
                number++;
            }
        }
        this.moments = needy.isEmpty() ? null : new Moments(world, conditions);
        for (int i = 0; i < needy.size(); i++) {
            rule = which.get(i);
            collect(needy.get(i));
        }
    }

    /**
     * A program with room in its state for all that its rules remember.
     *
     * @param program the program
     * @param electric the electrical side of it
     * @param chances the events that may happen
     * @return the same program if its rules remember nothing
     */
    static Program extend(Program program, Electric electric, ImmutableList<Chances.One> chances) {
        World world = new World(program, electric, chances);
        ConditionCompiler conditions = new ConditionCompiler(world);
        Memories memories = new Memories(world, conditions);
        if (memories.all.isEmpty()) {
            return program;
        }
        conditions.remember(memories);
        Scene start = new Scene(world).at(program.layout().initial());
        Map<FieldKey, int[]> fields = new LinkedHashMap<>();
        for (int i = 0; i < memories.all.size(); i++) {
            Memory memory = memories.all.get(i);
            int first = switch (memory.kind()) {
                case HAPPENED, PENDING -> 0;
                case OPEN -> memory.triggers().isEmpty() ? 1 : 0;
                case SINCE -> conditions
                        .compile(memory.body(), memory.environment())
                        .eval(start)
                        .ordinal();
            };
            fields.put(new FieldKey.Remembered(i), new int[] {memory.kind().size(), first});
        }
        return program.with(program.layout().extended(fields));
    }

    private void collect(Rule one) {
        for (Environment environment : rules.environments(one, moments)) {
            for (Condition condition : Past.conditionsOf(one)) {
                walk(condition, environment);
            }
            if (one.form() == Rule.Form.BETWEEN) {
                // A stretch that nothing ends and that begins with the start is open all the time.
                if (!one.triggers().isEmpty() || canCome(one.until(), environment)) {
                    add(Memory.Kind.OPEN, rule, environment, one.triggers(), List.of(), one.until(), null);
                }
            } else if (one.form() == Rule.Form.EVENTUALLY) {
                Condition ends = one.until().isEmpty() ? one.body() : null;
                add(Memory.Kind.PENDING, rule, environment, one.triggers(), List.of(), one.until(), ends);
            }
        }
    }

    /** Finds what a condition remembers, whatever else decides it, so that it does not hang on how it is compiled. */
    private void walk(Condition condition, Environment environment) {
        Effort.step();
        if (!Past.isIn(condition)) {
            return;
        }
        if (condition instanceof Condition.Not not) {
            walk(not.body(), environment);
        } else if (condition instanceof Condition.All parts) {
            parts.parts().forEach(p -> walk(p, environment));
        } else if (condition instanceof Condition.One parts) {
            parts.parts().forEach(p -> walk(p, environment));
        } else if (condition instanceof Condition.Quantified some) {
            each(some.binder(), some.body(), environment);
        } else if (condition instanceof Condition.Counted some) {
            each(some.binder(), some.body(), environment);
        } else if (condition instanceof Condition.Named named) {
            walk(named.body(), conditions.inside(named, environment));
        } else if (condition instanceof Condition.Since since) {
            walk(since.body(), environment);
            if (isSettled(since.body(), environment)) {
                return;
            }
            Environment needed = needed(since, environment);
            add(Memory.Kind.SINCE, since, needed, List.of(), since.since(), List.of(), since.body());
        } else if (condition instanceof Condition.Happened happened && canCome(happened.moments(), environment)) {
            Environment needed = needed(happened, environment);
            add(Memory.Kind.HAPPENED, happened, needed, List.of(), happened.moments(), happened.since(), null);
        }
    }

    private void each(Condition.Binder binder, Condition body, Environment environment) {
        for (Obj object : conditions.domain(binder, environment)) {
            Environment inner = environment.with(binder.variable(), object);
            binder.such().ifPresent(such -> walk(such, inner));
            walk(body, inner);
        }
    }

    /** {@return whether a condition is the same in all states of the run, so that nothing of it is remembered} */
    private boolean isSettled(Condition condition, Environment environment) {
        return !Past.isIn(condition) && conditions.compile(condition, environment) instanceof Node.Constant;
    }

    private static Environment needed(Condition condition, Environment environment) {
        Set<String> free = FreeVariables.of(condition);
        Map<String, Obj> some = new LinkedHashMap<>();
        environment.objects().forEach((name, object) -> {
            if (free.contains(name)) {
                some.put(name, object);
            }
        });
        return new Environment(some);
    }

    private boolean canCome(List<Moment> some, Environment environment) {
        return world.program().acts().stream()
                .anyMatch(act -> !moments.when(some, act, environment).equals(Node.Constant.FALSE));
    }

    private void add(
            Memory.Kind kind,
            Object what,
            Environment environment,
            List<Trigger> triggers,
            List<Moment> sets,
            List<Moment> clears,
            Condition body) {
        ImmutableMap<String, Obj> objects = ImmutableMap.copyOf(environment.objects());
        if (numbers.putIfAbsent(new Key(what, objects), all.size()) == null) {
            all.add(new Memory(
                    rule,
                    kind,
                    what,
                    objects,
                    ImmutableList.copyOf(triggers),
                    ImmutableList.copyOf(sets),
                    ImmutableList.copyOf(clears),
                    body));
        }
    }

    /** {@return the moments of all acts; null if no rule remembers anything} */
    Moments moments() {
        return moments;
    }

    List<Memory> all() {
        return all;
    }

    /** {@return how many bits of a state a rule takes} */
    int bits(int ofRule) {
        int bits = 0;
        for (int i = 0; i < all.size(); i++) {
            if (all.get(i).rule() == ofRule) {
                bits += field(i).map(Field::width).orElse(0);
            }
        }
        return bits;
    }

    private Optional<Field> field(int number) {
        return world.program().layout().field(new FieldKey.Remembered(number));
    }

    /** {@return the memory of a rule with a binding: that its stretch is open, or its duty pending} */
    Node ofRule(int number, Environment environment) {
        return node(number, environment, Node.Constant.TRUE);
    }

    /** {@return whether a moment has come up} */
    Node happened(Condition.Happened happened, Environment environment) {
        return node(happened, needed(happened, environment), Node.Constant.FALSE);
    }

    /** {@return whether something was so all the time; at the start that is whether it is so} */
    Node since(Condition.Since since, Environment environment) {
        Integer number = numbers.get(new Key(since, ImmutableMap.copyOf(needed(since, environment).objects())));
        Optional<Field> field = number == null ? Optional.empty() : field(number);
        return field.<Node>map(Kept::new).orElseGet(() -> conditions.compile(since.body(), environment));
    }

    private Node node(Object what, Environment environment, Node otherwise) {
        Integer number = numbers.get(new Key(what, ImmutableMap.copyOf(environment.objects())));
        Optional<Field> field = number == null ? Optional.empty() : field(number);
        return field.<Node>map(f -> new Nodes.FieldIs(f, 1)).orElse(otherwise);
    }

    /** What was so all the time, as its field keeps it. */
    private record Kept(Field field) implements Node {
        @Override
        public void reads(Reads into) {
            into.field(field);
        }

        @Override
        public Truth eval(Scene scene) {
            return Truth.values()[field.get(scene.state())];
        }
    }

    /** {@return what must be so before an act for it to set a memory} */
    Node sets(Memory memory, Act act) {
        List<Node> any = new ArrayList<>();
        any.add(moments.when(memory.sets(), act, memory.environment()));
        for (Trigger trigger : memory.triggers()) {
            for (Events.Event event : moments.events(act)) {
                boolean same = rules.matches(trigger, event, act).stream()
                        .anyMatch(matched -> memory.objects().entrySet().containsAll(
                                matched.objects().entrySet()));
                if (same) {
                    any.add(event.when());
                }
            }
        }
        return Node.one(any);
    }

    /** {@return what must be so before an act for it to clear a memory} */
    Node clears(Memory memory, Act act) {
        return moments.when(memory.clears(), act, memory.environment());
    }
}
