package org.keeplit.language;

import org.keeplit.condition.Condition;

/** Tells whether a condition asks for what happened before. */
final class Histories {
    private Histories() {}

    /** {@return whether it does} */
    static boolean isIn(Condition condition) {
        if (condition instanceof Condition.Not not) {
            return isIn(not.body());
        } else if (condition instanceof Condition.All all) {
            return all.parts().stream().anyMatch(Histories::isIn);
        } else if (condition instanceof Condition.One one) {
            return one.parts().stream().anyMatch(Histories::isIn);
        } else if (condition instanceof Condition.Quantified some) {
            return isIn(some.body()) || some.binder().such().stream().anyMatch(Histories::isIn);
        } else if (condition instanceof Condition.Counted some) {
            return isIn(some.body()) || some.binder().such().stream().anyMatch(Histories::isIn);
        } else if (condition instanceof Condition.Named named) {
            return isIn(named.body());
        }
        return condition instanceof Condition.Happened || condition instanceof Condition.Since;
    }
}
