package org.keeplit.plain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.ShrinkingMode;
import net.jqwik.api.Tag;
import net.jqwik.api.lifecycle.AfterProperty;
import org.keeplit.Keeplit;
import org.keeplit.language.Library;
import org.keeplit.language.Reader;
import org.keeplit.outcome.Limits;
import org.keeplit.outcome.RetreatTable;
import org.keeplit.outcome.SlipResult;
import org.keeplit.outcome.SlipTable;
import org.keeplit.outcome.Watcher;
import org.keeplit.procedure.Procedure;
import org.keeplit.text.Problems;
import org.keeplit.text.Source;

/**
 * Slips and ways back, each written out as a procedure of its own and judged by the plain evaluator: a step is left out, said twice, put
 * before the others or said of something else in the text.
 */
class SlipsAndRetreatsAgreementTest {
    private static final String NETWORK =
            """
            language 1
            network pole "A switch with its bypass, a loop behind it"
            uses overhead
            system voltage 12.47 kV, frequency 60 Hz
            source bus at s-0, phases ABC, supply grid
            switch main from s-0 to s-1, phases ABC, ganged, at pole-1
            switch other from s-0 to s-2, phases ABC, ganged, at pole-2
            switch loop from s-1 to s-2, phases ABC, ganged, open, at pole-3
            bypass-switch bridge from s-0 to s-1, phases AB, single-phase units, open, at pole-1
            load mill at s-1, phases AB, 300 kW, 12 customers
            load hall at s-2, phases ABC, 300 kW, 5 customers
            """;

    private static final String RULES =
            """
            language 1
            rulebook supply revision 1
            rule supplied
              always every load L is supplied
              says "{L} loses supply"
              because "Test."
            rule tagged-left-alone
              before opening any device D
              require D is not tagged
              says "{D} is tagged"
              because "Test."
            """;

    private final Map<SlipResult.Ending, Integer> endings = new EnumMap<>(SlipResult.Ending.class);
    private int ways;
    private boolean failed;

    @Provide
    Arbitrary<Long> seeds() {
        return Arbitraries.longs();
    }

    @Property(tries = 60, seed = "41", shrinking = ShrinkingMode.OFF)
    void both(@ForAll("seeds") long seed) {
        compare(seed);
    }

    @Tag("long")
    @Property(tries = 1500, seed = "42", shrinking = ShrinkingMode.OFF)
    void bothInTheLongRun(@ForAll("seeds") long seed) {
        compare(seed);
    }

    private void compare(long seed) {
        failed = true;
        List<Step> steps = steps(new Draw(seed));
        Library library = read(steps);
        SlipTable slips = Keeplit.slips(library, Limits.USUAL, Watcher.NOBODY, new Problems()).get(0);
        assertEquals(slips.holds(), plainly(steps).isEmpty(), () -> "seed " + seed + " " + steps);
        if (slips.holds()) {
            for (SlipResult result : slips.slips()) {
                Set<String> found = new TreeSet<>();
                slipped(steps, result).forEach(wrong -> found.addAll(plainly(wrong)));
                SlipResult.Ending ending = ending(found);
                assertEquals(ending, result.ending(), () -> "seed " + seed + " " + steps + " " + result + " " + found);
                endings.merge(ending, 1, Integer::sum);
            }
            back(library, steps, seed);
        }
        failed = false;
    }

    /** A step of one act. @param phase of what has single-phase units, else empty */
    private record Step(String verb, String device, String phase) {
        String text() {
            return switch (verb) {
                case "sees open", "sees closed" -> "op checks " + device + " is " + verb.substring(5) + on();
                case "untags" -> "op takes the tag off " + device;
                default -> "op " + verb + " " + device + on();
            };
        }

        private String on() {
            return phase.isEmpty() ? "" : " on " + phase;
        }

        Step opposite() {
            return new Step(OPPOSITE.get(verb), device, phase);
        }
    }

    private static final Map<String, String> OPPOSITE =
            Map.of("opens", "closes", "closes", "opens", "tags", "untags", "untags", "tags");

    /** {@return steps of which each can be done after those before it, though not all keep the supply} */
    private static List<Step> steps(Draw draw) {
        Map<String, Boolean> open = new LinkedHashMap<>(
                Map.of("main", false, "other", false, "loop", true, "bridge A", true, "bridge B", true));
        Set<String> tagged = new TreeSet<>();
        List<Step> steps = new ArrayList<>();
        int many = draw.between(2, 6);
        while (steps.size() < many) {
            String what = draw.one("main", "main", "other", "loop", "loop", "bridge A", "bridge B");
            String device = what.split(" ")[0];
            String phase = what.contains(" ") ? what.split(" ")[1] : "";
            if (draw.chance(15) && !device.equals("bridge")) {
                steps.add(new Step(tagged.contains(device) ? "untags" : "tags", device, ""));
                if (!tagged.remove(device)) {
                    tagged.add(device);
                }
            } else if (draw.chance(25)) {
                steps.add(new Step(open.get(what) ? "sees open" : "sees closed", device, phase));
            } else {
                // What is closed already is opened more often than it should be, too.
                steps.add(new Step(open.get(what) ? "closes" : "opens", device, phase));
                open.put(what, !open.get(what));
            }
        }
        return steps;
    }

