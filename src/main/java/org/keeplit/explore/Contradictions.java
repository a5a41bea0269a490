package org.keeplit.explore;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.keeplit.condition.Truth;
import org.keeplit.program.Field;

/**
 * Finds rules that cannot both be kept, by their conditions alone: two that are judged in the same states and whose
 * requirements exclude one another whatever else is so. Questions that are not of one field count as independent, so
 * that not every contradiction is found, but none is told that is not one.
 */
final class Contradictions {
    /** How many cases are gone through for one pair. */
    private static final int MOST_CASES = 1 << 10;
    /** How many pairs are looked at. */
    private static final int MOST_PAIRS = 20_000;

    private final List<RuleInstance> held = new ArrayList<>();
    private final Map<Object, List<Integer>> asking = new LinkedHashMap<>();
    private final Map<List<Integer>, String> found = new LinkedHashMap<>();
    private int pairs;

    private Contradictions() {}

    /** {@return one sentence for each two rules that exclude one another} @param instances those judged in states */
    static List<String> among(List<RuleInstance> instances) {
        Contradictions all = new Contradictions();
        for (RuleInstance instance : instances) {
            if (instance.excuse().equals(Node.Constant.FALSE) && !(instance.body() instanceof Node.Constant)) {
                all.hold(instance);
            }
        }
        return List.copyOf(all.found.values());
    }

    private void hold(RuleInstance instance) {
        Set<Object> questions = new LinkedHashSet<>();
        questions(instance.body(), questions);
        Set<Integer> others = new TreeSet<>();
        for (Object question : questions) {
            List<Integer> known = asking.computeIfAbsent(question, q -> new ArrayList<>());
            others.addAll(known);
            known.add(held.size());
        }
        held.add(instance);
        for (int number : others) {
            RuleInstance other = held.get(number);
            if (other.number() != instance.number()
                    && other.scope().equals(instance.scope())
                    && pairs++ < MOST_PAIRS
                    && isNever(Node.all(List.of(other.body(), instance.body())))) {
                found.putIfAbsent(List.of(other.number(), instance.number()), sentence(other, instance));
            }
        }
    }

    /** One sentence for two rules: the first binding stands for all. */
    private static String sentence(RuleInstance one, RuleInstance other) {
        String bindings = one.environments().get(0).objects().entrySet().stream()
                .map(e -> e.getKey() + " = " + e.getValue().words())
                .collect(Collectors.joining(", "));
        return one.rule().name() + " and " + other.rule().name()
                + (bindings.isEmpty() ? "" : ", for example for " + bindings);
    }

    /** Gathers what a condition asks: fields, and whatever else it asks as a whole. */
    private static void questions(Node node, Set<Object> all) {
        if (node instanceof Node.Not not) {
            questions(not.body(), all);
        } else if (node instanceof Node.All parts) {
            parts.parts().forEach(p -> questions(p, all));
        } else if (node instanceof Node.One parts) {
            parts.parts().forEach(p -> questions(p, all));
        } else if (node instanceof Node.Count count) {
            count.parts().forEach(p -> questions(p, all));
        } else if (!(node instanceof Node.Constant)) {
            all.add(question(node));
        }
    }

    private static Object question(Node node) {
        if (node instanceof Nodes.FieldIs is) {
            return is.field();
        }
        return node instanceof Nodes.FieldIn in ? in.field() : node;
    }

    /** {@return whether a condition is true in no case at all} */
    private static boolean isNever(Node node) {
        Set<Object> questions = new LinkedHashSet<>();
        questions(node, questions);
        long cases = 1;
        for (Object question : questions) {
            cases *= answers(question);
            if (cases > MOST_CASES) {
                return false;
            }
        }
        List<Object> order = new ArrayList<>(questions);
        for (int number = 0; number < cases; number++) {
            Map<Object, Integer> answer = new LinkedHashMap<>();
            int rest = number;
            for (Object question : order) {
                answer.put(question, rest % answers(question));
                rest /= answers(question);
            }
            if (truth(node, answer) == Truth.TRUE) {
                return false;
            }
        }
        return true;
    }

    private static int answers(Object question) {
        return question instanceof Field field ? field.size() : 2;
    }

    private static Truth truth(Node node, Map<Object, Integer> answer) {
        if (node instanceof Node.Not not) {
            return truth(not.body(), answer).not();
        } else if (node instanceof Node.All all) {
            return all.parts().stream().map(p -> truth(p, answer)).reduce(Truth.TRUE, Truth::and);
        } else if (node instanceof Node.One one) {
            return one.parts().stream().map(p -> truth(p, answer)).reduce(Truth.FALSE, Truth::or);
        } else if (node instanceof Node.Count count) {
            long so = count.parts().stream().filter(p -> truth(p, answer) == Truth.TRUE).count();
            return Truth.of(so >= count.least() && so <= count.most());
        } else if (node instanceof Node.Constant constant) {
            return constant.truth();
        } else if (node instanceof Nodes.FieldIs is) {
            return Truth.of(answer.get(is.field()) == is.value());
        } else if (node instanceof Nodes.FieldIn in) {
            int value = answer.get(in.field());
            return Truth.of(value >= in.least() && value <= in.most());
        }
        return Truth.of(answer.get(node) == 1);
    }
}
