package org.keeplit.plain;

import java.util.Map;
import java.util.TreeMap;
import org.keeplit.outcome.Outcome;
import org.keeplit.outcome.RuleResult;
import org.keeplit.outcome.TraceStep;

/** Counts what came up in a run of made cases, to know that the run could have found something. */
final class Spread {
    private final Map<String, Integer> counts = new TreeMap<>();
    private int ran;
    private int held;

    void add(Comparison one) {
        if (!one.ran()) {
            count(one.kind().toString());
            return;
        }
        ran++;
        held += one.holds() ? 1 : 0;
        Outcome fast = one.fast();
        count("depth " + Math.min(fast.depth() / 5 * 5, 30));
        count("branching " + Math.min(5, fast.transitions() * 2 / Math.max(1, fast.states())) / 2.0);
        one.plain().roots().keySet().forEach(r -> count("root " + r.replaceAll(" \\d+", "")));
        if (one.trips()) {
            count("something may trip");
        }
        if (fast.findings().stream().anyMatch(f -> f.trace().stream().anyMatch(TraceStep::byItself))) {
            count("something trips on the way to a finding");
        }
        for (RuleResult rule : fast.rules()) {
            if (!rule.rulebook().equals("made")) {
                boolean broken = rule.finding().isPresent();
                count((broken ? "broken " : "held ") + rule.rule().name(),
                        broken || rule.verdict() == RuleResult.Verdict.HOLDS);
            }
        }
    }

    private void count(String what) {
        counts.merge(what, 1, Integer::sum);
    }

    private void count(String what, boolean really) {
        counts.merge(what, really ? 1 : 0, Integer::sum);
    }

    int ran() {
        return ran;
    }

    int held() {
        return held;
    }

    int of(String what) {
        return counts.getOrDefault(what, 0);
    }

    Map<String, Integer> counts() {
        return counts;
    }
}
