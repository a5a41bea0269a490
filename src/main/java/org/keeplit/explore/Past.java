package org.keeplit.explore;

import java.util.ArrayList;
import java.util.List;
import org.keeplit.condition.Condition;
import org.keeplit.rule.Rule;
import org.keeplit.rule.Template;

/** Tells what asks for the past, so that something must be remembered. */
final class Past {
    private Past() {}

    /** {@return whether a rule asks for the past} */
    static boolean isIn(Rule rule) {
        return rule.form() == Rule.Form.BETWEEN
                || rule.form() == Rule.Form.EVENTUALLY
                || conditionsOf(rule).stream().anyMatch(Past::isIn);
    }

    /** {@return whether a condition asks for the past} */
    static boolean isIn(Condition condition) {
        if (condition instanceof Condition.Not not) {
            return isIn(not.body());
        } else if (condition instanceof Condition.All parts) {
            return parts.parts().stream().anyMatch(Past::isIn);
        } else if (condition instanceof Condition.One parts) {
            return parts.parts().stream().anyMatch(Past::isIn);
        } else if (condition instanceof Condition.Quantified some) {
            return isIn(some.body()) || some.binder().such().stream().anyMatch(Past::isIn);
        } else if (condition instanceof Condition.Counted some) {
            return isIn(some.body()) || some.binder().such().stream().anyMatch(Past::isIn);
        } else if (condition instanceof Condition.Named named) {
            return isIn(named.body());
        }
        return condition instanceof Condition.Happened || condition instanceof Condition.Since;
    }

    /** {@return all conditions of a rule, those that its sentence tells included} */
    static List<Condition> conditionsOf(Rule rule) {
        List<Condition> some = new ArrayList<>();
        rule.binders().forEach(b -> b.such().ifPresent(some::add));
        rule.scope().ifPresent(some::add);
        some.add(rule.body());
        rule.unless().ifPresent(some::add);
        for (Template.Part part : rule.says().parts()) {
            if (part instanceof Template.ConditionGap gap) {
                some.add(gap.condition());
            }
        }
        return some;
    }
}
