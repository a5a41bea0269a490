package org.keeplit.plain;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.keeplit.language.Library;
import org.keeplit.language.Reader;
import org.keeplit.procedure.Procedure;
import org.keeplit.text.ProblemPrinter;
import org.keeplit.text.Source;

/** Two transformers on two phases serve three, as long as both are alive; both evaluators say so. */
class OpenBankTest {
    private static final String NETWORK =
            """
            language 1
            network bank "An open bank"
            uses overhead
            system voltage 12.47 kV, frequency 60 Hz
            source bus at s-0, phases ABC, supply grid, fault level 100 MVA, reactance ratio 8
            switch main-sw from s-0 to s-1, phases ABC
            cutout f-b from s-1 to s-2, phases B
            cutout f-a from s-1 to s-2, phases A
            transformer t from s-2 to low, phases AB, open wye to open delta, clock 1, rating 50 kVA, low voltage 240 V, impedance 3 %
            load pump at low, phases ABC, delta, 20 kW, 8 kvar, 1 customer
            """;

    private static Map<String, Integer> roots(String steps) throws IOException {
        String rules =
                """
                language 1
                rulebook supply-only revision 1
                rule supplied
                  always every load L is supplied
                  says "{L}"
                  because "Test."
                """;
        String procedure =
                """
                language 1
                procedure P revision 1
                title "A test"
                keeps supply-only
                crew
                  op "Operator"
                proved on bank
                stage "All"
                """
                        + steps;
        Library library = new Reader()
                .readSources(List.of(
                        new Source("overhead.equipment", Files.readString(Path.of("shared/equipment/overhead.equipment"))),
                        new Source("bank.network", NETWORK),
                        new Source("one.rules", rules),
                        new Source("p.procedure", procedure)));
        assertEquals("", ProblemPrinter.print(library.problems()));
        Procedure p = library.givenProcedures().get(0);
        Agreement.Both both =
                Agreement.check(p, library.networks().get("bank"), p.proofs().get(0), steps);
        return both.plain().roots();
    }

    @Test
    void threePhasesAreServedFromTwo() throws IOException {
        assertEquals(Map.of(), roots("  op does \"nothing\"\n"));
    }

    @Test
    void oneOfTheTwoIsNotEnough() throws IOException {
        assertEquals(Map.of("supplied", 1), roots("  op opens f-b\n"));
    }
}
