package org.keeplit.plain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.keeplit.condition.PhaseTerm;
import org.keeplit.explore.Proving;
import org.keeplit.language.Library;
import org.keeplit.language.Reader;
import org.keeplit.procedure.Binding;
import org.keeplit.procedure.Block;
import org.keeplit.procedure.Bound;
import org.keeplit.procedure.Procedure;
import org.keeplit.text.Problems;
import org.keeplit.text.Source;

/** Calls, phases and changes of variants, each with the steps that the language page leads one to expect, and the same from both bindings. */
class PlainBindingByHandTest {
    private static final String HEAD =
            """
            language 1
            procedure OUT revision 1
            title "Out"
            keeps no-interruption
            for recloser R with single-phase units
            crew
              boss "Person in charge", in charge
              east "Lineworker", on the source side
              west "Lineworker", on the load side
            temporary
              bypass-jumper J for each phase of R
            proved on recloser-pole with r-1 as R
            stage "All"
            """;

    private static final String STEPS =
            """
            look: boss does "looks"
            for each phase P of R
              put: east and west install J around R on P, line to line
              carries: east proves J carries current on P
            end
            open: west opens R on all phases
            for each phase P of R
              seen: west proves R open on P
            end
            last: boss does "looks again"
            """;

    private static Library read(String text) throws IOException {
        List<Source> sources = new ArrayList<>();
        for (String file : List.of(
                "shared/equipment/overhead.equipment", "shared/examples/poles.network", "shared/rules/no-interruption.rules",
                "shared/rules/people.rules")) {
            sources.add(new Source(file, Files.readString(Path.of(file))));
        }
        sources.add(new Source("out.procedure", text));
        Library library = new Reader().readSources(sources);
        assertTrue(!library.hasErrors(), () -> library.problems().toString());
        return library;
    }

    /** {@return the steps of a procedure, once both bindings agree on them} */
    private static String steps(String text, String name) throws IOException {
        Library library = read(text);
        Procedure procedure = library.procedures().get(name);
        Procedure.Proof proof = procedure.proofs().get(0);
        PlainBinding.Result plain = PlainBinding.bind(procedure, library.networks().get(proof.network()), proof);
        Bound bound = plain.bound().orElseThrow(() -> new AssertionError(plain.reasons()));
        Bound shared = Binding.bind(procedure, library.networks().get(proof.network()), proof, new Problems()).orElseThrow();
        String steps = told(bound.body(), "; ");
        assertEquals("", BoundWords.difference(bound, shared));
        return steps;
    }

    private static String edited(String edit) throws IOException {
        return steps(HEAD + STEPS + "variant OUT-a \"Edited\" of OUT\n" + edit.indent(2), "OUT-a");
    }

    private static String told(List<Block> blocks, String between) {
        return blocks.stream().map(PlainBindingByHandTest::told).filter(s -> !s.isEmpty()).collect(Collectors.joining(between));
    }

    private static String told(Block block) {
        if (block instanceof Block.Stage stage) {
            return told(stage.parts(), "; ");
        } else if (block instanceof Block.Group group) {
            return switch (group.order()) {
                case IN_ORDER -> "(" + told(group.parts(), "; ") + ")";
                case ANY_ORDER -> "[" + told(group.parts(), " | ") + "]";
                case TOGETHER -> "[" + told(group.parts(), " & ") + "]";
            };
        } else if (block instanceof Block.Repeat repeat) {
            return repeat.times() + " x (" + told(repeat.parts(), "; ") + ")";
        } else if (block instanceof Block.IfFound choice) {
            return "if (" + told(choice.then(), "; ") + ") else (" + told(choice.otherwise(), "; ") + ")";
        }
        Block.Step step = (Block.Step) block;
        return step.label().orElse(step.sentence()) + (step.phases() instanceof PhaseTerm.Given given ? " " + given.phases() : "");
    }

    private static final String PUT = "[(put A; carries A) | (put B; carries B) | (put C; carries C)]";
    private static final String SEEN = "[(seen A) | (seen B) | (seen C)]";

