package org.keeplit.language;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.keeplit.condition.PhaseTerm;
import org.keeplit.condition.Type;
import org.keeplit.network.Conductor;
import org.keeplit.network.LeadEnd;
import org.keeplit.network.Phases;
import org.keeplit.network.Side;
import org.keeplit.procedure.Action;
import org.keeplit.procedure.Block;
import org.keeplit.procedure.DeviceSet;
import org.keeplit.procedure.Edit;
import org.keeplit.procedure.Permit;
import org.keeplit.procedure.Procedure;
import org.keeplit.rule.Rulebook;

/** What the sample procedures say, as typed trees. */
class ProceduresTest {
    private final Library library = Samples.library();
    private final List<Block.Step> steps = new ArrayList<>();

    ProceduresTest() {
        collect(library.procedures().get("every-step").body());
    }

    private Procedure procedure(String name) {
        return library.procedures().get(name);
    }

    private void collect(List<Block> blocks) {
        for (Block block : blocks) {
            if (block instanceof Block.Step step) {
                steps.add(step);
            } else if (block instanceof Block.Group group) {
                collect(group.parts());
            } else if (block instanceof Block.Stage stage) {
                collect(stage.parts());
            } else if (block instanceof Block.ForEachPhase each) {
                collect(each.parts());
            } else if (block instanceof Block.Repeat repeat) {
                collect(repeat.parts());
            } else if (block instanceof Block.IfFound choice) {
                collect(choice.then());
                collect(choice.otherwise());
            }
        }
    }

    private Block.Step step(String part) {
        return steps.stream()
                .filter(s -> s.sentence().contains(part))
                .findFirst()
                .orElseThrow();
    }

    private <A extends Action> A action(Class<A> type, String part) {
        return assertInstanceOf(type, step(part).action());
    }

    private static PhaseTerm on(String phases) {
        return new PhaseTerm.Given(Phases.parse(phases).orElseThrow());
    }

    @Test
    void theHeader() {
        Procedure p = procedure("every-step");
        assertEquals("2b", p.revision());
        assertEquals(
                List.of("no-interruption", "live-line"),
                p.keeps().stream().map(Rulebook::name).toList());
        assertEquals(
                List.of("R", "V", "C1"),
                p.parameters().stream().map(Procedure.Parameter::name).toList());
        assertEquals(Optional.of(false), p.parameters().get(0).ganged());
        assertTrue(p.crew().get(0).inCharge());
        assertEquals(Optional.of(Side.SOURCE), p.crew().get(1).side());
        assertTrue(p.crew().get(3).desk());
        assertEquals(
                List.of("J", "K", "G", "M"),
                p.temporaries().stream().map(t -> t.name()).toList());
        Permit hold = p.permits().get(0);
        assertEquals(Type.HOLD, hold.type());
        assertEquals("foreman", hold.holder().toString());
        assertEquals(3, hold.heldAt().size());
        assertInstanceOf(DeviceSet.Feeding.class, hold.heldAt().get(0));
        assertEquals(Type.CLEARANCE, p.permits().get(1).type());
        assertEquals("[lane, mill-works]", p.outages().toString());
        assertTrue(p.starts().get(0).given());
        assertEquals("{R=r-24, V=vr-1, C1=cap-2}", p.proofs().get(0).arguments().toString());
    }

    @Test
    void wordsAboutAHold() {
        assertEquals(
                Action.Speech.ASK, action(Action.Speak.class, "asks desk for H").speech());
        assertEquals(
                Action.Speech.ISSUE, action(Action.Speak.class, "issues H to").speech());
        assertEquals(
                Action.Speech.RELEASE, action(Action.Speak.class, "releases H").speech());
    }

    @Test
    void stepsThatKindsDeclare() {
        Action.Operate put = action(Action.Operate.class, "put R in non-reclose");
        assertEquals("puts X in non-reclose", put.verb().one().with("X"));
        assertEquals("[foreman, east]", step("put R in non-reclose").actors().toString());
        assertTrue(step("put R in non-reclose").ordered());
        Action.Operate feeding = action(Action.Operate.class, "restores reclosing of every device");
        assertInstanceOf(DeviceSet.Feeding.class, feeding.object());
        assertEquals(
                2,
                steps.stream()
                        .filter(s -> s.sentence().contains("blocks ground trip of birch"))
                        .count());
        assertTrue(step("opens R").ordered(), "phases in order");
    }

