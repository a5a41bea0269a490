package org.keeplit.electric.flow;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.keeplit.electric.flow.FlowModel.GROUND;

import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.keeplit.electric.complex.Complex;
import org.keeplit.electric.complex.ComplexMatrix;

/**
 * The 33-bus feeder of Baran and Wu (IEEE Trans. Power Delivery 4, 1989), as one phase of its
 * balanced equivalent: loss 202.68 kW with the ties open and 139.55 kW after reconfiguration.
 */
class BaranWuTest {
    private static final double LINE_TO_LINE = 12660;

    /** All 37 branches, each with a contact at its sending end. */
    private static FlowModel model() {
        FlowModelBuilder builder = FlowModel.builder();
        double volts = LINE_TO_LINE / Math.sqrt(3);
        builder.source("source", new int[] {builder.terminal("1")}, GROUND,
                new Complex[] {Complex.real(volts)}, ComplexMatrix.diagonal(new Complex(0, 1e-6)));
        for (Csv.Row row : Csv.read("baran-wu-33/branches.csv")) {
            String name = row.text("branch");
            int middle = builder.terminal("switch " + name);
            builder.contact(name, builder.terminal(row.text("from")), middle,
                    new Complex(1e-5, 0), row.text("normal").equals("closed"));
            builder.line("line " + name, new int[] {middle}, new int[] {builder.terminal(row.text("to"))},
                    ComplexMatrix.diagonal(new Complex(row.number("r_ohm"), row.number("x_ohm"))), 1);
        }
        for (Csv.Row row : Csv.read("baran-wu-33/buses.csv")) {
            Complex power = new Complex(row.number("p_kw"), row.number("q_kvar")).times(1000.0 / 3);
            builder.load("load " + row.text("bus"), builder.terminal(row.text("bus")), GROUND, volts,
                    LoadPower.constantPower(power));
        }
        return builder.build();
    }

    private static FlowState open(FlowModel model, Set<String> open) {
        FlowState.Editor editor = model.baseState().edit();
        for (int e = 0; e < model.elements().size(); e++) {
            if (model.elements().get(e) instanceof Contact contact) {
                editor.contact(e, !open.contains(contact.name()));
            }
        }
        return editor.state();
    }

    private static double lossInKilowatts(FlowModel model, FlowState state) {
        FlowSolution solution = model.solver().solve(state).solution().orElseThrow();
        assertEquals(3715, 3 * solution.loadPower().re() / 1000, 0.01);
        return 3 * solution.losses().re() / 1000;
    }

    @Test
    void lossWithTheTiesOpen() {
        FlowModel model = model();
        double loss = lossInKilowatts(model, open(model, Set.of("33", "34", "35", "36", "37")));
        assertEquals(202.68, loss, 0.0005 * 202.68);
    }

    @Test
    void lossAfterReconfiguration() {
        FlowModel model = model();
        double loss = lossInKilowatts(model, open(model, Set.of("7", "9", "14", "32", "37")));
        assertEquals(139.55, loss, 0.0005 * 139.55);
    }

    @Test
    void loopsAreSolvedToo() {
        FlowModel model = model();
        double loss = lossInKilowatts(model, open(model, Set.of()));
        // With every tie closed the loss is below that of the best radial arrangement.
        assertEquals(List.of(true, true), List.of(loss < 139.55, loss > 100));
    }
}
