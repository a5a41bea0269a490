package org.keeplit.electric.power;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.keeplit.Keeplit;
import org.keeplit.electric.Electric;
import org.keeplit.electric.GridBuilder;
import org.keeplit.electric.complex.Complex;
import org.keeplit.electric.flow.FlowSolution;
import org.keeplit.language.Library;
import org.keeplit.network.Conductor;
import org.keeplit.program.Vertex;

/**
 * The 13-node feeder, written in the project's own network text, comes out of the load flow as published: IEEE PES radial
 * test feeders (2004). This holds the way from text to amperes, not only the solver.
 */
class Ieee13FromTextTest {
    private static final Path FOLDER = Path.of("src/test/resources/outside/ieee13");
    private static final double BASE = 4160 / Math.sqrt(3);

    private record Solved(PowerModel model, FlowSolution flow) {}

    private static Solved solve() {
        Library library = Keeplit.read(List.of(Path.of("shared/equipment"), FOLDER));
        assertTrue(library.problems().isEmpty(), () -> library.problems().toString());
        Electric electric = new Electric(
                new GridBuilder(library.networks().get("ieee-13")).build(), c -> false, c -> true);
        PowerModel model = PowerModel.of(electric.cells().grid());
        PowerStates states = new PowerStates(model, electric.cells(), c -> true);
        return new Solved(
                model,
                states.solve(states.state(electric.startSet(), 0, PowerStates.Taps.AS_STATED))
                        .solution()
                        .orElseThrow());
    }

    @Test
    void voltagesAreThePublishedOnes() throws IOException {
        Solved solved = solve();
        int compared = 0;
        for (String line : Files.readAllLines(FOLDER.resolve("voltages.csv"))) {
            if (line.startsWith("#")) {
                continue;
            }
            String[] cells = line.split(",");
            String node = cells[0].equals("RG60") ? "rg60" : "n" + cells[0];
            Conductor phase = Conductor.valueOf(cells[1]);
            double base = node.equals("n634") ? 480 / Math.sqrt(3) : BASE;
            int vertex = solved.model.grid().number(new Vertex.AtNode(node, phase)).orElseThrow(() -> new AssertionError(line));
            Complex volts = solved.flow.voltage(solved.model.terminal(vertex));
            assertEquals(Double.parseDouble(cells[2]), volts.abs() / base, 0.0005, line);
            assertEquals(Double.parseDouble(cells[3]), volts.degrees(), 0.05, line);
            compared++;
        }
        assertEquals(35, compared);
    }

    @Test
    void loadAndLossAreThePublishedOnes() {
        Solved solved = solve();
        assertEquals(3466.2, solved.flow.loadPower().re() / 1000, 3466 * 0.001);
        assertEquals(111.06, solved.flow.losses().re() / 1000, 111.06 * 0.005);
    }
}
