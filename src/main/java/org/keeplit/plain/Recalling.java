package org.keeplit.plain;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;
import org.keeplit.condition.Condition;
import org.keeplit.condition.Moment;
import org.keeplit.condition.Truth;
import org.keeplit.rule.Rule;
import org.keeplit.rule.Template;
import org.keeplit.text.Span;

/**
 * What is remembered of the past: a fact for each question and each binding of all variables that are known where it
 * is asked. Some say the same thing twice; then they always go together.
 */
final class Recalling {
    private final Scenery scenery;
    private final Doings doings;
    private final Map<String, Asked> all = new TreeMap<>();
    private final List<String> order = new ArrayList<>();

    /** A question with what its variables stand for. @param condition one of the past, or null @param rule else a rule */
    private record Asked(Condition condition, Rule rule, Map<String, Thing> env) {}

    Recalling(Scenery scenery, Doings doings, List<Rule> rules, List<PlainAct> acts) {
        this.scenery = scenery;
        this.doings = doings;
        for (Rule rule : rules) {
            if (!isAboutThePast(rule)) {
                continue;
            }
            List<Map<String, Thing>> bindings = new ArrayList<>();
            if (rule.triggers().isEmpty()) {
                bindings.addAll(doings.bindings(rule, null, null));
            } else {
                acts.forEach(act -> bindings.addAll(doings.bindings(rule, act, null)));
            }
            for (Map<String, Thing> env : bindings) {
                questions(rule).forEach(c -> walk(c, env));
                if (rule.form() == Rule.Form.BETWEEN || rule.form() == Rule.Form.EVENTUALLY) {
                    note(key(rule, env), new Asked(null, rule, env));
                }
            }
        }
    }

    /** {@return all bindings of a rule about a stretch or a duty that can come up} */
    List<Map<String, Thing>> bindings(Rule rule) {
        return order.stream()
                .map(all::get)
                .filter(a -> a.rule == rule)
                .map(Asked::env)
                .toList();
    }

    private static List<Condition> questions(Rule rule) {
        List<Condition> some = new ArrayList<>(List.of(rule.body()));
        rule.scope().ifPresent(some::add);
        rule.unless().ifPresent(some::add);
        rule.binders().forEach(b -> b.such().ifPresent(some::add));
        rule.says().parts().forEach(p -> {
            if (p instanceof Template.ConditionGap gap) {
                some.add(gap.condition());
            }
        });
        return some;
    }

    private static boolean isAboutThePast(Rule rule) {
        return rule.form() == Rule.Form.BETWEEN
                || rule.form() == Rule.Form.EVENTUALLY
                || questions(rule).stream().anyMatch(Recalling::isAboutThePast);
    }

    private static boolean isAboutThePast(Condition condition) {
        return condition instanceof Condition.Happened
                || condition instanceof Condition.Since
                || parts(condition).stream().anyMatch(Recalling::isAboutThePast);
    }

    private static List<Condition> parts(Condition condition) {
        if (condition instanceof Condition.Not not) {
            return List.of(not.body());
        } else if (condition instanceof Condition.All all) {
            return all.parts();
        } else if (condition instanceof Condition.One one) {
            return one.parts();
        } else if (condition instanceof Condition.Named named) {
            return List.of(named.body());
        } else if (condition instanceof Condition.Since since) {
            return List.of(since.body());
        }
        Optional<Condition.Binder> binder = binder(condition);
        List<Condition> some = new ArrayList<>();
        binder.flatMap(Condition.Binder::such).ifPresent(some::add);
        if (condition instanceof Condition.Quantified q) {
            some.add(q.body());
        } else if (condition instanceof Condition.Counted c) {
            some.add(c.body());
        }
        return some;
    }

    private static Optional<Condition.Binder> binder(Condition condition) {
        if (condition instanceof Condition.Quantified q) {
            return Optional.of(q.binder());
        }
        return condition instanceof Condition.Counted c ? Optional.of(c.binder()) : Optional.empty();
    }

