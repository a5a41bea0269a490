package org.keeplit.rule;

import com.google.common.collect.ImmutableList;
import java.util.Optional;
import org.keeplit.condition.ActKind;
import org.keeplit.condition.Condition;

/**
 * A moment that a rule binds to.
 *
 * @param act the kind of moment
 * @param binders one variable for each participant, in order; its noun may narrow the kinds
 * @param phase the variable for the phase, if the rule names it
 * @param by the variable for the person who acts, if the rule names one
 * @param words constants that narrow the moment, such as a mode and its value
 */
public record Trigger(
        ActKind act,
        ImmutableList<Condition.Binder> binders,
        Optional<String> phase,
        Optional<String> by,
        ImmutableList<String> words) {}
