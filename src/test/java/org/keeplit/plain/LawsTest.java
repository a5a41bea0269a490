package org.keeplit.plain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.UnaryOperator;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.ShrinkingMode;
import net.jqwik.api.lifecycle.AfterProperty;
import org.keeplit.explore.Proving;
import org.keeplit.outcome.Limits;
import org.keeplit.outcome.Outcome;
import org.keeplit.outcome.RuleResult;
import org.keeplit.outcome.Watcher;
import org.keeplit.text.Problems;

/** What may be said in other words comes to the same. */
class LawsTest {
    private static final int TRIES = 120;
    private int compared;
    private int broken;
    private boolean failed;

    /** What was found, in a form that can be compared. */
    private record Found(Map<String, Integer> roots, Set<String> rulesBroken, int states) {}

    private Optional<Found> find(MadeCase made) {
        MadeCase.Read read;
        try {
            read = made.read();
        } catch (IllegalArgumentException refused) {
            return Optional.empty();
        }
        Limits limits = new Limits(4000, Limits.USUAL.time(), Limits.USUAL.bytes());
        Optional<Outcome> outcome = Proving.prove(
                read.procedure(), read.network(), read.procedure().proofs().get(0), limits, Watcher.NOBODY, new Problems());
        return outcome.filter(o -> o.cut().isEmpty()).map(o -> {
            Set<String> rules = new TreeSet<>();
            o.rules().stream()
                    .filter(r -> r.verdict() == RuleResult.Verdict.BROKEN || r.verdict() == RuleResult.Verdict.ONLY_AFTER)
                    .forEach(r -> rules.add(r.rule().name()));
            return new Found(Agreement.roots(o), rules, o.states());
        });
    }

    /** Steps are numbered as they are written out, phase A first. */
    private static Found withoutSteps(Found found) {
        Map<String, Integer> roots = new TreeMap<>();
        found.roots().forEach((root, length) -> roots.merge(root.replaceAll(" \\d+$", ""), length, Math::min));
        return new Found(roots, found.rulesBroken(), found.states());
    }

    private void same(long seed, MadeCase one, MadeCase other) {
        same(seed, one, other, found -> found);
    }

    private void same(long seed, MadeCase one, MadeCase other, UnaryOperator<Found> seenAs) {
        Optional<Found> before = find(one).map(seenAs);
        Optional<Found> after = find(other).map(seenAs);
        if (before.isPresent() || after.isPresent()) {
            failed = true;
            assertEquals(before, after, () -> "seed " + seed + "\n" + one + "\n" + other);
            failed = false;
            compared++;
            broken += before.get().roots().isEmpty() ? 0 : 1;
        }
    }

    private static MadeCase made(long seed) {
        return CaseMaker.make(new Draw(seed));
    }

    @Property(tries = TRIES, seed = "41", shrinking = ShrinkingMode.OFF)
    void phasesMayBeRotated(@ForAll long seed) {
        MadeCase made = Rewriting.withoutOrderOfPhases(made(seed));
        same(seed, made, Rewriting.phases(made, "BCA"), LawsTest::withoutSteps);
    }

    /** Mirrored with the sequence: no load is asked for, since loads want theirs. */
    @Property(tries = 2 * TRIES, seed = "42", shrinking = ShrinkingMode.OFF)
    void phasesMayBeMirrored(@ForAll long seed) {
        MadeCase made = Rewriting.withoutOrderOfPhases(made(seed));
        if (made.toString().contains("supplied") || made.books().contains("no-interruption")) {
            return;
        }
        List<MadeElement> elements = made.elements().stream()
                .map(e -> new MadeElement(
                        e.kind(), e.name(), e.from(), e.to(), e.phases(), e.more().stream().map(LawsTest::otherClock).toList()))
                .toList();
        same(seed, made, Rewriting.phases(made.withElements(elements), "CBA"), LawsTest::withoutSteps);
    }

    private static String otherClock(String attribute) {
        return attribute.equals("clock 1") ? "clock 11" : attribute.equals("clock 11") ? "clock 1" : attribute;
    }

