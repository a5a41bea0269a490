package org.keeplit.gridfile;

import com.google.common.collect.ImmutableMap;
import java.nio.file.Path;
import java.util.List;
import org.keeplit.Keeplit;
import org.keeplit.electric.Electric;
import org.keeplit.electric.GridBuilder;
import org.keeplit.electric.complex.Complex;
import org.keeplit.electric.flow.FlowSolution;
import org.keeplit.electric.power.PowerModel;
import org.keeplit.electric.power.PowerStates;
import org.keeplit.language.Library;
import org.keeplit.language.Reader;
import org.keeplit.network.Conductor;
import org.keeplit.network.Equipment;
import org.keeplit.network.Network;
import org.keeplit.program.Vertex;
import org.keeplit.text.Source;

/** Imports grid files in tests, and solves what comes of them as text. */
final class GridFiles {
    /** The 13-node feeder as two models; see SOURCE.md beside them. */
    static final Path FOLDER = Path.of("src/test/resources/feeders/cim");

    private GridFiles() {}

    static Equipment equipment() {
        return Keeplit.read(List.of(Path.of("shared/equipment"))).equipment().get("overhead");
    }

    static GridImport.Options options() {
        return new GridImport.Options("made", equipment(), ImmutableMap.of(), 60);
    }

    static Imported read(Path... files) {
        return GridImport.read(List.of(files), options());
    }

    /** {@return the network as the reader of network texts has it, without a mistake} */
    static Network network(Imported imported) {
        Source equipment = new Reader().texts(List.of(Path.of("shared/equipment")), new org.keeplit.text.Problems()).get(0);
        Library library = new Reader().readSources(List.of(equipment, new Source("made.network", imported.text())));
        if (!library.problems().isEmpty()) {
            throw new AssertionError(library.problems() + "\n" + imported.text());
        }
        return library.networks().get("made");
    }

    /** A solved network. */
    record Solved(PowerModel model, FlowSolution flow) {
        Complex volts(String node, Conductor phase) {
            return flow.voltage(model.terminal(model.grid().number(new Vertex.AtNode(node, phase)).orElseThrow()));
        }
    }

    static Solved solve(Network network) {
        Electric electric = new Electric(new GridBuilder(network).build(), c -> false, c -> true);
        PowerModel model = PowerModel.of(electric.cells().grid());
        PowerStates states = new PowerStates(model, electric.cells(), c -> true);
        return new Solved(model, states.solve(states.state(electric.startSet(), 0, PowerStates.Taps.AS_STATED)).solution().orElseThrow());
    }
}
