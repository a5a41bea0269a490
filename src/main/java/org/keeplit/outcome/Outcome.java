package org.keeplit.outcome;

import com.google.common.collect.ImmutableList;
import java.util.Optional;
import org.keeplit.procedure.Block;
import org.keeplit.rule.Rule;

/**
 * What an exploration found.
 *
 * @param steps the steps of what was explored, by number
 * @param rules what came of each rule, in the order of the rulebooks
 * @param findings the root findings, rule breaks included, shortest first
 * @param notes the root breaks of rules that are cautions or advice, shortest first; they break nothing
 * @param byEvent rules that an event breaks with nothing done, shortest first; the procedure has no part in it
 * @param contradictions rules that cannot both be kept, whatever is done, by their conditions alone; two names a line
 * @param states how many states were reached
 * @param transitions how many acts were tried
 * @param depth the length of the longest shortest way
 * @param endings how many end states were reached
 * @param electricStates how many sets of closed contacts were worked out
 * @param loadFlows how many load flows were worked out; none where nothing asks for figures
 * @param stateBits how many bits a state takes
 * @param bytes how much memory the states took
 * @param cut why the run was cut, if it was
 */
public record Outcome(
        ImmutableList<Block.Step> steps,
        ImmutableList<RuleResult> rules,
        ImmutableList<Finding> findings,
        ImmutableList<Finding> notes,
        ImmutableList<Finding> byEvent,
        ImmutableList<String> contradictions,
        int states,
        long transitions,
        int depth,
        int endings,
        int electricStates,
        int loadFlows,
        int stateBits,
        long bytes,
        Optional<String> cut) {

    /** What an exploration comes to for a procedure that must hold. */
    public enum Answer {
        /** Nothing is broken in any state, and at least one rule that stops was put to the question. */
        HOLDS,
        /** Something is broken. */
        BROKEN,
        /** A limit was reached first. */
        UNDECIDED,
        /** Nothing is broken, but no rule that stops ever came up, so nothing was asked. */
        NOT_PROVED
    }

    /** {@return what it comes to; a break beats a limit, and a limit beats that nothing was asked} */
    public Answer answer() {
        if (!findings.isEmpty()) {
            return Answer.BROKEN;
        } else if (cut.isPresent()) {
            return Answer.UNDECIDED;
        }
        boolean asked = rules.stream()
                .anyMatch(r -> r.verdict() == RuleResult.Verdict.HOLDS && r.rule().severity() == Rule.Severity.STOP);
        return asked ? Answer.HOLDS : Answer.NOT_PROVED;
    }

    /**
     * {@return the outcome of a run that a limit ended before its search began}
     *
     * @param reason which
     */
    public static Outcome notBegun(String reason) {
        return new Outcome(
                ImmutableList.of(), ImmutableList.of(), ImmutableList.of(), ImmutableList.of(), ImmutableList.of(), ImmutableList.of(),
                0, 0, 0, 0, 0, 0, 0, 0, Optional.of(reason));
    }
}