    /** {@return the procedures that a slip makes of one; more than one where it may come at several moments} */
    private static List<List<Step>> slipped(List<Step> steps, SlipResult slip) {
        int at = slip.act();
        Step right = steps.get(at);
        List<List<Step>> all = new ArrayList<>();
        switch (slip.kind()) {
            case EARLY -> {
                for (int before = 0; before < at; before++) {
                    List<Step> moved = new ArrayList<>(steps);
                    moved.remove(at);
                    moved.add(before, right);
                    all.add(moved);
                }
            }
            case LEFT_OUT -> {
                List<Step> less = new ArrayList<>(steps);
                less.remove(at);
                all.add(less);
            }
            case TWICE -> {
                List<Step> more = new ArrayList<>(steps);
                more.add(at, right);
                all.add(more);
            }
            case WRONG_WAY -> all.add(with(steps, at, right.opposite()));
            case WRONG_PHASE -> all.add(with(steps, at, new Step(right.verb(), right.device(), right.phase().equals("A") ? "B" : "A")));
            case NEIGHBOUR -> {
                List<String> alike = List.of("main", "other", "loop");
                String next = alike.get((alike.indexOf(right.device()) + 1) % alike.size());
                all.add(with(steps, at, new Step(right.verb(), next, right.phase())));
            }
            case APART -> throw new AssertionError("nothing here is done as one");
        }
        return all;
    }

    private static List<Step> with(List<Step> steps, int at, Step other) {
        List<Step> all = new ArrayList<>(steps);
        all.set(at, other);
        return all;
    }

    /** {@return how a slip ends that leads to these findings} */
    private static SlipResult.Ending ending(Set<String> found) {
        if (found.isEmpty()) {
            return SlipResult.Ending.HARMLESS;
        } else if (found.stream().anyMatch(f -> !f.startsWith("stop") && !f.startsWith("cannot"))) {
            return SlipResult.Ending.EXPOSED;
        }
        return found.stream().anyMatch(f -> f.startsWith("stop")) ? SlipResult.Ending.CAUGHT : SlipResult.Ending.NOTICED;
    }

    /** Each way back, done after what was done before it, keeps all rules and ends where the feeder is normal; none that is shorter does. */
    private void back(Library library, List<Step> steps, long seed) {
        RetreatTable table = Keeplit.retreat(library, Limits.USUAL, Watcher.NOBODY, new Problems()).get(0);
        assertTrue(table.holds());
        for (int i = 0; i < table.stops().size(); i++) {
            RetreatTable.Stop stop = table.stops().get(i);
            List<String> done = steps.subList(0, i + 1).stream().map(Step::text).toList();
            if (stop.way().isEmpty()) {
                assertTrue(stop.proved());
                continue;
            }
            List<String> way = stop.way().get().stream().map(a -> a.actor() + " " + a.text()).toList();
            int place = i;
            assertTrue(isBack(done, way), () -> "seed " + seed + " " + steps + " after " + place + " " + way);
            assertEquals(way.size(), shortest(done, way.size()), () -> "seed " + seed + " " + steps + " after " + place + " " + way);
            ways++;
        }
    }

    private static final List<String> MOVES = List.of(
            "op opens main", "op closes main", "op opens other", "op closes other", "op opens loop", "op closes loop",
            "op opens bridge on A", "op opens bridge on B", "op closes bridge on A", "op closes bridge on B",
            "op takes the tag off main", "op takes the tag off other", "op takes the tag off loop");

    /** {@return the length of the shortest way back, looked for among all that are no longer than one known; that one's if none is shorter} */
    private static int shortest(List<String> done, int known) {
        // Longer ones are too many to try; what is tried tells enough.
        int most = Math.min(known - 1, 2);
        List<List<String>> open = List.of(List.of());
        for (int length = 0; length <= most; length++) {
            if (open.stream().anyMatch(way -> isBack(done, way))) {
                return length;
            }
            open = open.stream()
                    .flatMap(way -> MOVES.stream().map(m -> {
                        List<String> longer = new ArrayList<>(way);
                        longer.add(m);
                        return longer;
                    }))
                    .collect(Collectors.toList());
        }
        return known;
    }

    private static boolean isBack(List<String> done, List<String> way) {
        List<String> all = new ArrayList<>(done);
        all.addAll(way);
        return plainlyOf(all, ENDS).isEmpty();
    }

    private static final String ENDS =
            """
            ends with
              main is closed
              other is closed
              loop is open
              bridge is open
              main is not tagged
              other is not tagged
              loop is not tagged
            """;

    private static Set<String> plainly(List<Step> steps) {
        return plainlyOf(steps.stream().map(Step::text).toList(), "");
    }

    /** {@return what the plain evaluator finds first, by name} */
    private static Set<String> plainlyOf(List<String> steps, String ends) {
        Library library = read(steps, ends);
        Procedure procedure = library.givenProcedures().get(0);
        Procedure.Proof proof = procedure.proofs().get(0);
        return PlainEvaluator.evaluate(
                        Agreement.bound(procedure, library.networks().get("pole"), proof), 10_000)
                .roots()
                .keySet();
    }

    private static Library read(List<Step> steps) {
        return read(steps.stream().map(Step::text).toList(), "");
    }

    private static Library read(List<String> steps, String ends) {
        String procedure = "language 1\nprocedure P revision 1\ntitle \"Made\"\nkeeps supply\ncrew\n  op \"Operator\", in charge\n"
                + "proved on pole\nstage \"All\"\n"
                + steps.stream().map(s -> "  " + s + "\n").collect(Collectors.joining())
                + ends;
        Library library = new Reader()
                .readSources(List.of(
                        new Source("overhead.equipment", EQUIPMENT),
                        new Source("pole.network", NETWORK),
                        new Source("supply.rules", RULES),
                        new Source("p.procedure", procedure)));
        assertEquals(List.of(), library.problems(), procedure);
        return library;
    }

    private static final String EQUIPMENT = equipment();

    private static String equipment() {
        try {
            return Files.readString(Path.of("shared/equipment/overhead.equipment"));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @AfterProperty
    void allSortsCameUp() {
        assertTrue(failed || endings.size() == 4 && ways > 20, endings + ", " + ways + " ways back");
    }
}
