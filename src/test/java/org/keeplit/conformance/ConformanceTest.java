package org.keeplit.conformance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.keeplit.Keeplit;
import org.keeplit.language.Library;
import org.keeplit.language.Reader;
import org.keeplit.outcome.Finding;
import org.keeplit.outcome.Limits;
import org.keeplit.outcome.Outcome;
import org.keeplit.outcome.RuleResult;
import org.keeplit.outcome.Watcher;
import org.keeplit.plain.PlainEvaluator;
import org.keeplit.plain.PlainResult;
import org.keeplit.procedure.Binding;
import org.keeplit.procedure.Unjudged;
import org.keeplit.text.Problem;
import org.keeplit.text.Problems;
import org.keeplit.text.Source;
import org.keeplit.verdict.Judgement;

/** Holds the program to the conformance kit, whose expectations were derived from the written meaning alone. */
class ConformanceTest {
    /** At least so many cases there must be. */
    private static final int LEAST = 150;

    @TestFactory
    Stream<DynamicTest> theProgramFindsWhatThePageSays() throws IOException {
        return Kit.cases().values().stream()
                .map(one -> DynamicTest.dynamicTest(
                        one.name() + ": " + one.title(), () -> assertEquals(List.of(), differences(one), one.name())));
    }

    @TestFactory
    Stream<DynamicTest> thePlainEvaluatorFindsWhatThePageSays() throws IOException {
        return Kit.cases().values().stream()
                .map(one -> DynamicTest.dynamicTest(
                        one.name() + ": " + one.title(), () -> assertEquals(List.of(), plainDifferences(one), one.name())));
    }

    @TestFactory
    Stream<DynamicTest> theNumbersAreThoseOfTheBruteForce() throws IOException {
        return Kit.cases().values().stream()
                .filter(one -> one.expected().stream().anyMatch(e -> !e.ways().isEmpty()))
                .map(one -> DynamicTest.dynamicTest(one.name() + ": " + one.title(), () -> one.expected().forEach(e -> {
                    if (!e.ways().isEmpty()) {
                        Orders.Counted counted = Orders.count(e.ways());
                        BigInteger orders = e.orders().orElseThrow(() -> new AssertionError("acts, and no number of orders"));
                        assertEquals(orders, counted.orders(), one.name() + ": complete orders");
                        e.sets().or(e::states).ifPresent(n -> assertEquals(n, counted.sets(), one.name() + ": sets of done acts"));
                    }
                })));
    }

    @Test
    void theKitIsWhole() throws IOException {
        Map<String, Kit.Case> cases = Kit.cases();
        assertTrue(cases.size() >= LEAST, cases.size() + " cases");
        List<String> titles = cases.values().stream().map(Kit.Case::title).toList();
        assertEquals(titles.size(), Set.copyOf(titles).size(), "two cases have one title");
    }

    @TestFactory
    Stream<DynamicTest> aWrongExpectationIsNoticed() throws IOException {
        return Kit.cases().values().stream()
                .filter(one -> one.expected().size() == 1)
                .map(one -> DynamicTest.dynamicTest(one.name() + ": " + one.title(), () -> {
                    for (Kit.Expectation wrong : one.expected().get(0).wrong()) {
                        Kit.Case changed = one.expecting(wrong);
                        assertFalse(differences(changed).isEmpty(), () -> one.name() + " also passes with " + wrong);
                    }
                }));
    }

    @Test
    void everyTopicOfThePageHasACase() throws IOException {
        Set<String> covered = new TreeSet<>();
        Kit.cases().values().forEach(one -> covered.addAll(one.covers()));
        assertEquals(Kit.topics().keySet(), covered);
    }

    /** {@return how what the program says differs from what is expected; nothing if it does not} */
    private static List<String> differences(Kit.Case one) {
        Library library = library(one);
        Problems problems = new Problems();
        library.problems().forEach(problems::add);
        List<Judgement> all = Keeplit.check(library, Limits.USUAL, Watcher.NOBODY, problems).stream()
                .filter(j -> one.judged().map(j.procedure().name()::equals).orElse(true))
                .toList();
        List<Problem> errors = problems.sorted().stream()
                .filter(p -> p.severity() == Problem.Severity.ERROR)
                .toList();
        if (one.expected().size() == 1 && all.isEmpty() && errors.isEmpty()) {
            return withoutPlace(one, library);
        }
        if (one.expected().size() == 1 && all.stream().allMatch(ConformanceTest::isUnjudged)) {
            return unjudged(one.expected().get(0), errors);
        }
        List<String> differences = new ArrayList<>();
        if (all.size() != one.expected().size()) {
            differences.add(all.size() + " verdicts instead of " + one.expected().size() + ", " + words(errors));
        }
        for (int i = 0; i < Math.min(all.size(), one.expected().size()); i++) {
            compare(one.expected().get(i), all.get(i), errors, differences);
        }
        return differences;
    }

    /** {@return how it differs where nothing is judged, and no mistake is told} */
    private static List<String> withoutPlace(Kit.Case one, Library library) {
        boolean told = library.unjudged().stream()
                .anyMatch(u -> one.judged().map(u.name()::equals).orElse(true) && u.reason() == Unjudged.Reason.NO_PLACE);
        Kit.Expectation nothing = Kit.Expectation.nothing("not proved");
        return told && one.expected().get(0).equals(nothing)
                ? List.of()
                : List.of((told ? nothing : "nothing") + " instead of " + one.expected().get(0));
    }

