package org.keeplit.explore;

import java.util.ArrayList;
import java.util.List;
import org.keeplit.condition.Truth;
import org.keeplit.electric.Analysis;
import org.keeplit.electric.Level;
import org.keeplit.network.Conductor;
import org.keeplit.network.Element;
import org.keeplit.network.Mode;
import org.keeplit.network.Side;
import org.keeplit.network.Trait;
import org.keeplit.program.FieldKey;
import org.keeplit.program.Pickups;
import org.keeplit.program.Reaction;
import org.keeplit.program.Vertex;

/** What the control of one device does without any current asking for it: close on loss of supply, switch as it likes. */
final class Controls {
    private final Element.Device device;
    private final Conductor unit;
    private final Node restores;
    private final Node switches;
    private final List<List<Integer>> sides = new ArrayList<>();

    Controls(World world, AtomCompiler atoms, Element.Device device) {
        this.device = device;
        this.unit = Pickups.units(device).get(0);
        this.restores = device.kind().has(Trait.RESTORES)
                ? atoms.atFirst(device, unit, Mode.SCHEME, Mode.CONTROL_POWER)
                : Node.Constant.FALSE;
        this.switches = device.kind().has(Trait.SELF_SWITCHING)
                ? atoms.atFirst(device, unit, Mode.CONTROL, Mode.CONTROL_POWER)
                : Node.Constant.FALSE;
        for (Side side : Side.values()) {
            List<Integer> vertices = new ArrayList<>();
            for (Conductor phase : device.phases()) {
                world.grid().number(new Vertex.AtNode(device.node(side), phase)).ifPresent(vertices::add);
            }
            sides.add(vertices);
        }
    }

    /** Adds what the control may do now. */
    void called(Scene scene, List<Trips.Called> into) {
        boolean open = Pickups.units(device).stream()
                .allMatch(u -> scene.layout().value(scene.state(), new FieldKey.Pole(device.name(), u)) == 0);
        if (open && restores.eval(scene) != Truth.FALSE && oneSideLostSupply(scene.analysis())) {
            into.add(new Trips.Called(Reaction.Kind.RESTORE, device, unit, true, false));
        }
        if (switches.eval(scene) != Truth.FALSE) {
            into.add(new Trips.Called(Reaction.Kind.CONTROL_OPEN, device, unit, false, false));
            into.add(new Trips.Called(Reaction.Kind.CONTROL_CLOSE, device, unit, false, false));
        }
    }

    private boolean oneSideLostSupply(Analysis analysis) {
        return isSupplied(analysis, 0) && isLost(analysis, 1) || isSupplied(analysis, 1) && isLost(analysis, 0);
    }

    private boolean isSupplied(Analysis analysis, int side) {
        return sides.get(side).stream().allMatch(v -> analysis.level(v) == Level.ENERGIZED);
    }

    private boolean isLost(Analysis analysis, int side) {
        return sides.get(side).stream().anyMatch(v -> analysis.level(v) == Level.DEAD);
    }

    /** {@return what it does, in words} */
    static String words(Reaction reaction) {
        return switch (reaction.kind()) {
            case RESTORE -> "closes by itself, because one of its sides lost supply";
            case CONTROL_OPEN -> "opens by itself, as its control may at any time";
            default -> "closes by itself, as its control may at any time";
        };
    }
}
