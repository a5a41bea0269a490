package org.keeplit.outcome;

import com.google.common.collect.ImmutableList;
import org.keeplit.rule.Rule;

/**
 * A rule around a step, on one shortest way through it.
 *
 * @param rule the rule
 * @param step the step's label or sentence
 * @param way the acts up to the last one of the step
 * @param firstOfStep the number of the step's first act on the way, from 1
 * @param safe whether no rule is broken on the way before the step
 * @param before the rule with each of its bindings that counts here, in the state before the step's first act
 * @param after the same bindings in the state after the step's last act, in the same order
 */
public record RuleAtStep(
        Rule rule,
        String step,
        ImmutableList<TraceStep> way,
        int firstOfStep,
        boolean safe,
        ImmutableList<Why> before,
        ImmutableList<Why> after) {}