    private void walk(Condition condition, Map<String, Thing> env) {
        if (!isAboutThePast(condition)) {
            return;
        }
        Optional<Condition.Binder> binder = binder(condition);
        if (binder.isPresent()) {
            for (Thing thing : scenery.range(binder.get(), env)) {
                Map<String, Thing> inner = new HashMap<>(env);
                inner.put(binder.get().variable(), thing);
                parts(condition).forEach(p -> walk(p, inner));
            }
            return;
        }
        Map<String, Thing> inside = condition instanceof Condition.Named named ? scenery.meaning(named, env) : env;
        parts(condition).forEach(p -> walk(p, inside));
        if (condition instanceof Condition.Happened || condition instanceof Condition.Since) {
            note(key(condition, env), new Asked(condition, null, env));
        }
    }

    private void note(String key, Asked asked) {
        if (all.putIfAbsent(key, asked) == null) {
            order.add(key);
        }
    }

    private static String key(Condition what, Map<String, Thing> env) {
        return "past " + what.getClass().getSimpleName() + " " + place(what.span()) + " " + new TreeMap<>(env);
    }

    private static String key(Rule what, Map<String, Thing> env) {
        return "past rule " + what.name() + " " + place(what.span()) + " " + new TreeMap<>(env);
    }

    private static String place(Span span) {
        return span.source().name() + ":" + span.line() + ":" + span.column();
    }

    static Truth recall(Condition condition, Map<String, Thing> env, Facts facts) {
        int value = facts.get(key(condition, env));
        return condition instanceof Condition.Happened ? Truth.of(value == 1) : Truth.values()[value];
    }

    /** {@return whether a rule's stretch is open, or what it asks for is still to come} */
    static Truth isOpen(Rule rule, Map<String, Thing> env, Facts facts) {
        return Truth.of(facts.get(key(rule, env)) == 1);
    }

    /** {@return the facts at the start, with the past that there is before anything was done} */
    Facts begin(Facts facts, Function<Facts, Asking> asking) {
        Facts now = facts;
        for (String key : order) {
            Asked asked = all.get(key);
            if (asked.condition instanceof Condition.Since since) {
                now = now.with(key, asking.apply(now).ask(since.body(), asked.env).ordinal());
            } else if (asked.rule != null) {
                boolean fromStart = asked.rule.form() == Rule.Form.BETWEEN && asked.rule.triggers().isEmpty();
                now = now.with(key, fromStart ? 1 : 0);
            }
        }
        return now;
    }

    /** {@return the facts after an act, with what is remembered of it} @param act the act; null where something came by itself */
    Facts after(PlainAct act, Asking before, Facts facts, Function<Facts, Asking> asking) {
        Facts now = facts;
        for (String key : order) {
            Asked asked = all.get(key);
            int value;
            if (asked.condition instanceof Condition.Happened happened) {
                boolean cleared = came(happened.since(), act, before, asked.env);
                value = !cleared && (now.get(key) == 1 || came(happened.moments(), act, before, asked.env)) ? 1 : 0;
            } else if (asked.condition instanceof Condition.Since since) {
                Truth so = asking.apply(now).ask(since.body(), asked.env);
                Truth was = came(since.since(), act, before, asked.env) ? Truth.TRUE : Truth.values()[now.get(key)];
                value = was.and(so).ordinal();
            } else {
                value = goesOn(asked, act, before, now.get(key) == 1, now, asking) ? 1 : 0;
            }
            now = now.with(key, value);
        }
        return now;
    }

    private boolean goesOn(
            Asked asked,
            PlainAct act,
            Asking before,
            boolean was,
            Facts now,
            Function<Facts, Asking> asking) {
        Rule rule = asked.rule;
        boolean begins = act != null && doings.begins(rule, act, before, asked.env);
        boolean open = begins || was && !came(rule.until(), act, before, asked.env);
        boolean waitsForCondition = rule.form() == Rule.Form.EVENTUALLY && rule.until().isEmpty();
        return open && !(waitsForCondition && asking.apply(now).ask(rule.body(), asked.env) == Truth.TRUE);
    }

    private boolean came(List<Moment> moments, PlainAct act, Asking before, Map<String, Thing> env) {
        return act != null && moments.stream().anyMatch(m -> doings.comes(m, act, before, env));
    }
}
