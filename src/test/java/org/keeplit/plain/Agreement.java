package org.keeplit.plain;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.google.common.collect.ImmutableMap;
import com.google.common.collect.ImmutableSet;
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
import org.keeplit.procedure.Bound;
import org.keeplit.procedure.Procedure;
import org.keeplit.rule.Rule;
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
        Bound bound = bound(procedure, network, proof);
        PlainResult plain = PlainEvaluator.evaluate(bound, Limits.USUAL.events(), 1_000_000);
        assertEquals("", difference(fast, plain), name);
        return new Both(fast, plain);
    }

    /** {@return a procedure on a network, bound for the plain evaluator and by its own rules} */
    static Bound bound(Procedure procedure, Network network, Procedure.Proof proof) {
        PlainBinding.Result plain = PlainBinding.bind(procedure, network, proof);
        return plain.bound().orElseThrow(() -> new IllegalStateException("the plain evaluator cannot bind it: " + plain.reasons()));
    }

    /** {@return how the two differ, in words; empty if they do not} */
    static String difference(Outcome fast, PlainResult plain) {
        StringBuilder all = new StringBuilder();
        Map<PlainPlace, PlainResult.Root> places = places(fast);
        Map<PlainPlace, PlainResult.Root> plainly = new TreeMap<>();
        plain.places().forEach((place, root) -> plainly.put(
                place,
                new PlainResult.Root(
                        root.length(),
                        places.containsKey(place) ? places.get(place).step() : root.step(),
                        places.containsKey(place) && places.get(place).bindings() < 0 ? -1 : root.bindings(),
                        root.stops())));
        differ(all, "root findings, the length of the way there and the bindings", plainly, places);
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

    /** {@return the lengths by name, see {@link PlainResult#roots}} */
    static Map<String, Integer> roots(Outcome outcome) {
        return new PlainResult(0, ImmutableMap.copyOf(places(outcome)), ImmutableSet.of(), ImmutableSet.of(), true).roots();
    }

    private static Map<PlainPlace, PlainResult.Root> places(Outcome outcome) {
        Map<PlainPlace, PlainResult.Root> all = new TreeMap<>();
        for (Finding finding : Iterables.concat(outcome.findings(), outcome.notes())) {
            int length = finding.kind() == Finding.Kind.STUCK
                    ? finding.trace().size() - 1
                    : finding.trace().size();
            PlainPlace place = new PlainPlace(
                    finding.kind().word(),
                    finding.rulebook().orElse(""),
                    finding.rule().map(Rule::name).orElse(""),
                    finding.severity() == Rule.Severity.STOP ? step(finding, outcome) : "");
            boolean stops = finding.severity() == Rule.Severity.STOP;
            int bindings = finding.rule().isPresent() && stops ? finding.others() + 1 : 0;
            // The plain evaluator does not tell phases apart: bindings are counted only where a step has one place.
            all.merge(
                    place,
                    new PlainResult.Root(length, finding.stepNumber(), bindings, stops),
                    (a, b) -> new PlainResult.Root(
                            Math.min(a.length(), b.length()), a.length() <= b.length() ? a.step() : b.step(), finding.rule().isPresent() ? -1 : 0, stops));
        }
        return all;
    }

    private static Set<String> named(Outcome outcome, RuleResult.Verdict verdict) {
        Set<String> all = new TreeSet<>();
        outcome.rules().stream()
                .filter(r -> r.verdict() == verdict)
                .forEach(r -> all.add(qualified(r)));
        return all;
    }

    private static String step(Finding finding, Outcome outcome) {
        if (finding.stepNumber() < 0) {
            return "";
        }
        // The steps of events are not among those of the procedure; the way ends with one.
        return finding.stepNumber() < outcome.steps().size()
                ? PlainPlace.words(outcome.steps().get(finding.stepNumber()))
                : finding.step() + ":" + finding.trace().get(finding.trace().size() - 1).line();
    }

    private static String qualified(RuleResult rule) {
        return rule.rulebook() + "/" + rule.rule().name();
    }

    /** A broken rule was exercised too; the fast evaluator does not say so of rules broken as unknown. */
    private static Set<String> exercised(Outcome outcome, PlainResult plain) {
        Set<String> all = named(outcome, RuleResult.Verdict.HOLDS);
        for (RuleResult rule : outcome.rules()) {
            boolean broken = rule.verdict() == RuleResult.Verdict.BROKEN
                    || rule.verdict() == RuleResult.Verdict.ONLY_AFTER;
            if (broken && plain.exercised().contains(qualified(rule))) {
                all.add(qualified(rule));
            }
        }
        return all;
    }
}
