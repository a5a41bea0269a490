package org.keeplit.explore;

import com.google.common.collect.ImmutableList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.keeplit.outcome.RulePart;
import org.keeplit.rule.Rule;
import org.keeplit.rule.Trigger;

/** Finds rules that are judged at the same moments or in the same states, or that ask the same. */
public final class RelatedRules {
    private static final int MOST = 5;
    private static final int ENOUGH = 2;

    private RelatedRules() {}

    /**
     * {@return the names of the rules nearest to one, the nearest first}
     *
     * @param rule the rule
     * @param others all rules, which may include it
     */
    public static ImmutableList<String> of(Rule rule, List<Rule> others) {
        Map<String, Integer> near = new TreeMap<>();
        for (Rule other : others) {
            int score = score(rule, other);
            if (!other.name().equals(rule.name()) && score >= ENOUGH) {
                near.merge(other.name(), score, Math::max);
            }
        }
        return near.entrySet().stream()
                .sorted(Comparator.comparing((Map.Entry<String, Integer> e) -> -e.getValue()))
                .limit(MOST)
                .map(Map.Entry::getKey)
                .collect(ImmutableList.toImmutableList());
    }

    private static int score(Rule one, Rule other) {
        ConditionWords words = new ConditionWords(Environment.EMPTY);
        int score = 0;
        if (one.form() == other.form() && !Set.copyOf(moments(one)).isEmpty()) {
            Set<String> both = new HashSet<>(moments(one));
            both.retainAll(moments(other));
            score += 2 * both.size();
        }
        if (one.scope().isPresent() && one.scope().map(words::say).equals(other.scope().map(words::say))) {
            score += 2;
        }
        Set<String> asked = new HashSet<>(asked(one));
        asked.retainAll(asked(other));
        return score + asked.size();
    }

    private static List<String> moments(Rule rule) {
        return rule.triggers().stream().map(RelatedRules::moment).distinct().toList();
    }

    private static String moment(Trigger trigger) {
        return trigger.act() + " " + trigger.words() + " "
                + trigger.binders().stream().map(b -> b.noun().type()).toList();
    }

    private static List<String> asked(Rule rule) {
        return RuleParts.of(rule).stream()
                .filter(part -> part.place() == RulePart.Place.REQUIRED)
                .map(RulePart::text)
                .toList();
    }
}
