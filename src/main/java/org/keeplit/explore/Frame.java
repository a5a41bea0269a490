package org.keeplit.explore;

import com.google.common.collect.ImmutableList;
import java.util.Optional;
import org.keeplit.condition.Truth;
import org.keeplit.outcome.TraceStep;
import org.keeplit.outcome.Why;
import org.keeplit.rule.Rule;

/**
 * One state on a way through a procedure, with all that a proof knows of it.
 *
 * @param step the act that led there, or what came by itself after it; nothing at the start
 * @param act the number of that act; -1 at the start
 * @param standing how everything stands
 * @param rules the rules whose case came up here, those that the act itself brings up first
 * @param limits figures beside their limits, the nearest to its limit first
 * @param without how many customers have no supply
 */
public record Frame(
        Optional<TraceStep> step,
        int act,
        Standing standing,
        ImmutableList<Judged> rules,
        ImmutableList<Limited> limits,
        int without) {

    /**
     * A rule whose case came up.
     *
     * @param rule the rule
     * @param atAct whether the act brings it up, rather than the state
     * @param bindings for how many things it was judged
     * @param truth whether it is kept for all of them
     */
    public record Judged(Rule rule, boolean atAct, int bindings, Truth truth) {}

    /**
     * A figure beside its limit.
     *
     * @param rule the rule that compares them
     * @param words the comparison, its variables replaced
     * @param beside the figures
     * @param truth whether it is so; where the rule offers something else instead, it need not be
     */
    public record Limited(String rule, String words, Why.Beside beside, Truth truth) {}
}
