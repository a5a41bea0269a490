package org.keeplit.electric.flow;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.keeplit.electric.flow.FlowModel.GROUND;

import java.util.List;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;
import org.keeplit.electric.complex.Complex;
import org.keeplit.electric.complex.ComplexMatrix;

/** What cannot be computed is refused with sentences that name the element. */
class FlowModelBuilderTest {
    private static final Complex OHM = new Complex(1, 1);

    private static List<String> problems(Consumer<FlowModelBuilder> additions) {
        FlowModelBuilder builder = FlowModel.builder();
        builder.source("source", new int[] {builder.terminal("a")}, GROUND, new Complex[] {Complex.real(7200)},
                ComplexMatrix.diagonal(OHM));
        additions.accept(builder);
        return assertThrows(FlowModelException.class, builder::build).problems();
    }

    private static int[] one(FlowModelBuilder builder, String name) {
        return new int[] {builder.terminal(name)};
    }

    private static void lineIs(String expected, ComplexMatrix impedance, double length) {
        assertEquals(List.of(expected), problems(b -> b.line("L", one(b, "a"), one(b, "b"), impedance, length)));
    }

    @Test
    void linesNeedLengthAndImpedance() {
        lineIs("Line section \"L\" has length 0.0.", ComplexMatrix.diagonal(OHM), 0);
        lineIs("Line section \"L\" has length -1.0.", ComplexMatrix.diagonal(OHM), -1);
        lineIs("Line section \"L\" has length NaN.", ComplexMatrix.diagonal(OHM), Double.NaN);
        lineIs("Line section \"L\" has no impedance on conductor 1.", ComplexMatrix.zero(1), 1);
        lineIs("Line section \"L\" has an impedance that is no number.",
                ComplexMatrix.diagonal(new Complex(Double.NaN, 1)), 1);
    }

    @Test
    void lineMatricesHaveToFitAndToBeReciprocal() {
        assertEquals(
                List.of("Line section \"L\" has 1 and 1 ends, 2 rows of impedance and 1 of admittance."),
                problems(b -> b.line("L", one(b, "a"), one(b, "b"), ComplexMatrix.diagonal(OHM, OHM), 1)));
        ComplexMatrix oneWay = ComplexMatrix.of(2, 2, (i, j) -> i == j ? OHM : Complex.real(i * 0.5));
        assertEquals(
                List.of("Line section \"L\" has an impedance that differs between two conductors taken either way"
                        + " round."),
                problems(b -> b.line("L", b.terminals("a", "AB"), b.terminals("b", "AB"), oneWay, 1)));
        assertEquals(
                List.of("Line section \"L\" has a singular impedance matrix."),
                problems(b -> b.line("L", b.terminals("a", "AB"), b.terminals("b", "AB"),
                        ComplexMatrix.balanced(2, OHM, OHM), 1)));
    }

    @Test
    void transformersNeedConnectedWindingsWithLeakage() {
        assertEquals(
                List.of("Transformer \"T\" has 1 winding, and needs two."),
                problems(b -> b.transformer("T", new Winding(b.terminal("a"), GROUND, 7200, OHM))));
        assertEquals(
                List.of("Winding 2 of transformer \"T\" is not connected: both its ends are the same terminal."),
                problems(b -> b.transformer("T", new Winding(b.terminal("a"), GROUND, 7200, OHM),
                        new Winding(GROUND, GROUND, 120, OHM))));
        assertEquals(
                List.of("Winding 1 of transformer \"T\" has no leakage impedance.",
                        "Winding 2 of transformer \"T\" has the rated voltage 0.0."),
                problems(b -> b.transformer("T", new Winding(b.terminal("a"), GROUND, 7200, Complex.ZERO),
                        new Winding(b.terminal("b"), GROUND, 0, OHM))));
    }

