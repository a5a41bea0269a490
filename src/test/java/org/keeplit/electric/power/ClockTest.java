package org.keeplit.electric.power;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.keeplit.electric.Electric;
import org.keeplit.electric.GridBuilder;
import org.keeplit.electric.complex.Complex;
import org.keeplit.electric.flow.FlowSolution;
import org.keeplit.language.Library;
import org.keeplit.language.Reader;
import org.keeplit.network.Conductor;
import org.keeplit.network.Network;
import org.keeplit.network.Phases;
import org.keeplit.program.Vertex;
import org.keeplit.text.ProblemPrinter;
import org.keeplit.text.Source;

/** The clock number of a bank is what its secondary lags by, 30 degrees an hour (IEC 60076-1, from memory). */
class ClockTest {
    @ParameterizedTest
    @CsvSource({
        "delta to grounded wye,1",
        "delta to grounded wye,11",
        "delta to grounded wye,5",
        "delta to grounded wye,7",
        "grounded wye to delta,1",
        "grounded wye to delta,11",
        "grounded wye to delta,5",
        "ungrounded wye to delta,7",
        "delta to delta,0",
        "grounded wye to grounded wye,0",
    })
    void theSecondaryLagsByTheClock(String connection, int clock) throws IOException {
        String text =
                """
                language 1
                network bank "A bank"
                uses overhead
                system voltage 12.47 kV, frequency 60 Hz
                source bus at s-0, phases ABC, supply grid, fault level 100 MVA, reactance ratio 8
                transformer t from s-0 to low, phases ABC, %s, rating 500 kVA, low voltage 480 V, impedance 5 %%
                load pump at low, phases ABC, delta, 20 kW, 1 kvar, 1 customer
                """
                        .formatted(clock == 0 ? connection : connection + ", clock " + clock);
        Library library = new Reader()
                .readSources(List.of(
                        new Source("overhead.equipment", Files.readString(Path.of("shared/equipment/overhead.equipment"))),
                        new Source("bank.network", text)));
        assertEquals("", ProblemPrinter.print(library.problems()));
        Network network = library.networks().get("bank");
        Electric electric = new Electric(new GridBuilder(network).build(), c -> false, c -> true);
        PowerModel model = PowerModel.of(electric.cells().grid());
        PowerStates states = new PowerStates(model, electric.cells(), c -> true);
        FlowSolution flow = states.solve(states.state(electric.startSet(), 0, PowerStates.Taps.AS_STATED))
                .solution()
                .orElseThrow();
        for (Conductor phase : Phases.ABC) {
            Complex high = volts(model, flow, "s-0", phase);
            Complex low = volts(model, flow, "low", phase);
            double lag = Math.floorMod(Math.round(high.degrees() - low.degrees()), 360);
            assertEquals(30.0 * clock, lag, 2.0, connection + " on phase " + phase);
            assertEquals(480 / Math.sqrt(3), low.abs(), 5, connection + " on phase " + phase);
        }
    }

    private static Complex volts(PowerModel model, FlowSolution flow, String node, Conductor phase) {
        int vertex = model.grid().number(new Vertex.AtNode(node, phase)).orElseThrow();
        return flow.voltage(model.terminal(vertex));
    }
}
