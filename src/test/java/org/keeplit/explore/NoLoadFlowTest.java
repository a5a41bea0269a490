package org.keeplit.explore;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.keeplit.Keeplit;
import org.keeplit.language.Library;
import org.keeplit.language.Reader;
import org.keeplit.outcome.Limits;
import org.keeplit.outcome.Watcher;
import org.keeplit.text.Problem;
import org.keeplit.text.Problems;
import org.keeplit.text.Source;

/** What a load flow lacks is told with the element's name, and only where a rule or a limit asks for figures. */
class NoLoadFlowTest {
    private static final String BUS = "source bus at s-0, phases ABC, supply grid, fault level 100 MVA\n";
    private static final String REST = "switch s from s-0 to s-1, phases ABC\nload mill at s-1, phases ABC, 30 kW, 1 customer\n";

    private static String told(String elements) {
        return told(elements, "the current through S on A is at most 1 kA");
    }

    private static String told(String elements, String condition) {
        return told("own, overhead", "", elements, condition);
    }

    private static String told(String uses, String more, String elements, String condition) {
        return told(uses, more, elements, condition, "");
    }

    private static String told(String uses, String more, String elements, String condition, String temporary) {
        Library library = new Reader().readSources(List.of(
                new Source("overhead.equipment", Small.read("shared/equipment/overhead.equipment")),
                new Source("own.equipment", """
                        language 1
                        equipment own "Own"
                        conductor thin resistance 1 ohm per km
                        conductor bare radius 3 mm
                        conductor whole resistance 0.3 ohm per km, radius 3 mm
                        spacing side A at -1 m 9 m, B at 1 m 9 m
                        """ + more),
                new Source("pole.network", "language 1\nnetwork pole\nuses " + uses + "\nsystem voltage 12.47 kV, frequency 60 Hz\n" + elements),
                new Source("test.rules", "language 1\nrulebook test-rules revision 1\nrule figure\n  always for any switch S, " + condition + "\n  says \"x\"\n  because \"x\"\n"),
                new Source("p.procedure", """
                        language 1
                        procedure P revision 1
                        title "A test"
                        keeps test-rules
                        crew
                          op "Operator", in charge
                        %sproved on pole
                        stage "All"
                          op does "nothing"
                        """.formatted(temporary))));
        assertEquals(List.of(), library.problems().stream().filter(p -> p.severity() == Problem.Severity.ERROR).toList());
        Problems problems = new Problems();
        Keeplit.check(library, Limits.USUAL, Watcher.NOBODY, problems);
        List<Problem> all = problems.sorted().stream().filter(p -> p.code().equals("no-load-flow")).toList();
        assertTrue(all.size() <= 1, all::toString);
        return all.isEmpty() ? "" : all.get(0).message();
    }

    @Test
    void aSourceWithoutFaultLevel() {
        assertEquals("source bus states no fault level, which a load flow needs", told(BUS.replace(", fault level 100 MVA", "") + REST));
    }

    @Test
    void aConductorThatStatesTooLittle() {
        String line = "line l from s-1 to s-2, phases ABC, length 1 km, conductor thin\n";
        assertEquals("conductor thin of line l states no resistance or no radius (geometric mean)", told(BUS + REST + line));
        assertEquals("cable under has no impedance: it states neither resistance and reactance nor a matrix, and its conductor bare"
                + " states no resistance", told(BUS + REST + "cable under from s-1 to s-2, phases ABC, length 1 km, conductor bare\n"));
    }

    @Test
    void anOverheadLineWithoutASpacingThatFits() {
        String kinds =
                """
                kind source is a source
                kind load is a load
                kind line is a line section
                kind switch is a switching device
                  ganged
                """;
        String line = "line l from s-1 to s-2, phases BC, length 1 km, conductor whole\n";
        String told = told("own", kinds, BUS + REST + line, "the current through S on A is at most 1 kA");
        assertEquals(
                "overhead line l hangs on no spacing: none of those declared (side) has exactly its phases BC; name one, or"
                        + " state resistance and reactance",
                told);
        assertEquals("", told("own", kinds, BUS + REST + line.replace("BC", "AB"), "the current through S on A is at most 1 kA"));
    }

    @Test
    void anIsolatedRegulator() {
        String told = told(BUS + REST + "regulator vr from s-1 to s-2, phases A, rating 219 A\n");
        assertTrue(told.contains("vr") && told.contains("isolated"), told);
    }

    @Test
    void whoAsksForNoFigureNeedsNoLoadFlow() {
        assertEquals("", told(BUS.replace(", fault level 100 MVA", "") + REST, "S is closed"));
    }

    @Test
    void aRegulatorOfOtherSteps() {
        String elements = """
                source bus at n-1, phases ABC, supply grid, fault level 100 MVA
                switch s from n-1 to n-2, phases ABC
                regulator vr from n-2 to n-3, phases ABC, range 7.5 %, steps 8
                """;
        assertEquals(
                "the load flow knows regulators of 5/8 % a step, and vr states 7.5 % in 8 steps",
                told("own, overhead", "", elements, "the current through S on A is below 10 A"));
    }

    /** A set states how strong it is, or nothing can be said of what it feeds. */
    @Test
    void aTemporarySourceWithoutItsPower() {
        String kinds = "kind set is a temporary source\n  makes energizing\n  rating reactance 20 %\n";
        String told = told(
                "own, overhead",
                kinds,
                BUS + REST,
                "the current through S on A is at most 1 kA",
                "temporary\n  set E for each phase of s\n");
        assertEquals("the kind set states no rating power, which a load flow needs of E", told);
    }

    /** A transformer between a network's volts and none that anybody states. */
    @Test
    void aTransformerWithoutItsLowVoltage() {
        String told = told(BUS + REST
                + "transformer t from s-1 to s-2, phases A, centre-tapped, rating 25 kVA, resistance 1.2 %, reactance 1.5 %\n");
        assertEquals("transformer t states no low voltage, which a load flow needs", told);
    }
}
