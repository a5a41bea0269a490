package org.keeplit.insight;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.ShrinkingMode;
import net.jqwik.api.lifecycle.AfterProperty;
import org.keeplit.explore.Proving;
import org.keeplit.explore.Stepper;
import org.keeplit.language.Library;
import org.keeplit.outcome.Limits;
import org.keeplit.outcome.Outcome;
import org.keeplit.outcome.Watcher;
import org.keeplit.procedure.Instance;
import org.keeplit.program.Parts;
import org.keeplit.text.Problems;

/** Of orders that differ only in what does not touch each other one is enough: the answer is that of all. */
class ReducedOrdersTest {
    private static final String RULE =
            """
            rule tagged-left-alone
              before opening any device D
              require D is not tagged
              says "{D} is tagged"
              because "Test."
            rule watched-while-open
              while any switch D is open
              require D is tagged
              says "{D} is open, and nobody looks"
              because "Test."
            """;

    /** Safe in this order, and hardly in another. */
    private static final List<String> CHAIN =
            List.of("op closes bridge", "op opens main", "op checks main is open", "op closes main", "op opens bridge");

    private static final List<String> BESIDE = List.of(
            "op tags other", "op does \"waves\"", "op tags bridge", "op records \"time\"", "op checks other is closed",
            "op records \"name\"", "op tags main", "op takes the tag off other", "op opens other");

    private int safe;
    private int not;
    private int extremes;
    private long reduced;
    private long all;
    private boolean failed;

    @Provide
    Arbitrary<Long> seeds() {
        return Arbitraries.longs();
    }

    @Property(tries = 400, seed = "51", shrinking = ShrinkingMode.OFF)
    void sameAnswer(@ForAll("seeds") long seed) {
        failed = true;
        Random random = new Random(seed);
        StringBuilder steps = new StringBuilder();
        List<String> written = new ArrayList<>(CHAIN.subList(0, 2 + random.nextInt(4)));
        int chain = written.size();
        for (int more = random.nextInt(4); more > 0; more--) {
            written.add(BESIDE.get(random.nextInt(random.nextBoolean() ? 6 : BESIDE.size())));
        }
        int count = written.size();
        written.forEach(step -> steps.append("  ").append(step).append('\n'));
        Library library = random.nextBoolean() ? OnePole.ganged(steps.toString()) : OnePole.withRule(RULE, steps.toString());
        assertEquals(List.of(), library.problems());
        BitSet[] before = new BitSet[count];
        for (int i = 0; i < count; i++) {
            before[i] = new BitSet();
            for (int j = 0; j < i; j++) {
                before[i].set(j, i < chain ? random.nextInt(20) > 0 : random.nextInt(4) == 0);
            }
        }
        Instance one = Instance.of(library.givenProcedures().get(0), library.networks()).get(0);
        Proving.using(one.procedure(), one.network(), one.proof(), new Problems(), prepared -> compare(prepared, before, seed));
        failed = false;
    }

    private boolean compare(Proving.Prepared prepared, BitSet[] before, long seed) {
        Parts parts = Parts.of(prepared.program());
        Outcome full = Proving.explore(
                Proving.with(prepared, parts.obeying(new ArrayList<>(Arrays.asList(before)))), Limits.USUAL, Watcher.NOBODY);
        ReducedOrders.Found found = Stepper.with(Proving.with(prepared, parts.free()), stepper -> {
            PartRunner runner = new PartRunner(stepper, parts);
            Optional<List<Integer>> extreme = ExtremeOrders.unsafe(runner, before, () -> true);
            ReducedOrders.Found some =
                    ReducedOrders.safe(runner, before, ReducedOrders.dependent(stepper, parts), 100_000, () -> true);
            extreme.ifPresent(order -> goesWrong(runner, before, order, seed));
            some.wrong().ifPresent(order -> goesWrong(runner, before, order, seed));
            assertEquals(some.answer() == ReducedOrders.Answer.PERHAPS_NOT, some.wrong().isPresent());
            extremes += extreme.isPresent() ? 1 : 0;
            return some;
        });
        assertEquals(
                full.findings().isEmpty() ? ReducedOrders.Answer.SAFE : ReducedOrders.Answer.PERHAPS_NOT,
                found.answer(),
                () -> "seed " + seed + " " + parts.all().stream().map(Parts.Part::name).toList() + " " + List.of(before));
        if (full.findings().isEmpty()) {
            safe++;
            reduced += found.nodes();
            all += full.states();
        } else {
            not++;
        }
        return true;
    }

    /** It keeps to the arrows, its last part goes wrong, and once it is shortened no part can be left out of it. */
    private static void goesWrong(PartRunner runner, BitSet[] before, List<Integer> order, long seed) {
        assertTrue(wrong(runner, before, order), () -> "seed " + seed + " " + order);
        List<Integer> less = ExtremeOrders.shortened(runner, before, order);
        assertTrue(wrong(runner, before, less), () -> "seed " + seed + " " + less);
        for (Integer part : less.subList(0, less.size() - 1)) {
            List<Integer> without = new ArrayList<>(less);
            without.remove(part);
            assertTrue(
                    less.size() == before.length || !wrong(runner, before, without),
                    () -> "seed " + seed + ": " + less + " goes wrong without " + part);
        }
    }

    private static boolean wrong(PartRunner runner, BitSet[] before, List<Integer> order) {
        BitSet done = new BitSet();
        for (int part : order) {
            BitSet missing = (BitSet) before[part].clone();
            missing.andNot(done);
            if (!missing.isEmpty()) {
                return false;
            }
            done.set(part);
        }
        PartRunner.Ran ran = runner.run(runner.start(), order, order.size() == before.length);
        return ran.harm().isPresent() && (ran.part() < 0 || ran.part() == order.get(order.size() - 1));
    }

    @AfterProperty
    void bothCameUpAndItSaves() {
        // Not every order that goes wrong is an extreme one; most are.
        assertTrue(failed || extremes > 0.8 * not, extremes + " of " + not);
        assertTrue(failed || safe > 40 && not > 40 && reduced < all, safe + " safe, " + not + " not, " + reduced + " of " + all);
    }
}
