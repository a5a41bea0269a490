package org.keeplit.explore;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.keeplit.language.Library;
import org.keeplit.language.Reader;
import org.keeplit.network.Network;
import org.keeplit.outcome.Limits;
import org.keeplit.outcome.Watcher;
import org.keeplit.procedure.Procedure;
import org.keeplit.text.ProblemPrinter;
import org.keeplit.text.Problems;
import org.keeplit.text.Source;

/** Which answers the questions of a rule had, on hand-made cases. */
class CoveringTest {
    private static final String SCOPED =
            "while any switch S is open\nrequire for every recloser R, reclosing of R is blocked";

    /** {@return for each question T if it was seen true, F if false} */
    private static TreeMap<String, String> seen(String rule, String steps) {
        String procedure =
                """
                language 1
                procedure P revision 1
                title "A test"
                keeps test-rules
                crew
                  op "Operator", in charge
                proved on pole
                planned outage of lane
                stage "All"
                """
                        + steps;
        String rules = "language 1\nrulebook test-rules revision 1\nrule r\n" + rule
                + "\nsays \"it is broken\"\nbecause \"a test\"\n";
        Library library = new Reader()
                .readSources(List.of(
                        new Source("overhead.equipment", Small.read("shared/equipment/overhead.equipment")),
                        new Source("pole.network", Small.network()),
                        new Source("test.rules", rules),
                        new Source("p.procedure", procedure)));
        assertEquals("", ProblemPrinter.print(library.problems()));
        Procedure read = library.procedures().get("P");
        Network network = library.networks().get("pole");
        Explored explored = Proving.explored(
                        read, network, read.proofs().get(0), Limits.USUAL, Watcher.NOBODY, new Problems())
                .orElseThrow();
        TreeMap<String, String> all = new TreeMap<>();
        explored.seen().get(0).parts().forEach(p -> all.put(
                p.part().place().word() + " " + p.part().text(), (p.isTrue() ? "T" : "") + (p.isFalse() ? "F" : "")));
        return all;
    }

    @Test
    void bothSidesOfAnOrAreAskedEachByItself() {
        assertEquals(
                new TreeMap<>(Map.of("require S is closed", "T", "require R is closed", "TF")),
                seen("always for any switch S and any recloser R, one of\nS is closed\nR is closed\nend", "op opens r\n"));
    }

    @Test
    void whatNobodyAsksHasNoAnswer() {
        assertEquals(
                new TreeMap<>(Map.of("require D is open on phase P", "")),
                seen("before closing any switching device D on phase P\nrequire D is open on P", "op opens r\n"));
    }

    @Test
    void outsideItsScopeOnlyTheScopeIsAsked() {
        // Nothing opens the switch here, so the rule is not asked at all.
        assertEquals(
                new TreeMap<>(Map.of("when it is judged S is open", "", "require reclosing of R is blocked", "")),
                seen(SCOPED, "op opens r\n"));
        assertEquals(
                new TreeMap<>(Map.of("when it is judged S is open", "TF", "require reclosing of R is blocked", "F")),
                seen(SCOPED, "op opens gang\n"));
    }

    @Test
    void denialsUnlessAndWhatNarrowsAQuantifierAreQuestions() {
        assertEquals(
                new TreeMap<>(Map.of(
                        "require D is open", "F",
                        "require reclosing of D is blocked", "TF",
                        "unless L has a planned outage", "TF")),
                seen(
                        "always for every recloser D that is open, reclosing of D is blocked\n"
                                + "unless some load L has a planned outage",
                        "op puts r in non-reclose\n"));
        assertEquals(
                new TreeMap<>(Map.of("require R is not closed", "TF")),
                seen("always for any recloser R, R is not closed", "op opens r\n"));
    }

    @Test
    void bindingsCountTogether() {
        assertEquals(
                new TreeMap<>(Map.of("require D has trips", "TF")),
                seen("always for every switching device D, D has trips", "op opens r\n"));
    }

    @Test
    void whatMustBecomeSoIsAskedAtTheEnd() {
        String rule = "after opening any recloser R, eventually R is closed";
        assertEquals(
                new TreeMap<>(Map.of("require R is closed", "TF")),
                seen(rule, "in order\nop opens r on A\nop opens r on B\nop opens r on C\nop closes r\nend\n"));
        assertEquals(new TreeMap<>(Map.of("require R is closed", "F")), seen(rule, "op opens r\n"));
    }

    @Test
    void statesAfterABreakCount() {
        assertEquals(
                new TreeMap<>(Map.of("require S is closed", "TF", "require R is closed", "TF")),
                seen(
                        "always for any switch S and any recloser R, all of\nS is closed\nR is closed\nend",
                        "op opens r\nop opens gang\n"));
    }

    @Test
    void whatIsAskedAtAnActIsAskedThereOnly() {
        String steps = "op opens r on A\nop opens gang\nop closes gang\n";
        String recloser = "some recloser D is open on A";
        assertEquals(
                new TreeMap<>(Map.of("require D is open on phase A", "F")),
                seen("at the start " + recloser, steps));
        assertEquals(
                new TreeMap<>(Map.of("require D is open on phase A", "T")),
                seen("at the end " + recloser, steps));
        assertEquals(
                new TreeMap<>(Map.of("require S is closed", "T")),
                seen("before opening any switch S\nrequire S is closed", steps));
        assertEquals(
                new TreeMap<>(Map.of("require S is closed", "F")),
                seen("after opening any switch S\nrequire S is closed", steps));
        assertEquals(
                new TreeMap<>(Map.of("require S is closed", "TF")),
                seen("after opening or closing any switch S\nrequire S is closed", steps));
        // Which contact breaks is seen before it does: the rule comes up, of the switch alone.
        assertEquals(
                new TreeMap<>(Map.of("require S is closed", "F")),
                seen("after breaking any contact K on phase P\nrequire for every switch S, S is closed", "op opens gang\n"));
    }

    @Test
    void theLastStateCountsAsWellAsTheFirst() {
        assertEquals(
                new TreeMap<>(Map.of("require S is closed", "TF")),
                seen("always every switch S is closed", "op opens gang\n"));
    }

    @Test
    void countsAndAlternativesAreTakenApart() {
        assertEquals(
                new TreeMap<>(Map.of("require D is closed", "TF")),
                seen("always at least two switching devices D are closed", "op opens gang\n"));
        assertEquals(
                new TreeMap<>(Map.of("require S is open", "TF", "require S is tagged", "F")),
                seen("always for any switch S, one of\nS is open\nS is tagged\nend", "op opens gang\n"));
    }

    @Test
    void whatNarrowsWhoIsMeantIsAskedOfEach() {
        assertEquals(
                new TreeMap<>(Map.of("when it is judged S is tagged", "TF", "require S is closed", "TF")),
                seen("always for any switch S that is tagged, S is closed", "in order\nop tags gang\nop opens gang\nend\n"));
        // Nothing tags it here, so the rule is not asked at all.
        assertEquals(
                new TreeMap<>(Map.of("when it is judged S is tagged", "", "require S is closed", "")),
                seen("always for any switch S that is tagged, S is closed", "op opens gang\n"));
    }
}