    @Test
    void forEachPhaseIsWrittenOutInAnyOrderUnlessItIsOrdered() throws IOException {
        assertEquals("look; " + PUT + "; open; " + SEEN + "; last", steps(HEAD + STEPS, "OUT"));
        assertEquals(
                "((a A; b A); (a B; b B); (a C; b C))",
                steps(HEAD + "for each phase P of R in order\na: east proves R closed on P\nb: east proves R closed on P\nend\n", "OUT"));
    }

    @Test
    void whatIsLeftOutIsLeftOutWhereverItStands() throws IOException {
        assertEquals(PUT + "; open; " + SEEN + "; last", edited("without step look"));
        assertEquals("look; [(carries A) | (carries B) | (carries C)]; open; " + SEEN + "; last", edited("without step put"));
        assertEquals("look; [(put A; carries A) | (carries B) | (put C; carries C)]; open; " + SEEN + "; last", edited("without step put on phase B"));
        assertEquals("look; " + PUT + "; open AC; " + SEEN + "; last", edited("without step open on phase B"));
        assertEquals("look; open; " + SEEN + "; last", edited("without step put\nwithout step carries"));
    }

    @Test
    void aBranchInWhichNothingIsLeftIsEmpty() throws IOException {
        String text = HEAD + "look: boss inspects \"oil\", finds \"wet\" or \"dry\"\nif \"oil\" is found \"wet\"\n"
                + "for each phase P of R\nput: east proves R closed on P\nend\notherwise\nlast: boss does \"x\"\nend\n"
                + "variant OUT-a \"Edited\" of OUT\n  without step put\n";
        assertEquals("look; if () else (last)", steps(text, "OUT-a"));
    }

    @Test
    void whatGoesBesideAStepGoesBesideAllOfIt() throws IOException {
        assertEquals(PUT + "; open; look; " + SEEN + "; last", edited("step look after step open"));
        assertEquals("look; " + PUT + "; open; " + SEEN + "; last", edited("step look before step put"));
        assertEquals(PUT + "; look; open; " + SEEN + "; last", edited("step look after step put"));
        assertEquals("look; open; " + PUT + "; " + SEEN + "; last", edited("step open before step put"));
        assertEquals("[(put A; carries A) | (look; put B; carries B) | (put C; carries C)]; open; " + SEEN + "; last", edited("step look before step put on phase B"));
        assertEquals("look; x; " + PUT + "; open; " + SEEN + "; last", edited("insert before step put\n  x: east does \"x\"\nend"));
        assertEquals("look; " + PUT + "; x; open; " + SEEN + "; last", edited("insert after step put\n  x: east does \"x\"\nend"));
    }

    @Test
    void phaseByPhaseGoesBesidePhaseByPhase() throws IOException {
        assertEquals(
                "look; [(seen A; put A; carries A) | (seen B; put B; carries B) | (seen C; put C; carries C)]; open; last",
                edited("step seen before step put"));
        assertEquals(
                "look; [(carries A; put A) | (carries B; put B) | (carries C; put C)]; open; " + SEEN + "; last", edited("step put after step carries"));
    }

    @Test
    void whatIsMovedKeepsItsFreedom() throws IOException {
        assertEquals("[seen A | seen B | seen C]; look; " + PUT + "; open; last", edited("step seen before step look"));
    }

    @Test
    void aPartOnOnePhaseHasNoOrderAgainstTheRest() throws IOException {
        assertEquals(PUT + "; [open AC & (look; open B)]; " + SEEN + "; last", edited("step look before step open on phase B"));
        assertEquals("look; " + PUT + "; [open AC & open A]; " + SEEN + "; last", edited("step open on phase B instead: east opens R on A"));
        assertEquals("look; " + PUT + "; [open AB & open B]; " + SEEN + "; last", edited("step open on phase B instead of C"));
        String ordered = HEAD + STEPS.replace("on all phases", "on all phases, in order") + "variant OUT-a \"Edited\" of OUT\n  step look before step open on phase B\n";
        assertEquals(PUT + "; open A; look; open B; open C; " + SEEN + "; last", steps(ordered, "OUT-a"));
    }

