package org.keeplit.recheck;

import com.google.common.collect.ImmutableList;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import org.keeplit.plain.PlainBinding;
import org.keeplit.plain.PlainEvaluator;
import org.keeplit.plain.PlainResult;
import org.keeplit.plain.PlainState;
import org.keeplit.plain.PlainWatcher;
import org.keeplit.procedure.Instance;
import org.keeplit.rule.Rule;

/** One re-check: what the plain evaluator meets, held against the proof as it comes. */
final class Rechecking implements PlainWatcher {
    private static final int TOLD = 3;

    private final ProofFile proof;
    private final Map<String, Integer> numbers = new HashMap<>();
    private final Map<String, Integer> met = new HashMap<>();
    private final List<String> wrong = new ArrayList<>();
    private final Recheck.Going going;
    private final long until;
    private int states;
    private boolean cut;
    private boolean unsolved;

    Rechecking(ProofFile proof, Duration most, Recheck.Going going) {
        this.proof = proof;
        this.going = going;
        this.until = System.nanoTime() + most.toNanos();
        for (int i = 0; i < proof.facts().size(); i++) {
            numbers.put(proof.facts().get(i), i + 1);
        }
    }

    Rechecked run(Instance instance) {
        String place = instance.words();
        PlainBinding.Result bound = PlainBinding.bind(instance.procedure(), instance.network(), instance.proof());
        if (bound.bound().isEmpty()) {
            return Rechecked.refused(place, 0, bound.reasons());
        }
        PlainResult found = PlainEvaluator.evaluate(bound.bound().get(), proof.head().events(), Integer.MAX_VALUE, this);
        found.places().forEach((at, root) -> {
            if (root.stops()) {
                String name = at.name().isEmpty() ? at.sort() : at.rulebook() + "/" + at.name();
                wrong.add("broken: " + name + ", after " + root.length() + (root.length() == 1 ? " act" : " acts"));
            }
        });
        boolean asked = instance.procedure().keeps().stream()
                .anyMatch(book -> book.rules().stream()
                        .anyMatch(rule -> rule.severity() == Rule.Severity.STOP
                                && found.exercised().contains(book.name() + "/" + rule.name())));
        if (found.complete() && wrong.isEmpty() && !asked) {
            wrong.add("no rule that stops came up, so nothing was asked");
        }
        if (unsolved) {
            wrong.add("a load flow has no solution, so nothing is shown there");
        }
        if (wrong.isEmpty() && found.complete()) {
            unmet();
        }
        if (!wrong.isEmpty()) {
            return Rechecked.refused(place, states, wrong);
        }
        return new Rechecked(place, cut ? Rechecked.Status.UNDECIDED : Rechecked.Status.CONFIRMED, states, ImmutableList.of());
    }

    @Override
    public void begins(UnaryOperator<String> valueOf) {
        proof.start().forEach((fact, value) -> {
            String now = valueOf.apply(fact);
            if (!value.equals(now)) {
                wrong.add("the start: " + fact + " is " + now + " there, and the proof has " + value);
            }
        });
    }

    @Override
    public boolean met(PlainState state) {
        states++;
        List<Integer> facts = new ArrayList<>();
        String unknown = null;
        for (String fact : state.facts()) {
            Integer number = numbers.get(fact);
            if (number == null) {
                unknown = fact;
            } else {
                facts.add(number);
            }
        }
        String words = StateLine.of(state.left(), facts.stream().sorted().toList());
        ProofFile.Held held = unknown == null ? proof.states().get(words) : null;
        if (held == null || met.merge(words, 1, Integer::sum) > held.times()) {
            wrong.add("a state that may come up is missing from it" + (unknown == null ? "" : ", with " + unknown + " for the first time")
                    + ": " + said(state));
            return false;
        }
        cut = System.nanoTime() > until || !going.on(states, proof.count());
        return !cut && wrong.isEmpty();
    }

    private static String said(PlainState state) {
        String facts = String.join(", ", state.facts());
        return (facts.isEmpty() ? "all as at the start" : facts) + "; acts left: " + StateLine.of(state.left(), List.of()).replace(" :", "");
    }

    @Override
    public void unsolved() {
        unsolved = true;
    }

    /** Tells the states of the proof that never come up. */
    private void unmet() {
        List<Integer> lines = new ArrayList<>();
        long more = 0;
        for (Map.Entry<String, ProofFile.Held> entry : proof.states().entrySet()) {
            int missing = entry.getValue().times() - met.getOrDefault(entry.getKey(), 0);
            if (missing > 0) {
                lines.add(entry.getValue().line());
                more += missing;
            }
        }
        if (more > 0) {
            wrong.add(more + (more == 1 ? " state of it never comes up" : " states of it never come up") + ": line "
                    + lines.stream().limit(TOLD).map(String::valueOf).collect(Collectors.joining(", "))
                    + (lines.size() > TOLD ? " and others" : ""));
        }
    }
}
