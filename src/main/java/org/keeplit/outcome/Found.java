package org.keeplit.outcome;

import com.google.common.collect.ImmutableList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.keeplit.condition.Condition;

/** What a run found, of which more can be asked. It belongs to one thread. */
public interface Found {
    /** {@return what was found} */
    Outcome outcome();

    /** {@return for each rule which answers its questions had in the run} */
    ImmutableList<RuleSeen> seen();

    /**
     * Explains conditions where a finding came up.
     *
     * @param finding one of the findings or notes of the outcome
     * @param bindings what some of its variables must stand for, as findings name it
     * @param conditions the conditions, said with the rule's variables
     * @return each with its value, in the state in which the rule is judged; nothing if no rule is broken there for
     *     these things
     */
    Optional<ImmutableList<Why>> reasons(Finding finding, Map<String, String> bindings, List<Condition> conditions);
}