    @Test
    void aSingleStepInsteadKeepsTheLabel() throws IOException {
        assertEquals("look; [(put; carries A) | (put; carries B) | (put; carries C)]; open; " + SEEN + "; last", edited("step put instead: east does \"no\""));
        assertEquals("look; " + PUT + "; open A; " + SEEN + "; last", edited("step open instead\n  east opens R on A\nend"));
        assertEquals("look; " + PUT + "; [open & open]; " + SEEN + "; last", edited("step open instead: boss tags R and gang"));
        assertEquals("look; " + PUT + "; first A; second B; " + SEEN + "; last", edited("step open instead\n  first: east opens R on A\n  second: east opens R on B\nend"));
    }

    private static final String CALLEE =
            """
            language 1
            procedure IN revision 1
            title "In"
            keeps no-interruption
            for recloser D with single-phase units
            crew
              chief "Chief", in charge
              fitter "Fitter", on the source side
            temporary
              bypass-jumper J for each phase of D
            hold H for D, held at every device that feeds D and at D, by chief
            starts with
              D is closed
              either given reclosing of D is on or given reclosing of D is blocked and given D is on the pole
            stage "In"
              a: chief briefs fitter
              b: fitter proves J carries current on B
                requires D is closed on all phases
            ends with
              D is closed
            """;

    private static final String CALLER = HEAD.replace("proved on", "hold H for R, held at R and at every device that feeds R, by boss\nproved on");

    private static String callee(String text, String calls) {
        return text + calls.replace("language 1\n", "");
    }

    private static List<String> reasons(String callee, String caller, String call) throws IOException {
        Library library = read(callee(callee, caller + call));
        Procedure procedure = library.procedures().get("OUT");
        Procedure.Proof proof = procedure.proofs().get(0);
        Problems problems = new Problems();
        boolean shared = Binding.bind(procedure, library.networks().get(proof.network()), proof, problems).isPresent();
        List<String> reasons = PlainBinding.bind(procedure, library.networks().get(proof.network()), proof).reasons();
        assertEquals(shared, reasons.isEmpty(), () -> reasons + " and " + problems.sorted());
        return reasons;
    }

    private static final String CALL = "call IN with R as D, boss as chief, east as fitter\n";

    @Test
    void aCallIsItsStartItsStepsAndItsEnd() throws IOException {
        assertEquals("(begins IN; a; b B; ends IN)", steps(callee(CALLEE, CALLER + CALL), "OUT"));
        String bare = CALLEE.replaceAll("(?s)starts with.*?stage", "stage").replaceAll("(?s)ends with.*", "");
        assertEquals("(begins IN; a; b B; ends IN)", steps(callee(bare, CALLER + CALL), "OUT"));
    }

    @Test
    void whatTheCalledProcedureNeedsMustBeTheSameHere() throws IOException {
        assertEquals(List.of(), reasons(CALLEE, CALLER, CALL));
        for (String caller : List.of(
                HEAD,
                CALLER.replace("by boss", "by west"),
                CALLER.replace("held at R and at every device that feeds R", "held at R"),
                CALLER.replace("hold H for R", "clearance H for R"),
                CALLER.replace("bypass-jumper J", "light-jumper J"),
                CALLER.replace("bypass-jumper J for each phase of R", "bypass-jumper J for each phase of lane"),
                CALLER.replace("bypass-jumper J", "bypass-jumper X"),
                CALLER.replace("on the source side", "on the load side"))) {
            assertEquals(1, reasons(CALLEE, caller, CALL).size(), caller);
        }
    }

    @Test
    void whoHoldsTheHoldIsInCharge() throws IOException {
        assertEquals(List.of(), reasons(CALLEE, CALLER.replace(", in charge", ""), CALL));
    }

    @Test
    void aCalledVariantIsChangedBeforeItIsCalled() throws IOException {
        String variant = CALLEE + "variant IN-a \"Changed\" of IN\n  without step a\n";
        assertEquals("(begins IN-a; b B; ends IN-a)", steps(callee(variant, CALLER + CALL.replace("IN", "IN-a")), "OUT"));
    }

