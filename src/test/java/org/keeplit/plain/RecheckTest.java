package org.keeplit.plain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;
import java.util.TreeMap;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.ShrinkingMode;
import net.jqwik.api.Tag;
import net.jqwik.api.lifecycle.AfterProperty;
import org.keeplit.explore.Explored;
import org.keeplit.explore.Proving;
import org.keeplit.outcome.Limits;
import org.keeplit.outcome.Outcome;
import org.keeplit.outcome.Watcher;
import org.keeplit.procedure.Bound;
import org.keeplit.procedure.Instance;
import org.keeplit.proof.ProofMaker;
import org.keeplit.recheck.ProofFile;
import org.keeplit.recheck.ProofReader;
import org.keeplit.recheck.Recheck;
import org.keeplit.recheck.Rechecked;
import org.keeplit.recheck.StateLine;
import org.keeplit.text.Problems;
import org.keeplit.text.Source;

/** Proofs of made cases are confirmed, and what was tampered with is refused, however well it is sealed. */
class RecheckTest {
    private static final int MOST_STATES = 400;
    private static final Duration LONG = Duration.ofMinutes(5);

    private final Map<String, Integer> came = new TreeMap<>();
    private boolean failed;

    @Provide
    Arbitrary<Long> seeds() {
        return Arbitraries.longs();
    }

    @Property(tries = 400, seed = "20261126", shrinking = ShrinkingMode.OFF)
    void whatHoldsIsConfirmedAndWhatWasTamperedWithIsNot(@ForAll("seeds") long seed) {
        both(seed);
    }

    @Tag("long")
    @Property(tries = 2000, seed = "5", shrinking = ShrinkingMode.OFF)
    void soItIsInTheLongRun(@ForAll("seeds") long seed) {
        both(seed);
    }

    /** Something that always comes up and is kept, so that a case that breaks nothing is proved. */
    private static final String ASKED =
            "rule asked\nalways for any source S, S is energized\nsays \"x\"\nbecause \"x\"";

    private void both(long seed) {
        failed = true;
        Draw draw = new Draw(seed);
        MadeCase made = draw.chance(20) ? CaseMaker.makeWithSets(draw) : CaseMaker.make(draw, draw.chance(30));
        boolean withEvents = draw.chance(40);
        if (withEvents) {
            made = made.withParts(made.parts().subList(0, Math.min(draw.between(2, 5), made.parts().size())))
                    .withRules(List.of(), EventsAgreementTest.rules(draw));
        } else if (draw.chance(40)) {
            String rule = "rule made-1\n" + new PastMaker(draw).rule() + "\nsays \"x\"\nbecause \"x\"";
            made = made.withRules(List.of(), List.of(PastMaker.DEFINITIONS, rule, ASKED));
        }
        int events = withEvents ? draw.one(1, 1, 2) : 0;
        read(made).ifPresent(instance -> explored(instance, events).ifPresent(found -> {
            Optional<ProofFile> proof = ProofMaker.of(instance, found, events);
            if (proof.isPresent()) {
                assertEquals(found.outcome().states(), proof.get().count());
                confirmed(instance, proof.get(), seed);
                tampered(instance, proof.get(), draw, seed);
                came(withEvents ? "holds with events" : "holds");
                if (found.program().layout().fields().stream().anyMatch(f -> f.key().toString().startsWith("Remembered"))) {
                    came("remembers");
                }
            } else if (found.outcome().cut().isEmpty()) {
                boolean broken = found.outcome().answer() == Outcome.Answer.BROKEN;
                refused(instance, everyStateOf(instance, events), broken ? "broken: " : "no rule that stops came up", seed);
                came(broken ? "broken" : "nothing asked");
            }
        }));
        failed = false;
    }

    private void came(String what) {
        came.merge(what, 1, Integer::sum);
    }

    private static Optional<Instance> read(MadeCase made) {
        try {
            MadeCase.Read read = made.read();
            return Instance.of(read.procedure(), Map.of("made", read.network())).stream().findFirst();
        } catch (IllegalArgumentException refused) {
            return Optional.empty();
        }
    }

    private static Optional<Explored> explored(Instance one, int events) {
        Limits limits = new Limits(MOST_STATES, LONG, Limits.USUAL.bytes(), events);
        return Proving.explored(one.procedure(), one.network(), one.proof(), limits, Watcher.NOBODY, new Problems());
    }

    private static void confirmed(Instance instance, ProofFile proof, long seed) {
        Problems problems = new Problems();
        ProofFile again = ProofReader.read(new Source("a.proof", proof.text()), problems)
                .orElseThrow(() -> new AssertionError("seed " + seed + ": " + problems.sorted()));
        assertEquals(proof.text(), again.text(), () -> "seed " + seed);
        Rechecked done = Recheck.of(again, List.of(instance), again.head().events(), LONG, (met, of) -> true);
        assertEquals(List.of(), done.reasons(), () -> "seed " + seed);
        assertEquals(Rechecked.Status.CONFIRMED, done.status());
        assertEquals(proof.count(), done.states());
    }