    @Test
    void contactsAndRegulatorsNeedImpedance() {
        assertEquals(
                List.of("Contact \"C\" has no impedance."),
                problems(b -> b.contact("C", b.terminal("a"), b.terminal("b"), Complex.ZERO, true)));
        assertEquals(
                List.of("Contact \"C\" begins and ends at the same terminal."),
                problems(b -> b.contact("C", b.terminal("a"), b.terminal("a"), OHM, true)));
        assertEquals(
                List.of("Regulator \"R\" has taps -16 to 16, not 17.",
                        "Regulator \"S\" has no impedance."),
                problems(b -> {
                    b.regulator("R", b.terminal("a"), b.terminal("b"), GROUND, RegulatorKind.TYPE_B, OHM, 17);
                    b.regulator("S", b.terminal("a"), b.terminal("b"), GROUND, RegulatorKind.TYPE_B, Complex.ZERO, 0);
                }));
    }

    @Test
    void isolatedRegulatorsAreNamed() {
        assertEquals(
                List.of("Regulator \"R\" is isolated: nothing else is connected to its load terminal \"b\"."),
                problems(b -> b.regulator(
                        "R", b.terminal("a"), b.terminal("b"), GROUND, RegulatorKind.TYPE_B, OHM, 0)));
    }

    @Test
    void loadsNeedAVoltageAndAPowerForEachCase() {
        assertEquals(
                List.of("Load \"D\" has the rated voltage 0.0."),
                problems(b -> b.load("D", b.terminal("a"), GROUND, 0, LoadPower.constantPower(OHM))));
        assertEquals(
                List.of("Load \"D\" has a power that is no number."),
                problems(b -> b.load("D", b.terminal("a"), GROUND, 7200,
                        LoadPower.constantPower(new Complex(Double.POSITIVE_INFINITY, 0)))));
        assertEquals(
                List.of("Load \"D\" begins and ends at the same terminal."),
                problems(b -> b.load("D", b.terminal("a"), b.terminal("a"), 7200, LoadPower.NONE)));
        assertEquals(
                List.of("Load \"D\" has 1 powers for 2 load cases."),
                problems(b -> b.loadCases("peak", "light")
                        .load("D", b.terminal("a"), GROUND, 7200, new LoadPower[] {LoadPower.NONE})));
    }

    @Test
    void sourcesHaveToFit() {
        assertEquals(
                List.of("Source \"S\" has 1 phases, 2 voltages and 1 rows of impedance."),
                problems(b -> b.source(
                        "S", one(b, "b"), GROUND, new Complex[] {OHM, OHM}, ComplexMatrix.diagonal(OHM))));
        FlowModelBuilder empty = FlowModel.builder();
        empty.shunt("K", empty.terminal("a"), GROUND, OHM);
        assertEquals(
                List.of("The model has no source, so that everything in it is dead."),
                assertThrows(FlowModelException.class, empty::build).problems());
    }

    @Test
    void strayTerminalsAreNamed() {
        assertEquals(List.of("Terminal \"b\" belongs to no element."), problems(b -> b.terminal("b")));
        assertEquals(
                List.of("Element \"C\" is connected to a terminal that does not exist."),
                problems(b -> b.contact("C", b.terminal("a"), 99, OHM, true)));
    }

    @Test
    void statesRefuseWhatTheModelDoesNotHave() {
        FlowModelBuilder builder = FlowModel.builder();
        int source = builder.source("source", new int[] {builder.terminal("a")}, GROUND,
                new Complex[] {Complex.real(7200)}, ComplexMatrix.diagonal(OHM));
        int contact = builder.contact("C", builder.terminal("a"), builder.terminal("b"), OHM, true);
        int regulator = builder.regulator("R", builder.terminal("b"), builder.terminal("a"), GROUND,
                RegulatorKind.TYPE_B, OHM, 0);
        FlowState.Editor editor = builder.build().baseState().edit();
        assertEquals("\"source\" is not a contact.", message(() -> editor.contact(source, true)));
        assertEquals("\"C\" is not a regulator.", message(() -> editor.tap(contact, 1)));
        assertEquals("\"source\" is not a generator.", message(() -> editor.generator(source, true)));
        assertEquals("Regulator \"R\" has taps -16 to 16, not -17.", message(() -> editor.tap(regulator, -17)));
        assertEquals("There is no load case number 1.", message(() -> editor.loadCase(1)));
        assertEquals(
                "Contact \"C\" cannot have the impedance 0.0 + j0.0 ohm.",
                message(() -> editor.impedance(contact, Complex.ZERO)));
    }

    private static String message(Runnable edit) {
        return assertThrows(IllegalArgumentException.class, edit::run).getMessage();
    }
}