    @Test
    void jumpers() {
        Action.Install around = action(Action.Install.class, "line to line, load side first");
        assertEquals("the load-side line of R", around.first().point().toString());
        assertTrue(around.ordered());
        assertEquals(
                Optional.of("Both hold their clamps."), step("load side first").asOne());
        assertEquals(
                Optional.of(Side.SOURCE),
                action(Action.Remove.class, "removes J on P").first(),
                "the side that the step says");
        Action.Install lines = action(Action.Install.class, "east and west install J from");
        assertEquals("the load-side line of R", lines.second().point().toString());
        assertEquals(2, step("east and west install J from").actors().size());
        Action.Install inboard = action(Action.Install.class, "bushing to line");
        assertEquals("the source bushing of R", inboard.first().point().toString());
        Action.Clamp crossed = action(Action.Clamp.class, "second clamp of J on B on");
        assertEquals(Optional.of(on("C")), crossed.spot().phase());
        assertEquals(on("B"), step("second clamp of J on B on").phases());
        assertEquals(2, action(Action.Unclamp.class, "second clamp of J off").clamp());
        assertEquals(on("AB"), step("second clamp of J off").phases());
    }

    @Test
    void leadsGroundsAndProofs() {
        Action.MoveLead off = action(Action.MoveLead.class, "takes off the source-side lead");
        assertEquals(new Action.MoveLead(off.device(), Side.SOURCE, LeadEnd.LINE, false, Optional.empty()), off);
        Action.MoveLead on = action(Action.MoveLead.class, "puts on the load lead");
        assertEquals(new Action.MoveLead(on.device(), Side.LOAD, LeadEnd.BUSHING, true, Optional.empty()), on);
        Action.MoveLead rolled = action(Action.MoveLead.class, "onto phase B");
        assertEquals(Optional.of(on("B")), rolled.onto(), "a rolled lead");
        assertEquals(
                Action.Order.GROUND_END,
                action(Action.ApplyGround.class, "applies G").order());
        assertEquals(
                Action.Order.LINE_END,
                action(Action.RemoveGround.class, "removes G").order());
        assertEquals(
                Action.Proof.IN_PHASE, action(Action.Prove.class, "in phase").proof());
        assertEquals(
                Action.Proof.NEUTRAL, action(Action.Prove.class, "at neutral").proof());
        assertEquals(
                Action.Proof.CARRYING,
                action(Action.Prove.class, "carries current").proof());
        assertEquals(
                "the node of dairy",
                action(Action.TestDead.class, "node of dairy").point().toString());
        assertEquals(300, action(Action.WaitDead.class, "waits 5 min").time().si());
        assertEquals(
                List.of("good", "wet", "torn"),
                action(Action.Inspect.class, "inspects").outcomes());
        assertEquals("covers on", action(Action.Work.class, "works on").words());
        assertEquals(on("A"), step("works on").phases());
    }

    @Test
    void groups() {
        Block.Stage groups = assertInstanceOf(
                Block.Stage.class, procedure("every-step").body().get(1));
        assertEquals(Block.Order.IN_ORDER, ((Block.Group) groups.parts().get(0)).order());
        Block.ForEachPhase each =
                assertInstanceOf(Block.ForEachPhase.class, groups.parts().get(1));
        assertTrue(each.ordered());
        assertEquals("P", each.variable());
        assertTrue(((Block.Repeat) groups.parts().get(2)).exactly());
        Block.Repeat most = assertInstanceOf(Block.Repeat.class, groups.parts().get(3));
        Block.IfFound choice =
                assertInstanceOf(Block.IfFound.class, most.parts().get(1));
        assertEquals("wet", choice.outcome());
        assertEquals(1, choice.otherwise().size());
        Block.Call call = assertInstanceOf(Block.Call.class, groups.parts().get(4));
        assertEquals("{D=R, fitter=west}", call.arguments().toString());
    }

