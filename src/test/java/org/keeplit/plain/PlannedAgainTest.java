package org.keeplit.plain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.keeplit.Keeplit;
import org.keeplit.language.Library;
import org.keeplit.language.Reader;
import org.keeplit.outcome.Limits;
import org.keeplit.outcome.PlanResult;
import org.keeplit.outcome.Watcher;
import org.keeplit.procedure.Procedure;
import org.keeplit.text.Problems;
import org.keeplit.text.Source;

/**
 * Plans, written out as procedures and proved again by both evaluators. The feeder is that of Baran and Wu, "Network reconfiguration in
 * distribution systems for loss reduction and load balancing", IEEE Trans. Power Delivery 4 (1989): 33 buses, 32 sections, five ties; the
 * set of open branches of least loss, 7, 9, 14, 32 and 37, as published since.
 */
class PlannedAgainTest {
    private static final List<Integer> INITIAL = List.of(33, 34, 35, 36, 37);
    private static final List<Integer> OPTIMAL = List.of(7, 9, 14, 32, 37);

    private static final String RULES =
            """
            language 1
            rulebook supply revision 1
            rule supplied
              always every load L is supplied
              says "{L} loses supply"
              because "Test."
            """;

    /** @param open the branches that are open at first */
    private static String network(List<Integer> open) throws IOException {
        StringBuilder text = new StringBuilder(
                """
                language 1
                network baran-wu "33 buses, five ties"
                uses overhead
                system voltage 12.66 kV, frequency 60 Hz
                source bus at n-1, phases ABC, supply grid
                """);
        for (String line : rows("branches")) {
            String[] row = line.split(",");
            text.append("switch b-").append(row[0]).append(" from n-").append(row[1]).append(" to n-").append(row[2])
                    .append(", phases ABC, ganged")
                    .append(open.contains(Integer.valueOf(row[0])) ? ", open" : "")
                    .append(", at pole-").append(row[0]).append('\n');
        }
        for (String line : rows("buses")) {
            String[] row = line.split(",");
            if (!row[1].equals("0") && !row[0].equals("1")) {
                text.append("load l-").append(row[0]).append(" at n-").append(row[0]).append(", phases ABC, ")
                        .append(row[1]).append(" kW, 1 customer\n");
            }
        }
        return text.toString();
    }

    private static List<String> rows(String file) throws IOException {
        return Files.readAllLines(Path.of("src/test/resources/feeders/baran-wu-33/" + file + ".csv")).stream()
                .filter(l -> !l.startsWith("#") && Character.isDigit(l.charAt(0)))
                .toList();
    }

    private static Library library(String network, String steps, String ends) throws IOException {
        String procedure =
                """
                language 1
                procedure P revision 1
                title "To the set of least loss"
                keeps supply
                crew
                  op "Operator", in charge
                proved on baran-wu
                stage "All"
                """
                        + steps + "ends with\n" + ends;
        Library library = new Reader()
                .readSources(List.of(
                        new Source("overhead.equipment", Files.readString(Path.of("shared/equipment/overhead.equipment"))),
                        new Source("baran-wu.network", network),
                        new Source("supply.rules", RULES),
                        new Source("p.procedure", procedure)));
        assertEquals(List.of(), library.problems());
        return library;
    }

    private static PlanResult plan(Library library, int states) {
        Problems problems = new Problems();
        Limits limits = new Limits(states, Limits.USUAL.time(), Limits.USUAL.bytes());
        PlanResult result = Keeplit.plan(library, limits, Watcher.NOBODY, problems).get(0);
        assertEquals(List.of(), problems.sorted());
        return result;
    }

    @Test
    void theSetOfLeastLossIsReachedWithEveryLoadSupplied() throws IOException {
        String offered = IntStream.rangeClosed(1, 37)
                .mapToObj(i -> "  op " + (INITIAL.contains(i) ? "closes" : "opens") + " b-" + i + "\n")
                .collect(Collectors.joining());
        String ends = IntStream.rangeClosed(1, 37)
                .mapToObj(i -> "  b-" + i + " is " + (OPTIMAL.contains(i) ? "open" : "closed") + "\n")
                .collect(Collectors.joining());
        PlanResult result = plan(library(network(INITIAL), offered, ends), 2_000);
        List<String> acts = result.way().orElseThrow().stream().map(a -> a.text()).toList();
        // Four ties close, four sections open: fewer acts cannot do, and the bound says so.
        assertEquals(8, acts.size(), acts::toString);
        assertTrue(result.isShortest());
        String steps = acts.stream().map(a -> "  op " + a + "\n").collect(Collectors.joining());
        Library again = library(network(INITIAL), steps, ends);
        Procedure procedure = again.givenProcedures().get(0);
        Agreement.Both both = Agreement.check(
                procedure, again.networks().get("baran-wu"), procedure.proofs().get(0), "the plan");
        assertEquals(List.of(), List.copyOf(both.fast().findings()));
        assertEquals(9, both.plain().states());
    }

    @Test
    void whatCannotBeReachedIsSaid() throws IOException {
        PlanResult result = plan(
                library(network(INITIAL), "  op opens b-1\n", "  b-1 is open\n"), 2_000);
        assertTrue(result.exhausted());
        assertTrue(result.way().isEmpty());
    }

    @Test
    void aStartThatIsBrokenIsNotPlannedFrom() throws IOException {
        List<Integer> open = new ArrayList<>(INITIAL);
        open.add(5);
        PlanResult result = plan(library(network(open), "  op closes b-5\n", "  b-5 is closed\n"), 2_000);
        assertEquals("supplied", result.broken().get(0).name());
        assertTrue(result.way().isEmpty());
    }
}