    @Test
    void aVariantMayChangeWhatItsBaseCalls() throws IOException {
        String twice = CALLER + CALL + "open: west opens R on all phases\n" + CALL;
        assertEquals(
                "(begins IN; a; b B; ends IN); open; (begins IN; a; b B; ends IN)", steps(callee(CALLEE, twice), "OUT"));
        assertEquals(
                "(begins IN; a; ends IN); open; (begins IN; a; ends IN)",
                steps(callee(CALLEE, twice + "variant OUT-a \"Edited\" of OUT\n  without step b\n"), "OUT-a"));
        assertEquals(
                "open; (begins IN; a; b B; ends IN); (begins IN; a; b B; ends IN)",
                steps(callee(CALLEE, twice + "variant OUT-a \"Edited\" of OUT\n  step open before step a\n"), "OUT-a")
                        .replace("(begins IN; open; a;", "open; (begins IN; a;"));
    }

    @Test
    void aCallInsideACallKeepsBothContracts() throws IOException {
        String middle = CALLEE.replace("procedure IN ", "procedure MID ").replaceAll("(?s)  a: chief.*?ends", "  call IN with D as D\nends");
        String text = callee(callee(CALLEE, middle), CALLER + CALL.replace("IN", "MID"));
        assertEquals("(begins MID; (begins IN; a; b B; ends IN); ends MID)", steps(text, "OUT"));
    }

    @Test
    void whatOnlyTheOutermostCallerBringsDoesNotServeACallInsideACall() throws IOException {
        String middle = CALLEE.replace("procedure IN ", "procedure MID ").replaceAll("(?s)  a: chief.*?ends", "  call IN with D as D\nends");
        String call = CALL.replace("IN", "MID");
        assertEquals(List.of(), reasons(callee(CALLEE, middle), CALLER, call));
        String without = middle.replaceAll("(?s)temporary.*?hold", "hold");
        assertEquals(1, reasons(callee(CALLEE, without), CALLER, call).size());
        assertEquals(1, reasons(callee(CALLEE, middle.replaceAll("(?m)^hold H.*\n", "")), CALLER, call).size());
    }

    @Test
    void aStepOnAPhaseThatItsDeviceLacksIsRefusedByBoth() throws IOException {
        String network = "network thin \"Thin\"\nuses overhead\nsystem voltage 12.47 kV, frequency 60 Hz\n"
                + "source bus at s-0, phases ABC, supply grid, fault level 100 MVA, reactance ratio 8\n"
                + "switch tap from s-0 to s-1, phases A, at pole-9\nload lane at s-1, phases A, 30 kW, 10 kvar, 9 customers\n";
        List<Source> sources = new ArrayList<>();
        for (String file : List.of("shared/equipment/overhead.equipment", "shared/rules/no-interruption.rules")) {
            sources.add(new Source(file, Files.readString(Path.of(file))));
        }
        sources.add(new Source("thin.network", "language 1\n" + network));
        sources.add(new Source(
                "thin.procedure",
                "language 1\nprocedure THIN revision 1\ntitle \"Thin\"\nkeeps no-interruption\ncrew\n  east \"Lineworker\", in charge\n"
                        + "proved on thin\nstage \"All\"\n  east opens tap on B\n"));
        Library library = new Reader().readSources(sources);
        assertTrue(!library.hasErrors(), () -> library.problems().toString());
        Procedure procedure = library.procedures().get("THIN");
        Procedure.Proof proof = procedure.proofs().get(0);
        assertEquals(
                List.of("“east opens tap on B”: tap has no phase of B"),
                PlainBinding.bind(procedure, library.networks().get("thin"), proof).reasons());
        Problems problems = new Problems();
        assertTrue(Proving.prepare(procedure, library.networks().get("thin"), proof, problems).isEmpty());
        assertEquals("tap has no phase B: it has A", problems.sorted().get(0).message());
    }
}