    @Test
    void aStepKeepsItsLabelItsSentenceAndItsClauses() {
        Block.Stage open =
                assertInstanceOf(Block.Stage.class, procedure("LP-12").body().get(3));
        Block.Step step = assertInstanceOf(Block.Step.class, open.parts().get(0));
        assertEquals(Optional.of("main-opening"), step.label());
        assertEquals("west opens R on all phases", step.sentence());
        assertEquals(1, step.requires().size());
        assertEquals(1, step.cautions().size());
        assertEquals(PhaseTerm.ALL, step.phases());
    }

    @Test
    void variantsAreEditsOfTheirBase() {
        Procedure moved = procedure("LP-12-a");
        Edit.Move move = assertInstanceOf(Edit.Move.class, moved.edits().get(0));
        assertTrue(move.before());
        assertEquals("main-opening on phase C", move.step().toString());
        assertEquals("bypass on phase C", move.anchor().toString());
        assertEquals(procedure("LP-12").body(), moved.body());
        assertEquals("Opened before the last phase is bypassed", moved.title());
        Procedure.MustFail fail = moved.mustFail().get(0);
        assertEquals("open-only-what-is-bypassed", fail.rule());
        assertEquals(Optional.of("main-opening"), fail.step());
        assertEquals(Optional.of(Conductor.C), fail.phase());
        assertInstanceOf(Edit.Insert.class, procedure("LP-12-b").edits().get(0));
        assertEquals(
                "[One[device=birch-breaker], One[device=R]]",
                procedure("LP-12-d").permits().get(0).heldAt().toString());
    }

    @Test
    void everyEdit() {
        Procedure p = procedure("every-edit");
        List<Edit> edits = p.edits();
        assertEquals(
                "lift-source on phase A", ((Edit.Without) edits.get(0)).step().toString());
        assertEquals("issue", ((Edit.Without) edits.get(1)).step().toString());
        Edit.OtherPhase other = assertInstanceOf(Edit.OtherPhase.class, edits.get(3));
        assertEquals("lift-load on phase C", other.step().toString(), "its part on C");
        assertEquals(Conductor.B, other.instead(), "is done on B");
        Block.Step opened = (Block.Step) ((Edit.Replace) edits.get(4)).blocks().get(0);
        assertEquals(Optional.of("opened"), opened.label());
        assertEquals("bypass on phase C", ((Edit.Replace) edits.get(5)).step().toString());
        Edit.Insert insert = assertInstanceOf(Edit.Insert.class, edits.get(6));
        assertEquals("opened", insert.anchor().toString());
        Action.Remove remove = assertInstanceOf(
                Action.Remove.class, ((Block.Step) insert.blocks().get(1)).action());
        assertEquals(Optional.of(Side.LOAD), remove.first());
        assertEquals(3, p.mustFail().size());
    }

    @Test
    void whatAVariantRestatesStandsForWhatItsBaseHas() {
        Procedure p = procedure("every-edit");
        assertEquals(
                List.of("no-interruption"),
                p.keeps().stream().map(Rulebook::name).toList());
        assertEquals(5, p.crew().size());
        assertEquals(
                List.of("J", "K"), p.temporaries().stream().map(t -> t.name()).toList());
        assertEquals(1, p.starts().size());
        assertEquals(procedure("LP-12").ends(), p.ends());
        assertEquals("[dairy]", p.outages().toString());
    }

    @Test
    void aReplacingStepGoesByTheLabelOfTheOneThatItReplaces() {
        Edit.Replace replace = assertInstanceOf(
                Edit.Replace.class, procedure("LP-12-c").edits().get(0));
        Block.Step step = assertInstanceOf(Block.Step.class, replace.blocks().get(0));
        assertEquals(Optional.of("bypass"), step.label());
        assertEquals(on("B"), step.phases());
        assertEquals(
                Optional.of(on("C")),
                assertInstanceOf(Action.Install.class, step.action()).second().phase());
    }
}
