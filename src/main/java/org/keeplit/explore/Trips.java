package org.keeplit.explore;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.keeplit.condition.Truth;
import org.keeplit.electric.Contact;
import org.keeplit.electric.power.PowerStates;
import org.keeplit.network.Conductor;
import org.keeplit.network.Element;
import org.keeplit.network.Mode;
import org.keeplit.program.FieldKey;
import org.keeplit.program.Pickups;
import org.keeplit.program.Reaction;
import org.keeplit.unit.Dimension;

/** The trips of one device: which are in service, and which the currents of a state call for. */
final class Trips {
    private final Element.Device device;
    private final TripCurrents currents;
    private final Optional<Pickup> phase;
    private final Optional<Pickup> ground;
    private final List<Conductor> units;
    private final List<Node> phaseServed = new ArrayList<>();
    private final Node groundServed;

    Trips(World world, AtomCompiler atoms, Element.Device device) {
        this.device = device;
        this.currents = new TripCurrents(world, device);
        this.phase = pickup(Pickups.phase(device), device);
        this.ground = pickup(Pickups.ground(device), device);
        this.units = Pickups.units(device);
        List<Node> onSomeUnit = new ArrayList<>();
        Node works = atoms.is(new FieldKey.Failed(device.name()), 0);
        for (Conductor unit : units) {
            phaseServed.add(Node.all(List.of(
                    works, atoms.atFirst(device, unit, Mode.TRIP, Mode.PHASE_TRIP, Mode.CONTROL_POWER))));
            onSomeUnit.add(atoms.atFirst(device, unit, Mode.TRIP, Mode.GROUND_TRIP, Mode.CONTROL_POWER));
        }
        this.groundServed = Node.all(List.of(works, Node.one(onSomeUnit)));
    }

    private static Optional<Pickup> pickup(OptionalDouble current, Element.Device device) {
        return current.isPresent()
                ? Optional.of(Pickup.of(current.getAsDouble(), Pickups.tolerance(device)))
                : Optional.empty();
    }

    Element.Device device() {
        return device;
    }

    /**
     * A trip that the currents of a state call for.
     *
     * @param kind what trips
     * @param unit the unit; of a ground trip the first phase
     * @param must whether it comes for certain
     * @param onFault whether a fault calls for it
     */
    record Called(Reaction.Kind kind, Element.Device device, Conductor unit, boolean must, boolean onFault) {
        /** {@return whether a device that clears later does not come first} */
        boolean holdsOthers() {
            return kind.isTrip() && (must || onFault);
        }
    }

    /** Says which trips are in service, from a bit on; {@return the next bit}. */
    int served(Scene scene, BitSet into, int bit) {
        int next = bit;
        for (Node node : phaseServed) {
            into.set(next++, phase.isPresent() && node.eval(scene) != Truth.FALSE);
        }
        into.set(next++, ground.isPresent() && groundServed.eval(scene) != Truth.FALSE);
        return next;
    }

    /** Adds the trips that are called for; {@return false if a load flow has no solution}. */
    boolean called(Scene scene, BitSet served, int bit, List<Called> into) {
        if (currents.isOpen(scene) || served.nextSetBit(bit) < 0 || served.nextSetBit(bit) > bit + units.size()) {
            return true;
        }
        List<TripCurrents.Currents> cases = currents.in(scene);
        if (cases.isEmpty()) {
            return false;
        }
        for (int i = 0; i < units.size(); i++) {
            if (served.get(bit + i)) {
                Conductor unit = units.get(i);
                add(Reaction.Kind.PHASE_TRIP, unit, phase.orElseThrow(), bounds(cases, unit), into);
            }
        }
        if (served.get(bit + units.size())) {
            List<double[]> residual =
                    cases.stream().map(TripCurrents.Currents::residual).toList();
            add(Reaction.Kind.GROUND_TRIP, device.phases().list().get(0), ground.orElseThrow(), residual, into);
        }
        return true;
    }

    /** {@return the poles that are closed} */
    List<Contact> closed(Scene scene) {
        return currents.closed(scene);
    }

    /**
     * Adds the trips that may come on a fault. That one comes is never certain: a fault may have any resistance.
     *
     * @param poles the closed poles
     * @param most what they see of it at most
     */
    void onFault(Scene scene, List<Contact> poles, PowerStates.Most most, List<Called> into) {
        BitSet served = new BitSet();
        served(scene, served, 0);
        for (int i = 0; i < units.size(); i++) {
            Conductor unit = units.get(i);
            double seen = 0;
            for (int k = 0; k < poles.size(); k++) {
                seen = device.ganged() || poles.get(k).phase() == unit ? Math.max(seen, most.phase().get(k)) : seen;
            }
            if (served.get(i) && phase.orElseThrow().may(seen)) {
                into.add(new Called(Reaction.Kind.PHASE_TRIP, device, unit, false, true));
            }
        }
        if (served.get(units.size()) && ground.orElseThrow().may(most.ground())) {
            into.add(new Called(Reaction.Kind.GROUND_TRIP, device, device.phases().list().get(0), false, true));
        }
    }

    /** {@return the bounds of the current that counts for a unit, in each load case: the greatest of a ganged set} */
    private List<double[]> bounds(List<TripCurrents.Currents> cases, Conductor unit) {
        List<double[]> all = new ArrayList<>();
        for (TripCurrents.Currents one : cases) {
            double[] bounds = {0, 0};
            for (Conductor other : device.ganged() ? device.phases().list() : List.of(unit)) {
                double[] there = one.phase(other);
                bounds[0] = Math.max(bounds[0], there[0]);
                bounds[1] = Math.max(bounds[1], there[1]);
            }
            all.add(bounds);
        }
        return all;
    }

    private void add(Reaction.Kind kind, Conductor unit, Pickup pickup, List<double[]> cases, List<Called> into) {
        if (cases.stream().anyMatch(c -> pickup.may(c[1]))) {
            into.add(new Called(kind, device, unit, cases.stream().allMatch(c -> pickup.must(c[0])), false));
        }
    }

    /** {@return what makes a trip come, with its figures in the heaviest load case} @param onFault whether a fault does */
    String words(Reaction reaction, Scene scene, boolean onFault) {
        if (reaction.kind() == Reaction.Kind.RECLOSE) {
            return "recloses" + onPhase(reaction) + " and holds";
        }
        if (onFault) {
            return "trips on the fault" + (reaction.kind() == Reaction.Kind.GROUND_TRIP ? ", on the residual current" : onPhase(reaction));
        }
        boolean residual = reaction.kind() == Reaction.Kind.GROUND_TRIP;
        List<TripCurrents.Currents> cases = currents.in(scene);
        List<double[]> all = residual
                ? cases.stream().map(TripCurrents.Currents::residual).toList()
                : bounds(cases, reaction.unit());
        double[] most = all.stream().reduce((a, b) -> b[1] > a[1] ? b : a).orElse(new double[] {0, 0});
        double pickup = (residual ? Pickups.ground(device) : Pickups.phase(device)).orElseThrow();
        return "trips by itself" + (residual ? ", on the residual current" : onPhase(reaction)) + ": "
                + (most[0] < most[1] ? "anything from " + amperes(most[0]) + " to " : "") + amperes(most[1])
                + " through it, pickup " + amperes(pickup);
    }

    private String onPhase(Reaction reaction) {
        return device.ganged() ? "" : " on phase " + reaction.unit();
    }

    private static String amperes(double value) {
        return FigureCompiler.words(value, Dimension.CURRENT);
    }
}
