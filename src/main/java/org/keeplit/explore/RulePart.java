package org.keeplit.explore;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.List;
import org.keeplit.condition.Condition;
import org.keeplit.rule.Rule;

/**
 * A question inside a rule that is answered by itself: an atom, a comparison, a question about the past. What stands
 * under {@code and}, {@code or}, a quantifier or a name is taken apart; an atom with its {@code not} is one question.
 *
 * @param place where in the rule it stands
 * @param condition the question
 * @param text the question in words, its variables as the rule writes them
 */
public record RulePart(Place place, Condition condition, String text) {

    /** Where in a rule a question stands. */
    public enum Place {
        /** In its scope: {@code while}, or what narrows a variable. */
        WHEN("when it is judged"),
        /** In what is required. */
        REQUIRED("require"),
        /** In what excuses. */
        UNLESS("unless");

        private final String word;

        Place(String word) {
            this.word = word;
        }

        /** {@return the word by which reports name it} */
        public String word() {
            return word;
        }
    }

    /**
     * {@return the questions of a rule, in the order in which it asks them}
     *
     * @param rule the rule
     */
    public static ImmutableList<RulePart> of(Rule rule) {
        List<RulePart> all = new ArrayList<>();
        rule.triggers().forEach(t -> t.binders().forEach(b -> such(b, Place.WHEN, all)));
        rule.binders().forEach(b -> such(b, Place.WHEN, all));
        rule.scope().ifPresent(c -> collect(c, Place.WHEN, all));
        collect(rule.body(), Place.REQUIRED, all);
        rule.unless().ifPresent(c -> collect(c, Place.UNLESS, all));
        return ImmutableList.copyOf(all);
    }

    private static void such(Condition.Binder binder, Place place, List<RulePart> all) {
        binder.such().ifPresent(c -> collect(c, place, all));
    }

    private static void collect(Condition condition, Place place, List<RulePart> all) {
        if (condition instanceof Condition.All and) {
            and.parts().forEach(p -> collect(p, place, all));
        } else if (condition instanceof Condition.One or) {
            or.parts().forEach(p -> collect(p, place, all));
        } else if (condition instanceof Condition.Quantified some) {
            such(some.binder(), place, all);
            collect(some.body(), place, all);
        } else if (condition instanceof Condition.Counted some) {
            such(some.binder(), place, all);
            collect(some.body(), place, all);
        } else if (condition instanceof Condition.Named named) {
            collect(named.body(), place, all);
        } else if (condition instanceof Condition.Not not && !isSimple(not.body())) {
            collect(not.body(), place, all);
        } else {
            all.add(new RulePart(place, condition, new ConditionWords(Environment.EMPTY).say(condition)));
        }
    }

    /** {@return whether a denial of it is one question, not one about its parts} */
    static boolean isSimple(Condition condition) {
        return condition instanceof Condition.Atom || condition instanceof Condition.Happened;
    }
}
