package org.keeplit.explore;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import org.keeplit.condition.Condition;
import org.keeplit.condition.Moment;
import org.keeplit.rule.Trigger;

/**
 * One thing that a run remembers for a rule: a small deterministic monitor, for one binding of the rule's variables.
 *
 * @param rule the number of the rule that it was made for first
 * @param kind how it goes on
 * @param what the condition or the rule that asks for it
 * @param objects what the variables stand for that it depends on
 * @param triggers the moments that set it, where these bind variables
 * @param sets the moments that set it
 * @param clears the moments that clear it
 * @param body what must be so all the time, or what ends a duty; null if nothing
 */
record Memory(
        int rule,
        Kind kind,
        Object what,
        ImmutableMap<String, Obj> objects,
        ImmutableList<Trigger> triggers,
        ImmutableList<Moment> sets,
        ImmutableList<Moment> clears,
        Condition body) {

    /** How a memory goes on from act to act. */
    enum Kind {
        /** A moment came up; what clears it wins over what sets it in the same act. */
        HAPPENED(2),
        /** A stretch is open; what begins it wins over what ends it. */
        OPEN(2),
        /** A duty is pending; a new one wins over what ends the old, and what it waits for ends it at once. */
        PENDING(2),
        /** Something was so all the time, in three values; the moment begins it anew. */
        SINCE(3);

        private final int values;

        Kind(int values) {
            this.values = values;
        }

        /** {@return how many values it has} */
        int size() {
            return values;
        }
    }

    Environment environment() {
        return new Environment(objects);
    }
}
