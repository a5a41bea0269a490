package org.keeplit.electric.flow;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.keeplit.electric.complex.Complex;

class TapSettlementTest {
    private static List<LineDropControl> controls(IeeeFeeder feeder, String folder) {
        List<LineDropControl> controls = new ArrayList<>();
        for (Csv.Row row : Csv.read(folder + "/published_regulator_taps.csv")) {
            controls.add(new LineDropControl(
                    feeder.element.get(row.text("regulator") + "." + row.text("phase")),
                    row.number("pt_ratio"),
                    row.number("ct_rating"),
                    new Complex(row.number("r_volt"), row.number("x_volt")),
                    row.number("volt_hold"),
                    row.number("bandwidth")));
        }
        return controls;
    }

    private static FlowState neutral(IeeeFeeder feeder, List<LineDropControl> controls) {
        FlowState.Editor editor = feeder.model.baseState().edit();
        controls.forEach(control -> editor.tap(control.regulator(), 0));
        return editor.state();
    }

    /** Settings and taps as printed (IEEE PES 13-node feeder, 2004). */
    @Test
    void thePrintedTapsOfThe13NodeFeederAreAtRest() {
        IeeeFeeder feeder = IeeeFeeder.thirteen();
        TapSettlement end = TapSettlement.settle(
                feeder.model.solver(), feeder.model.baseState(), controls(feeder, "ieee13"), 40);
        assertTrue(end.atRest());
        assertEquals(feeder.model.baseState(), end.result().state());
        assertEquals(1, end.rounds());
    }

    /** The printed taps were found in another order of stepping; ours differ by a step at most. */
    @Test
    void fromNeutralThe34NodeFeederComesWithinAStepOfThePrintedTaps() {
        IeeeFeeder feeder = IeeeFeeder.thirtyFour();
        List<LineDropControl> controls = controls(feeder, "ieee34");
        TapSettlement end =
                TapSettlement.settle(feeder.model.solver(), neutral(feeder, controls), controls, 40);
        assertTrue(end.atRest());
        for (LineDropControl control : controls) {
            int printed = feeder.model.baseState().tap(control.regulator());
            assertEquals(printed, end.result().state().tap(control.regulator()), 1);
            double seen = control.seen(end.result().solution().orElseThrow());
            assertEquals(control.level(), seen, control.bandwidth() / 2);
        }
    }

    @Test
    void aRegulatorAtTheEndOfItsRangeIsAtRest() {
        IeeeFeeder feeder = IeeeFeeder.thirteen();
        int regulator = feeder.element.get("RG60.A");
        List<LineDropControl> greedy =
                List.of(new LineDropControl(regulator, 20, 700, Complex.ZERO, 200, 2));
        TapSettlement end = TapSettlement.settle(feeder.model.solver(), feeder.model.baseState(), greedy, 40);
        assertTrue(end.atRest());
        assertEquals(16, end.result().state().tap(regulator));
    }

    @Test
    void aBandNarrowerThanAStepNeverComesToRest() {
        IeeeFeeder feeder = IeeeFeeder.thirteen();
        List<LineDropControl> nervous = List.of(
                new LineDropControl(feeder.element.get("RG60.A"), 20, 700, Complex.ZERO, 122, 0.1));
        TapSettlement end = TapSettlement.settle(feeder.model.solver(), feeder.model.baseState(), nervous, 20);
        assertFalse(end.atRest());
    }
}