    @Property(tries = TRIES, seed = "43", shrinking = ShrinkingMode.OFF)
    void aLineMayBeSplit(@ForAll long seed) {
        MadeCase made = made(seed);
        List<MadeElement> elements = new ArrayList<>();
        made.elements().forEach(e -> {
            if (e.kind().equals("line") || e.kind().equals("cable")) {
                elements.add(e.with(e.from(), "half-" + e.name()));
                elements.add(new MadeElement(
                        e.kind(), "rest-" + e.name(), "half-" + e.name(), e.to(), e.phases(), e.more()));
            } else {
                elements.add(e);
            }
        });
        same(seed, made, made.withElements(elements));
    }

    @Property(tries = TRIES, seed = "44", shrinking = ShrinkingMode.OFF)
    void aDeadLateralChangesNothing(@ForAll long seed) {
        MadeCase made = made(seed).withRules(List.of("no-interruption", "live-line", "tagging"), List.of());
        List<MadeElement> elements = new ArrayList<>(made.elements());
        MadeElement source = elements.get(0);
        elements.add(new MadeElement("cutout", "lateral", source.from(), "far-1", "B", List.of("open")));
        elements.add(new MadeElement("line", "l-far", "far-1", "far-2", "B", List.of("length 1 km")));
        same(seed, made, made.withElements(elements));
    }

    @Property(tries = TRIES, seed = "45", shrinking = ShrinkingMode.OFF)
    void declarationsMayChangePlaces(@ForAll long seed) {
        MadeCase made = made(seed);
        same(seed, made, made.withElements(new Draw(seed).shuffled(made.elements())));
    }

    @Property(tries = TRIES, seed = "46", shrinking = ShrinkingMode.OFF)
    void namesMeanNothing(@ForAll long seed) {
        MadeCase made = made(seed);
        same(seed, made, Rewriting.renamed(made));
    }

    @Property(tries = TRIES, seed = "47", shrinking = ShrinkingMode.OFF)
    void freedomOnlyAddsFindings(@ForAll long seed) {
        MadeCase made = made(seed);
        if (made.parts().size() > 6) {
            made = made.withParts(made.parts().subList(0, 6));
        }
        Optional<Found> tight = Optional.empty();
        for (String order : List.of("in order", "in any order", "together")) {
            Optional<Found> loose = find(Rewriting.allInOrder(made, order));
            if (tight.isPresent() && loose.isPresent()) {
                Map<String, Integer> more = loose.get().roots();
                String name = "seed " + seed + " " + order + ": " + tight.get().roots() + " and " + more;
                tight.get().roots().forEach((root, length) ->
                        assertTrue(root.startsWith("stuck") || more.getOrDefault(root, Integer.MAX_VALUE) <= length, name));
                compared++;
                broken += more.isEmpty() ? 0 : 1;
            }
            tight = loose;
        }
    }

    @Property(tries = TRIES, seed = "48", shrinking = ShrinkingMode.OFF)
    void anAddedRuleChangesNoOther(@ForAll long seed) {
        MadeCase made = made(seed).withRules(List.of("no-interruption", "good-housekeeping"), List.of());
        MadeCase more = made.withRules(made.books(), new RuleMaker(new Draw(seed)).rules(2));
        Optional<Found> before = find(made);
        Optional<Found> after = find(more);
        if (before.isPresent() && after.isPresent()) {
            Set<String> others = new TreeSet<>(after.get().rulesBroken());
            boolean addedHolds = others.stream().noneMatch(r -> r.startsWith("made-"));
            others.removeIf(r -> r.startsWith("made-"));
            assertEquals(before.get().rulesBroken(), others, () -> "seed " + seed + "\n" + more);
            if (addedHolds) {
                assertEquals(before.get().roots(), after.get().roots(), () -> "seed " + seed + "\n" + more);
            }
            after.get().roots().forEach((root, length) -> assertTrue(
                    root.startsWith("made-") || before.get().roots().getOrDefault(root, 99) <= length, "seed " + seed));
            compared++;
            broken += after.get().roots().isEmpty() ? 0 : 1;
        }
    }

    @AfterProperty
    void muchWasCompared() {
        assertTrue(failed || compared > 40, "only " + compared + " compared");
        assertTrue(failed || broken > 10, "only " + broken + " of " + compared + " break anything");
    }
}
