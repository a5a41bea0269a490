package org.keeplit.plain;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.keeplit.language.Library;
import org.keeplit.language.Reader;
import org.keeplit.procedure.Procedure;
import org.keeplit.text.Source;

/** A step that only measures is acts like others: one a phase, in any order, and it changes nothing. */
class MeasuringTest {
    private static final String EQUIPMENT = """
            language 1
            equipment kinds
            kind source is a source
            kind load is a load
            kind recloser is a switching device
              single-phase units
            """;
    private static final String NETWORK = """
            language 1
            network small
            uses kinds
            system voltage 12.47 kV, frequency 60 Hz
            source bus at n-1, phases ABC, supply bus
            recloser r from n-1 to n-2, phases ABC, single-phase units
            load town at n-2, phases ABC, 100 kW, 9 customers
            """;
    private static final String RULES = """
            language 1
            rulebook supply revision 1
            rule supplied
              always every load L is supplied
              says "{L}"
              because "x"
            """;

    private static int states(String step) {
        String text = """
                language 1
                procedure p revision 1
                title "x"
                keeps supply
                for recloser R
                crew
                  east "Lineworker", in charge
                proved on small with R as r
                stage "x"
                  %s
                """.formatted(step);
        Library library = new Reader()
                .readSources(List.of(
                        new Source("kinds.equipment", EQUIPMENT),
                        new Source("small.network", NETWORK),
                        new Source("supply.rules", RULES),
                        new Source("p.procedure", text)));
        assertEquals(List.of(), library.problems());
        Procedure procedure = library.procedures().get("p");
        Agreement.Both both = Agreement.check(
                procedure, library.networks().get("small"), procedure.proofs().get(0), step);
        assertEquals(Map.of(), both.plain().roots());
        return (int) both.fast().states();
    }

    @Test
    void eachPhaseIsAnAct() {
        assertEquals(8, states("east measures the current through R"), "any of the three phases is read or not yet");
        assertEquals(4, states("east measures the current through R, in order"));
        assertEquals(4, states("east measures the voltage at the load-side line of R on AB"));
        assertEquals(2, states("east measures the residual current through R"));
    }
}
