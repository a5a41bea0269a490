package org.keeplit.recheck;

import com.google.common.collect.ImmutableList;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import org.keeplit.page.InputHash;
import org.keeplit.plain.PlainEvaluator;
import org.keeplit.plain.PlainResult;
import org.keeplit.plain.PlainState;
import org.keeplit.plain.PlainWatcher;
import org.keeplit.procedure.Binding;
import org.keeplit.procedure.Bound;
import org.keeplit.procedure.Instance;
import org.keeplit.rule.Rule;
import org.keeplit.text.Problems;

/**
 * Goes through a procedure with the plain evaluator and holds every state that it meets against a written proof: the start is among its
 * states, so is whatever may follow one of them, nothing is broken in any, and it has no others.
 */
public final class Recheck implements PlainWatcher {
    private static final int TOLD = 3;

    /** Is told how far a re-check has come. */
    @FunctionalInterface
    public interface Going {
        /**
         * {@return whether to go on}
         *
         * @param met how many states were met
         * @param written how many the proof has
         */
        boolean on(int met, long written);
    }

    private final ProofFile proof;
    private final Map<String, Integer> numbers = new HashMap<>();
    private final Map<String, Integer> met = new HashMap<>();
    private final List<String> wrong = new ArrayList<>();
    private final Going going;
    private final long until;
    private int states;
    private boolean cut;
    private boolean unsolved;

    private Recheck(ProofFile proof, Duration most, Going going) {
        this.proof = proof;
        this.going = going;
        this.until = System.nanoTime() + most.toNanos();
        for (int i = 0; i < proof.facts().size(); i++) {
            numbers.put(proof.facts().get(i), i + 1);
        }
    }

    /**
     * Re-checks.
     *
     * @param proof the proof
     * @param all the procedures that were read, each on its places
     * @param most how long to go on at most
     * @param going is told how it gets on; may stop it
     * @return what came of it
     */
    public static Rechecked of(ProofFile proof, List<Instance> all, Duration most, Going going) {
        String place = proof.head().place();
        List<Instance> named = all.stream().filter(i -> i.words().equals(place)).toList();
        if (named.isEmpty()) {
            String others = all.stream().map(Instance::words).distinct().limit(TOLD).collect(Collectors.joining("; "));
            return Rechecked.refused(place, 0, List.of(others.isEmpty()
                    ? "no procedure was read that says what it is proved on; give the files that were proved after --with"
                    : "it is not among the files that were read; there is " + others));
        }
        List<Instance> same = named.stream().filter(i -> InputHash.of(i).equals(proof.head().input())).toList();
        if (same.isEmpty()) {
            return Rechecked.refused(place, 0, changed(proof, named.get(0)));
        }
        return new Recheck(proof, most, going).run(same.get(0));
    }

    /** {@return which files are others than those that were proved} */
    private static List<String> changed(ProofFile proof, Instance instance) {
        Set<String> then = new TreeSet<>(proof.head().files());
        Set<String> now = new TreeSet<>(InputHash.files(instance));
        List<String> told = new ArrayList<>();
        for (String file : then) {
            String name = name(file);
            if (!now.contains(file)) {
                told.add(name + (now.stream().anyMatch(n -> name(n).equals(name))
                        ? " was changed since the proof was written"
                        : " was read for the proof, and is not read now"));
            }
        }
        now.stream()
                .filter(n -> then.stream().noneMatch(t -> name(t).equals(name(n))))
                .forEach(n -> told.add(name(n) + " is read now, and was not read for the proof"));
        return told.isEmpty() ? List.of("the hash of all that is read is " + InputHash.of(instance) + ", and the proof is of " + proof.head().input()) : told;
    }

    private static String name(String file) {
        return file.substring(file.indexOf(' ') + 1);
    }

    private Rechecked run(Instance instance) {
        String place = instance.words();
        Problems problems = new Problems();
        Bound bound = Binding.bind(instance.procedure(), instance.network(), instance.proof(), problems).orElse(null);
        if (bound == null) {
            return Rechecked.refused(place, 0, problems.sorted().stream().map(p -> p.message()).toList());
        }
        PlainResult found = PlainEvaluator.evaluate(bound, proof.head().events(), Integer.MAX_VALUE, this);
        found.roots().forEach((name, length) -> {
            if (isStop(instance, name)) {
                wrong.add("broken: " + name + ", after " + length + (length == 1 ? " act" : " acts"));
            }
        });
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

    /** {@return whether what was found breaks the proof: anything but a rule that is only a caution or advice} */
    private static boolean isStop(Instance instance, String name) {
        return instance.procedure().keeps().stream()
                .flatMap(book -> book.rules().stream())
                .noneMatch(rule -> rule.name().equals(name) && rule.severity() != Rule.Severity.STOP);
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