    private static boolean isUnjudged(Judgement found) {
        return verdict(found).equals("not judged");
    }

    private static String verdict(Judgement found) {
        return found.status().name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }

    private static Library library(Kit.Case one) {
        return new Reader().readSources(one.files().entrySet().stream()
                .map(e -> new Source(e.getKey(), e.getValue()))
                .toList());
    }

    private static List<String> unjudged(Kit.Expectation expected, List<Problem> errors) {
        boolean refused = expected.verdict().equals("mistake") || expected.verdict().equals("not judged");
        if (!refused || errors.isEmpty()) {
            return List.of("no verdict instead of " + expected.verdict() + ", " + words(errors));
        }
        boolean told = expected.mistake()
                .map(m -> errors.stream().anyMatch(p -> p.span().source().name().equals(m.file())
                        && (m.line() == 0 || m.line() == p.span().line())))
                .orElse(true);
        return told ? List.of() : List.of("the mistake is told elsewhere: " + words(errors));
    }

    private static String words(List<Problem> errors) {
        return errors.stream().map(p -> p.span() + ": " + p.message()).collect(Collectors.joining("; "));
    }

    private static void compare(Kit.Expectation expected, Judgement found, List<Problem> errors, List<String> differences) {
        String verdict = verdict(found);
        if (!verdict.equals(expected.verdict())) {
            differences.add("the verdict is \"" + verdict + "\"" + (errors.isEmpty() ? "" : ", " + words(errors)));
        }
        Outcome outcome = found.outcome();
        differ("root", expected.roots(), outcome.findings(), outcome, differences);
        differ("note", expected.notes(), outcome.notes(), outcome, differences);
        differ("by an event", expected.byEvent(), outcome.byEvent(), outcome, differences);
        expected.states().filter(n -> n != outcome.states()).ifPresent(n -> differences.add(outcome.states() + " states instead of " + n));
        if (expected.states().isPresent() && expected.sets().isEmpty() && !expected.ways().isEmpty()) {
            int moves = Orders.count(expected.ways()).moves();
            if (moves != outcome.transitions()) {
                differences.add(outcome.transitions() + " moves from state to state instead of " + moves);
            }
        }
    }

    private static void differ(
            String what, List<Kit.Place> expected, List<Finding> found, Outcome outcome, List<String> differences) {
        List<Kit.Place> places = found.stream().map(f -> place(f, outcome)).distinct().toList();
        expected.stream()
                .filter(e -> places.stream().noneMatch(e::is))
                .forEach(e -> differences.add("missing " + what + ": " + e));
        places.stream()
                .filter(p -> expected.stream().noneMatch(e -> e.is(p)))
                .forEach(p -> differences.add("besides " + what + ": " + p));
    }

    private static Kit.Place place(Finding finding, Outcome outcome) {
        String what = finding.kind().word();
        if (finding.rule().isPresent()) {
            String book = outcome.rules().stream()
                    .filter(r -> r.rule() == finding.rule().get())
                    .map(RuleResult::rulebook)
                    .findFirst()
                    .orElse("?");
            what += " " + book + " " + finding.rule().get().name();
        }
        return new Kit.Place(
                what,
                finding.step().isEmpty() ? "start" : finding.step(),
                finding.phase().map(Object::toString).orElse(""));
    }

    /** {@return how the plain evaluator differs, of which only names of rules and kinds, and the number of states, are known} */
    private static List<String> plainDifferences(Kit.Case one) {
        Library library = library(one);
        List<String> differences = new ArrayList<>();
        Problems problems = new Problems();
        List<Judgement> all = Keeplit.check(library, Limits.USUAL, Watcher.NOBODY, problems).stream()
                .filter(j -> one.judged().map(j.procedure().name()::equals).orElse(true))
                .toList();
        for (int i = 0; i < Math.min(all.size(), one.expected().size()); i++) {
            Kit.Expectation expected = one.expected().get(i);
            PlainResult plain = PlainEvaluator.evaluate(
                    Binding.bind(
                                    all.get(i).procedure(),
                                    all.get(i).instance().network(),
                                    all.get(i).instance().proof(),
                                    problems)
                            .orElseThrow(),
                    Limits.USUAL.events(),
                    100_000);
            Set<String> names = new TreeSet<>();
            Stream.concat(expected.roots().stream(), expected.notes().stream()).forEach(p -> names.add(name(p)));
            Set<String> found = new TreeSet<>();
            plain.roots().keySet().forEach(key -> found.add(key.replaceAll(" \\d+$", "")));
            if (!names.equals(found)) {
                differences.add("roots " + found + " instead of " + names);
            }
            expected.states().filter(n -> n != plain.states()).ifPresent(n -> differences.add(plain.states() + " states instead of " + n));
        }
        return differences;
    }

    /** {@return the rule's name, or the kind's word} */
    private static String name(Kit.Place place) {
        return place.what().substring(place.what().lastIndexOf(' ') + 1);
    }
}
