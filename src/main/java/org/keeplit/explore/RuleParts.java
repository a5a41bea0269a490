package org.keeplit.explore;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.List;
import org.keeplit.condition.Condition;
import org.keeplit.outcome.RulePart;
import org.keeplit.outcome.RulePart.Place;
import org.keeplit.rule.Rule;

/** Takes rules apart into their questions. */
public final class RuleParts {
    private RuleParts() {}

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