    private static void refused(Instance instance, ProofFile proof, String reason, long seed) {
        Rechecked done = Recheck.of(proof, List.of(instance), proof.head().events(), LONG, (met, of) -> true);
        assertEquals(Rechecked.Status.REFUSED, done.status(), () -> "seed " + seed + ", " + reason);
        assertTrue(done.reasons().stream().anyMatch(r -> r.contains(reason) || r.startsWith("no state of it has")), () -> "seed " + seed + ", " + reason + ": " + done.reasons());
    }

    private void tampered(Instance instance, ProofFile proof, Draw draw, long seed) {
        List<String> lines = new ArrayList<>(proof.states().keySet());
        String one = draw.one(lines.toArray(String[]::new));
        ProofFile.Held held = proof.states().get(one);
        Map<String, ProofFile.Held> states = new LinkedHashMap<>(proof.states());
        states.remove(one);
        refused(instance, with(proof, states), "is missing from it", seed);
        states.put(one, new ProofFile.Held(held.times() + 1, 1));
        refused(instance, with(proof, states), "1 state of it never comes up: line 1", seed);
        states.put(one, held);
        states.put("0-99999 :", new ProofFile.Held(2, 7));
        refused(instance, with(proof, states), "2 states of it never come up: line 7", seed);
        if (!proof.facts().isEmpty()) {
            // One fact more or less in one state: that one is missing, or stands there twice.
            int fact = draw.between(1, proof.facts().size());
            String other = one.contains(" " + fact + " ") ? one.replace(" " + fact + " ", " ") : one + " " + fact;
            Map<String, ProofFile.Held> changed = new LinkedHashMap<>(proof.states());
            changed.remove(one);
            if (changed.putIfAbsent(other, held) == null) {
                refused(instance, with(proof, changed), "is missing from it", seed);
            }
        }
        ImmutableList<String> facts = proof.facts();
        if (!facts.isEmpty()) {
            int last = facts.size() - 1;
            ImmutableList<String> renamed =
                    ImmutableList.<String>builder().addAll(facts.subList(0, last)).add(facts.get(last) + "x").build();
            refused(instance, new ProofFile(proof.head(), proof.start(), renamed, proof.states()), "for the first time", seed);
        }
        if (!proof.start().isEmpty()) {
            Map<String, String> start = new LinkedHashMap<>(proof.start());
            start.replace(start.keySet().iterator().next(), "x");
            refused(instance, new ProofFile(proof.head(), ImmutableMap.copyOf(start), facts, proof.states()), "the start: ", seed);
        }
        ProofFile.Head head = proof.head();
        refused(
                instance,
                new ProofFile(
                        new ProofFile.Head(head.place(), head.revision(), "0123456789ab", head.files(), head.rulebooks(), head.events()),
                        proof.start(), facts, proof.states()),
                "the hash of all that is read", seed);
    }

    private static ProofFile with(ProofFile proof, Map<String, ProofFile.Held> states) {
        return new ProofFile(proof.head(), proof.start(), proof.facts(), ImmutableMap.copyOf(states));
    }

    /** Exactly the states of a procedure, as a forger would write them who has this evaluator too. */
    private static ProofFile everyStateOf(Instance instance, int events) {
        Bound bound = Agreement.bound(instance.procedure(), instance.network(), instance.proof());
        Map<String, Integer> numbers = new LinkedHashMap<>();
        Map<String, ProofFile.Held> states = new LinkedHashMap<>();
        Map<String, String> start = new LinkedHashMap<>();
        List<UnaryOperator<String>> values = new ArrayList<>();
        PlainEvaluator.evaluate(bound, events, Integer.MAX_VALUE, new PlainWatcher() {
            @Override
            public void begins(UnaryOperator<String> valueOf) {
                values.add(valueOf);
            }

            @Override
            public boolean met(PlainState state) {
                state.facts().forEach(f -> numbers.putIfAbsent(f, numbers.size() + 1));
                String line = StateLine.of(state.left(), state.facts().stream().map(numbers::get).sorted().toList());
                states.merge(line, new ProofFile.Held(1, 0), (a, b) -> new ProofFile.Held(a.times() + 1, 0));
                return true;
            }
        });
        numbers.keySet().stream().filter(f -> !f.startsWith("event ")).map(f -> f.substring(0, f.lastIndexOf(" is "))).forEach(fact ->
                start.put(fact, values.get(0).apply(fact)));
        return new ProofFile(ProofFile.Head.of(instance, events), ImmutableMap.copyOf(start), ImmutableList.copyOf(numbers.keySet()), ImmutableMap.copyOf(states));
    }

    @AfterProperty
    void muchHappened() {
        if (failed) {
            return;
        }
        System.out.println("re-checked: " + came);
        assertTrue(came.getOrDefault("holds", 0) >= 15, came::toString);
        assertTrue(came.getOrDefault("holds with events", 0) >= 5, came::toString);
        assertTrue(came.getOrDefault("remembers", 0) >= 5, came::toString);
        assertTrue(came.getOrDefault("broken", 0) >= 15, came::toString);
    }
}
