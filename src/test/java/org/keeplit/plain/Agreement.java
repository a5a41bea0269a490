package org.keeplit.plain;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.google.common.collect.Iterables;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.keeplit.explore.Proving;
import org.keeplit.network.Network;
import org.keeplit.outcome.Finding;
import org.keeplit.outcome.Limits;
import org.keeplit.outcome.Outcome;
import org.keeplit.outcome.RuleResult;
import org.keeplit.outcome.Watcher;
import org.keeplit.procedure.Binding;
import org.keeplit.procedure.Bound;
import org.keeplit.procedure.Procedure;
import org.keeplit.text.Problems;

/** Holds the fast and the plain evaluator against one another. */
final class Agreement {
    private Agreement() {}

    /** What both found, once they agree. */
    record Both(Outcome fast, PlainResult plain) {}

    /** Runs both and asserts that they found the same. */
    static Both check(Procedure procedure, Network network, Procedure.Proof proof, String name) {
        Problems problems = new Problems();
        Outcome fast = Proving.prove(procedure, network, proof, Limits.USUAL, Watcher.NOBODY, problems)
                .orElseThrow(() -> new AssertionError(name + ": " + problems.sorted()));
        Bound bound = Binding.bind(procedure, network, proof, problems).orElseThrow();
        PlainResult plain = PlainEvaluator.evaluate(bound, Limits.USUAL.events(), 1_000_000);
        assertEquals("", difference(fast, plain), name);
        return new Both(fast, plain);
    }

    /** {@return how the two differ, in words; empty if they do not} */
    static String difference(Outcome fast, PlainResult plain) {
        StringBuilder all = new StringBuilder();
        differ(all, "root findings and the length of the way there", plain.roots(), roots(fast));
        differ(all, "broken after others", plain.later(), named(fast, RuleResult.Verdict.ONLY_AFTER));
        differ(all, "exercised", plain.exercised(), exercised(fast, plain));
        differ(all, "states", plain.states(), fast.states());
        return all.toString();
    }

    private static void differ(StringBuilder all, String what, Object plain, Object fast) {
        if (!plain.equals(fast)) {
            all.append(what).append(": plain ").append(plain).append(", fast ").append(fast).append("; ");
        }
    }

    static Map<String, Integer> roots(Outcome outcome) {
        Map<String, Integer> all = new TreeMap<>();
        for (Finding finding : Iterables.concat(outcome.findings(), outcome.notes())) {
            boolean numbered =
                    switch (finding.kind()) {
                        case REQUIREMENT, STOP, CANNOT, EXPECTATION, STUCK -> true;
                        default -> false;
                    };
            int length = finding.kind() == Finding.Kind.STUCK
                    ? finding.trace().size() - 1
                    : finding.trace().size();
            all.put(finding.name() + (numbered ? " " + finding.stepNumber() : ""), length);
        }
        return all;
    }

    private static Set<String> named(Outcome outcome, RuleResult.Verdict verdict) {
        Set<String> all = new TreeSet<>();
        outcome.rules().stream()
                .filter(r -> r.verdict() == verdict)
                .forEach(r -> all.add(r.rule().name()));
        return all;
    }

    /** A broken rule was exercised too; the fast evaluator does not say so of rules broken as unknown. */
    private static Set<String> exercised(Outcome outcome, PlainResult plain) {
        Set<String> all = named(outcome, RuleResult.Verdict.HOLDS);
        for (RuleResult rule : outcome.rules()) {
            boolean broken = rule.verdict() == RuleResult.Verdict.BROKEN
                    || rule.verdict() == RuleResult.Verdict.ONLY_AFTER;
            if (broken && plain.exercised().contains(rule.rule().name())) {
                all.add(rule.rule().name());
            }
        }
        return all;
    }
}
