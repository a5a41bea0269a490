package org.keeplit.language;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.keeplit.condition.Condition;
import org.keeplit.condition.Figure;
import org.keeplit.condition.Measure;
import org.keeplit.condition.PhaseTerm;
import org.keeplit.condition.Term;
import org.keeplit.condition.Type;
import org.keeplit.network.Conductor;
import org.keeplit.network.Phases;
import org.keeplit.procedure.Action;
import org.keeplit.procedure.Actions;
import org.keeplit.procedure.Block;
import org.keeplit.rule.Rule;
import org.keeplit.rule.Template;
import org.keeplit.unit.Dimension;
import org.keeplit.unit.Quantity;

/** Figures and comparisons in the sample files, as typed trees. */
class FiguresTest {
    private static final PhaseTerm P = new PhaseTerm.Variable("P");

    private final Library library = Samples.library();

    private Rule rule(String name) {
        return library.rulebooks().get("figures").rules().stream()
                .filter(r -> r.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    private static Condition.Compare compare(Condition condition) {
        return assertInstanceOf(Condition.Compare.class, condition);
    }

    private static Figure.Measured measured(Figure figure) {
        return assertInstanceOf(Figure.Measured.class, figure);
    }

    private static Figure.Rated rated(Figure figure) {
        return assertInstanceOf(Figure.Rated.class, figure);
    }

    @Test
    void aMeasuredFigureAgainstANameplate() {
        Condition.Compare compare = compare(rule("jumper-within-rating").body());
        Figure.Measured left = measured(compare.left());
        assertEquals(Measure.CURRENT, left.measure());
        assertEquals("J", left.of().toString());
        assertEquals(Type.JUMPER, left.of().type());
        assertEquals(P, left.phase());
        assertEquals(Condition.Comparison.AT_MOST, compare.comparison());
        Figure.Rated right = rated(compare.right());
        assertEquals("continuous", right.name(), "kept as the kind keeps it");
        assertEquals(Dimension.CURRENT, right.dimension());
    }

    @Test
    void gapsTellFigures() {
        List<Template.Part> parts = rule("jumper-within-rating").says().parts();
        assertEquals(new Template.Gap("", "J"), parts.get(0));
        Template.FigureGap gap = assertInstanceOf(Template.FigureGap.class, parts.get(2));
        assertEquals(P, measured(gap.figure()).phase());
        int column = gap.figure().span().column();
        String line = gap.figure().span().source().line(gap.figure().span().line());
        assertEquals("current through J on P", line.substring(column - 1, column - 1 + gap.figure().span().length()));
        assertEquals("continuous", rated(((Template.FigureGap) parts.get(4)).figure()).name());
        Template.FigureGap part = (Template.FigureGap) rule("residual").says().parts().get(0);
        assertInstanceOf(Figure.Part.class, part.figure());
    }

    @Test
    void aPartOfAFigure() {
        Condition.Compare compare = compare(rule("residual").body());
        assertEquals(Measure.RESIDUAL, measured(compare.left()).measure());
        assertEquals(Condition.Comparison.BELOW, compare.comparison());
        Figure.Part part = assertInstanceOf(Figure.Part.class, compare.right());
        assertEquals(0.8, part.factor(), 1e-12);
        assertEquals("ground pickup", rated(part.figure()).name());
        assertEquals("80 % of the ground pickup of D", part.toString());
    }

    @Test
    void severalComparisonsOfOneFigure() {
        Condition.All all = assertInstanceOf(Condition.All.class, rule("voltage").body());
        Condition.Compare low = compare(all.parts().get(0));
        Condition.Compare high = compare(all.parts().get(1));
        assertEquals(low.left(), high.left());
        assertInstanceOf(Term.NodeOf.class, measured(low.left()).of(), "a load stands for its node");
        assertEquals(Condition.Comparison.AT_LEAST, low.comparison());
        Figure.Part part = (Figure.Part) high.right();
        assertEquals(1.05, part.factor(), 1e-12);
        assertEquals("nominal voltage", rated(part.figure()).name());
        assertEquals(Type.POINT, rated(part.figure()).of().type());
    }

    @Test
    void betweenIsTwoComparisons() {
        Condition.All all = assertInstanceOf(Condition.All.class, rule("limits").body());
        assertEquals(Condition.Comparison.AT_LEAST, compare(all.parts().get(0)).comparison());
        assertEquals("voltage low", rated(compare(all.parts().get(0)).right()).name());
        assertEquals(Condition.Comparison.AT_MOST, compare(all.parts().get(1)).comparison());
        assertEquals("voltage high", rated(compare(all.parts().get(1)).right()).name());
    }

    @Test
    void comparisonsStandBesideOtherConditions() {
        Condition.One one = assertInstanceOf(Condition.One.class, rule("across").body());
        Condition.Compare across = compare(one.parts().get(0));
        assertEquals(Measure.VOLTAGE_ACROSS, measured(across.left()).measure());
        assertEquals(new Quantity(20, Dimension.VOLTAGE), ((Figure.Given) across.right()).quantity());
        assertInstanceOf(Condition.Atom.class, one.parts().get(1));
    }

    @Test
    void loadingFaultCurrentAndTurnedRound() {
        Condition.One one = assertInstanceOf(Condition.One.class, rule("loading").body());
        Condition.Compare loading = compare(((Condition.Quantified) one.parts().get(0)).body());
        assertEquals(Measure.LOADING, measured(loading.left()).measure());
        assertEquals(1, ((Figure.Given) loading.right()).quantity().si(), 1e-12);
        assertEquals(PhaseTerm.ALL, measured(loading.left()).phase());
        Condition.Compare fault = compare(((Condition.Quantified) one.parts().get(1)).body());
        assertInstanceOf(Term.LineOf.class, measured(fault.left()).of());
        assertEquals(1e4, ((Figure.Given) fault.right()).quantity().si());
        Condition.Compare turned = compare(((Condition.Quantified) one.parts().get(2)).body());
        assertInstanceOf(Figure.Given.class, turned.left());
        assertEquals("minimum trip", rated(turned.right()).name());
        Condition.All between = (Condition.All) ((Condition.Quantified) one.parts().get(3)).body();
        Figure.Measured through = measured(compare(between.parts().get(0)).left());
        assertEquals(new PhaseTerm.Given(Phases.parse("AB").orElseThrow()), through.phase());
    }

    @Test
    void anyBindsInsideAFigure() {
        Rule never = rule("not-above");
        assertEquals("J", never.binders().get(0).variable());
        Condition.Compare above = compare(((Condition.Not) never.body()).body());
        assertEquals(Condition.Comparison.ABOVE, above.comparison());
    }

    private Block.Step step(int at) {
        List<Block> stage = ((Block.Stage) library.procedures()
                        .get("measuring")
                        .body()
                        .get(0))
                .parts();
        Block block = at < 2 ? ((Block.ForEachPhase) stage.get(0)).parts().get(at) : stage.get(at - 1);
        return (Block.Step) block;
    }

    private Action.MeasureFigure measure(int at) {
        return assertInstanceOf(Action.MeasureFigure.class, step(at).action());
    }

    @Test
    void aStepMeasuresAndHasALimit() {
        Block.Step step = step(0);
        assertEquals(Optional.of("share"), step.label());
        assertEquals(P, step.phases(), "the phases of the figure are those of the step");
        Condition.Compare limit = compare(measure(0).limit().orElseThrow());
        assertEquals(measure(0).figure(), limit.left());
        assertEquals(20, ((Figure.Given) limit.right()).quantity().si());
        assertEquals(Optional.of(measure(0).figure().of()), Actions.object(step.action()));
        Condition.Compare onB = compare(measure(0).limitOn(Conductor.B).orElseThrow());
        assertEquals(new PhaseTerm.Given(Phases.of(Conductor.B)), measured(onB.left()).phase());
    }

    @Test
    void aLimitMayHaveTwoSidesOrBeMissing() {
        Condition.All both = assertInstanceOf(Condition.All.class, measure(1).limit().orElseThrow());
        assertEquals(2, both.parts().size());
        assertEquals(true, step(1).ordered());
        Condition.All onC = (Condition.All) measure(1).limitOn(Conductor.C).orElseThrow();
        assertEquals(new PhaseTerm.Given(Phases.of(Conductor.C)), measured(compare(onC.parts().get(1)).left()).phase());
        assertEquals(Optional.empty(), Actions.object(measure(2)), "the residual current is of all phases together");
        assertEquals(2, step(2).actors().size());
        assertEquals(Optional.empty(), measure(3).limit());
        Action.Check check = assertInstanceOf(Action.Check.class, step(4).action());
        assertEquals(Measure.LOADING, measured(compare(check.condition()).left()).measure());
    }
}
