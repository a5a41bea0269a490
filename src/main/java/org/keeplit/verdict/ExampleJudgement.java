package org.keeplit.verdict;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.keeplit.condition.Truth;
import org.keeplit.outcome.Finding;
import org.keeplit.outcome.Found;
import org.keeplit.outcome.RuleResult;
import org.keeplit.outcome.RuleSeen;
import org.keeplit.outcome.Why;
import org.keeplit.procedure.Example;
import org.keeplit.procedure.Instance;

/**
 * What came of one example.
 *
 * @param group the name of the examples that it belongs to
 * @param example the example
 * @param judgement the verdict on it as a procedure
 * @param differences how what came differs from what it states; none if it passed
 * @param seen for each rule that it keeps which answers its questions had
 */
public record ExampleJudgement(
        String group,
        Example example,
        Judgement judgement,
        ImmutableList<String> differences,
        ImmutableList<RuleSeen> seen) {

    /**
     * Judges an example.
     *
     * @param group the name of the examples that it belongs to
     * @param example the example
     * @param instance the example as a procedure, from one of its starts
     * @param run what the exploration found
     * @return what came of it
     */
    public static ExampleJudgement of(String group, Example example, Instance instance, Found run) {
        Judgement judgement = Judgement.of(instance, run.outcome());
        ImmutableList<RuleSeen> seen = run.seen();
        List<String> differences = new ArrayList<>(judgement.differences());
        if (example.mustHold()) {
            run.outcome().findings().forEach(f -> differences.add("it fails on " + Expected.words(f)));
            judgement.notExercised().stream()
                    .map(r -> r.rule().name())
                    .filter(example.of()::contains)
                    .filter(name -> seen.stream().noneMatch(s -> s.rule().name().equals(name) && s.isExcused()))
                    .forEach(name -> differences.add("the case of " + name + " never comes up in it, so it shows nothing"));
        }
        for (Example.Breaks breaks : example.breaks()) {
            reasons(run, breaks, found(run, breaks), differences);
        }
        return new ExampleJudgement(
                group, example, judgement, ImmutableList.copyOf(differences), seen);
    }

    private static List<Finding> found(Found run, Example.Breaks breaks) {
        return Stream.concat(
                        run.outcome().findings().stream(), run.outcome().notes().stream())
                .filter(f -> Expected.matches(breaks.what(), f))
                .toList();
    }

    /** A break that came as stated may still have come for another reason. */
    private static void reasons(
            Found run, Example.Breaks breaks, List<Finding> found, List<String> differences) {
        if (found.isEmpty()) {
            return;
        }
        String rule = breaks.what().rule();
        Finding first = found.get(0);
        breaks.says().filter(s -> found.stream().noneMatch(f -> s.equals(f.sentence()))).ifPresent(s -> differences.add(
                rule + " does not say \"" + s + "\", but \"" + first.sentence() + "\""));
        if (breaks.bindings().isEmpty() && breaks.because().isEmpty()) {
            return;
        }
        Optional<ImmutableList<Why>> whys = found.stream()
                .flatMap(f -> run.reasons(f, breaks.bindings(), breaks.because()).stream())
                .findFirst();
        if (whys.isEmpty()) {
            differences.add(rule + " is not broken for " + words(breaks.bindings()) + ", but for "
                    + words(first.bindings()));
            return;
        }
        for (Why why : whys.get()) {
            if (why.truth() != Truth.TRUE) {
                differences.add("the reason stated for " + rule + " is "
                        + (why.truth() == Truth.UNKNOWN ? "not known to be so: " : "not so: ") + why.text());
            }
        }
    }

    private static String words(Map<String, String> bindings) {
        return bindings.isEmpty()
                ? "nothing in particular"
                : bindings.entrySet().stream()
                        .map(e -> e.getKey() + " = " + e.getValue())
                        .collect(Collectors.joining(", "));
    }

    /** {@return whether a limit was reached before anything was shown} */
    public boolean isUndecided() {
        return differences.isEmpty() && judgement.status() == Judgement.Status.UNDECIDED;
    }

    /** {@return whether it came as it states} */
    public boolean isPassed() {
        return differences.isEmpty() && !isUndecided();
    }

    /**
     * {@return whether it shows a rule kept}
     *
     * @param rule the rule's name
     */
    public boolean keeps(String rule) {
        return isPassed()
                && example.mustHold()
                && judgement.outcome().rules().stream()
                        .anyMatch(r -> r.rule().name().equals(rule) && r.verdict() == RuleResult.Verdict.HOLDS);
    }

    /**
     * {@return whether it shows a rule broken}
     *
     * @param rule the rule's name
     */
    public boolean breaks(String rule) {
        return isPassed()
                && example.breaks().stream().anyMatch(b -> b.what().rule().equals(rule));
    }

    /** {@return the verdict with every difference, told as broken, so that its story can be told} */
    Judgement failed() {
        return new Judgement(judgement.instance(), judgement.outcome(), Judgement.Status.BROKEN, differences);
    }
}
