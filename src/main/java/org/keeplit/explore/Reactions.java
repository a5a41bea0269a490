package org.keeplit.explore;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableSet;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.keeplit.condition.Truth;
import org.keeplit.electric.Contact;
import org.keeplit.electric.Level;
import org.keeplit.electric.flow.FlowState;
import org.keeplit.electric.power.PowerStates;
import org.keeplit.network.Conductor;
import org.keeplit.network.Element;
import org.keeplit.network.Mode;
import org.keeplit.network.Network;
import org.keeplit.network.Trait;
import org.keeplit.program.Act;
import org.keeplit.program.FieldKey;
import org.keeplit.program.Pickups;
import org.keeplit.program.Primitive;
import org.keeplit.program.Reaction;
import org.keeplit.program.Units;

/** What devices do by themselves after an act: trip on the currents of the load flow, and reclose. */
final class Reactions {
    /** How many positions are kept before all are forgotten. */
    private static final int KEPT = 50_000;

    private final Network network;
    private final ImmutableList<Reaction> reactions;
    private final List<Trips> watched = new ArrayList<>();
    private final List<Controls> controls = new ArrayList<>();
    private final List<Node> recloses = new ArrayList<>();
    /** For each fault that may come where it is. */
    private final Map<Primitive.Fault, List<Integer>> places = new HashMap<>();
    private final Map<Position, List<Trips.Called>> known = new HashMap<>();
    /** What each watched device sees at most of a fault. */
    private final Map<Faulted, List<PowerStates.Most>> faults = new HashMap<>();

    private record Faulted(FlowState state, List<Integer> alive) {}

    /** What decides which trips are called for. @param flow what the load flow reads @param served which trips are in service */
    private record Position(FlowState flow, BitSet served) {}

    Reactions(World world, AtomCompiler atoms) {
        this.network = world.bound().network();
        this.reactions = world.program().reactions();
        world.bound().network().all(Element.Device.class).filter(Pickups::trips).forEach(d -> watched.add(
                new Trips(world, atoms, d)));
        world.bound().network().all(Element.Device.class)
                .filter(d -> d.kind().has(Trait.RESTORES) || d.kind().has(Trait.SELF_SWITCHING))
                .forEach(d -> controls.add(new Controls(world, atoms, d)));
        world.program().acts().stream()
                .flatMap(act -> act.primitives().stream())
                .filter(Primitive.Fault.class::isInstance)
                .map(Primitive.Fault.class::cast)
                .forEach(fault -> places.put(fault, world.places(fault)));
        for (Reaction reaction : reactions) {
            recloses.add(
                    reaction.kind() == Reaction.Kind.RECLOSE ? recloses(atoms, reaction) : Node.Constant.FALSE);
        }
    }

    private static Node recloses(AtomCompiler atoms, Reaction reaction) {
        Element.Device device = reaction.device();
        return device.kind()
                .mode(Mode.RECLOSING)
                .<Node>map(mode -> atoms.is(
                        new FieldKey.Mode(device.name(), Units.mode(device, mode, reaction.unit()), mode.name()), 0))
                .orElse(Node.Constant.TRUE);
    }

    /** Devices come to trip whose poles have no room in the state. */
    static final class Unarmed extends RuntimeException {
        private static final long serialVersionUID = 1;
        private final transient TreeSet<String> devices;

        Unarmed(TreeSet<String> devices) {
            super(null, null, false, false);
            this.devices = devices;
        }

        TreeSet<String> devices() {
            return devices;
        }
    }

    /** {@return whether nothing in this network does anything by itself} */
    boolean isIdle() {
        return watched.isEmpty() && controls.isEmpty();
    }

    /**
     * What may happen next.
     *
     * @param next the reactions, in a fixed order
     * @param atRest whether it may be that nothing happens
     */
    record Options(List<Reaction> next, boolean atRest) {
        static final Options REST = new Options(List.of(), true);
    }

    /**
     * What may happen next by itself.
     *
     * @param scene the state
     * @param since what happened by itself since the act
     * @return the options; null if a load flow has no solution, which the scene notes
     * @throws Unarmed if a device comes to trip that the program has no room for
     */
    Options options(Scene scene, Since since) {
        List<Trips.Called> called = calledInAll(scene);
        if (called == null) {
            return null;
        }
        if (since.fault().isPresent()) {
            called = withFault(called, scene, since);
        }
        if (called.isEmpty() && since.reactions().isEmpty() && since.units().isEmpty()) {
            return Options.REST;
        }
        List<Reaction> next = new ArrayList<>();
        TreeSet<String> unarmed = new TreeSet<>();
        boolean atRest = true;
        TreeSet<String> first = new TreeSet<>();
        for (Trips.Called trip : called) {
            Reaction reaction = find(trip.kind(), trip.device().name(), trip.unit());
            if (reaction == null) {
                unarmed.add(trip.device().name());
            } else if (mayStill(reaction, scene, since)) {
                next.add(reaction);
                atRest &= !trip.must();
                if (trip.holdsOthers()) {
                    first.add(trip.device().name());
                }
            }
        }
        next.removeIf(r -> r.kind().isTrip() && first.stream().anyMatch(d -> network.clearsBefore(d, r.device().name())));
        if (!unarmed.isEmpty()) {
            throw new Unarmed(unarmed);
        }
        for (Reaction reaction : reactions) {
            if (reaction.kind() == Reaction.Kind.RECLOSE && !since.staysFaulted() && mayReclose(reaction, scene, since)) {
                next.add(reaction);
            }
        }
        return new Options(next, atRest);
    }

    /** Adds what may trip on a fault that is still fed. One that passes is gone once what feeds it has reclosed. */
    private List<Trips.Called> withFault(List<Trips.Called> called, Scene scene, Since since) {
        Primitive.Fault fault = since.fault().get();
        boolean reclosed = since.reactions().stream().anyMatch(r -> reactions.get(r).kind() == Reaction.Kind.RECLOSE);
        List<Integer> alive = places.get(fault).stream()
                .filter(v -> scene.analysis().level(v) != Level.DEAD)
                .toList();
        if (alive.isEmpty() || reclosed) {
            return called;
        }
        List<List<Contact>> poles = watched.stream().map(t -> t.closed(scene)).toList();
        Faulted faulted = new Faulted(scene.flowState(0), alive);
        List<PowerStates.Most> most = faults.get(faulted);
        if (most == null) {
            most = scene.powerStates().mostFault(scene.flowState(0), alive, poles);
            if (faults.size() >= KEPT) {
                faults.clear();
            }
            faults.put(faulted, most);
        }
        List<Trips.Called> all = new ArrayList<>(called);
        for (int i = 0; i < poles.size(); i++) {
            watched.get(i).onFault(scene, poles.get(i), most.get(i), all);
        }
        return all;
    }

    private List<Trips.Called> calledInAll(Scene scene) {
        List<Trips.Called> trips = watched.isEmpty() ? List.of() : called(scene);
        if (trips == null || controls.isEmpty()) {
            return trips;
        }
        List<Trips.Called> all = new ArrayList<>(trips);
        controls.forEach(c -> c.called(scene, all));
        return all;
    }

    private static boolean mayStill(Reaction reaction, Scene scene, Since since) {
        return !since.had(reaction) && !moved(reaction, scene, since).isEmpty();
    }

    private boolean mayReclose(Reaction reclose, Scene scene, Since since) {
        FieldKey.Pole unit = units(reclose).get(0);
        return !since.had(reclose)
                && since.tripped(unit)
                && !isClosed(unit, scene)
                && recloses.get(reclose.id()).eval(scene) != Truth.FALSE;
    }

    private static List<FieldKey.Pole> units(Reaction reaction) {
        return Pickups.units(reaction.device()).stream()
                .filter(reaction.phases()::contains)
                .map(unit -> new FieldKey.Pole(reaction.device().name(), unit))
                .toList();
    }

    private static boolean isClosed(FieldKey.Pole unit, Scene scene) {
        return scene.layout().value(scene.state(), unit) == 1;
    }

    /** {@return the units that a reaction moves in a state; of those that tripped only reclosing moves any} */
    static List<Conductor> moved(Reaction reaction, Scene scene, Since since) {
        return units(reaction).stream()
                .filter(u -> reaction.closes() != isClosed(u, scene))
                .filter(u -> reaction.kind() == Reaction.Kind.RECLOSE || !since.tripped(u))
                .map(FieldKey.Pole::phase)
                .toList();
    }

    /**
     * What happened by itself since an act.
     *
     * @param reactions the reactions, in their order
     * @param units the units that tripped
     * @param fault what the act was, if it was a fault
     */
    record Since(ImmutableList<Integer> reactions, ImmutableSet<FieldKey.Pole> units, Optional<Primitive.Fault> fault) {
        static final Since NOTHING = new Since(ImmutableList.of(), ImmutableSet.of(), Optional.empty());

        /** {@return what an event begins with} @param act the event @param tripping the devices that trip with it */
        static Since of(Act act, Set<String> tripping) {
            ImmutableSet.Builder<FieldKey.Pole> tripped = ImmutableSet.builder();
            Optional<Primitive.Fault> fault = Optional.empty();
            for (Primitive primitive : act.primitives()) {
                if (primitive instanceof Primitive.MovePole move && tripping.contains(move.device())) {
                    tripped.add(new FieldKey.Pole(move.device(), move.phases().list().get(0)));
                } else if (primitive instanceof Primitive.Fault some) {
                    fault = Optional.of(some);
                }
            }
            return new Since(ImmutableList.of(), tripped.build(), fault);
        }

        /** {@return whether a fault is there again whenever it is fed, so that nothing that recloses holds} */
        boolean staysFaulted() {
            return fault.isPresent() && fault.get().stays();
        }

        boolean had(Reaction reaction) {
            return reactions.contains(reaction.id());
        }

        boolean tripped(FieldKey.Pole unit) {
            return units.contains(unit);
        }

        /** {@return what happened with one more} @param moved the units that it moves */
        Since then(Reaction reaction, List<Conductor> moved) {
            ImmutableSet.Builder<FieldKey.Pole> more =
                    ImmutableSet.<FieldKey.Pole>builder().addAll(units);
            if (reaction.kind().isTrip()) {
                moved.forEach(u -> more.add(new FieldKey.Pole(reaction.device().name(), u)));
            }
            return new Since(
                    ImmutableList.<Integer>builder()
                            .addAll(reactions)
                            .add(reaction.id())
                            .build(),
                    more.build(),
                    fault);
        }

        /** {@return the same without the order, which decides nothing further} */
        Object unordered() {
            return List.of(ImmutableSet.copyOf(reactions), units);
        }
    }

    private Reaction find(Reaction.Kind kind, String device, Conductor unit) {
        for (Reaction reaction : reactions) {
            if (reaction.kind() == kind
                    && reaction.device().name().equals(device)
                    && (kind != Reaction.Kind.PHASE_TRIP || reaction.unit() == unit)) {
                return reaction;
            }
        }
        return null;
    }

    /** {@return the trips that the currents call for; null if a load flow has no solution} */
    private List<Trips.Called> called(Scene scene) {
        BitSet served = new BitSet();
        int bit = 0;
        for (Trips trips : watched) {
            bit = trips.served(scene, served, bit);
        }
        Position position = new Position(scene.flowState(0), served);
        List<Trips.Called> called = known.get(position);
        if (called == null) {
            called = findCalled(scene, served);
            if (called != null) {
                if (known.size() >= KEPT) {
                    known.clear();
                }
                known.put(position, called);
            }
        }
        return called;
    }

    private List<Trips.Called> findCalled(Scene scene, BitSet served) {
        List<Trips.Called> all = new ArrayList<>();
        int bit = 0;
        for (Trips trips : watched) {
            if (!trips.called(scene, served, bit, all)) {
                return null;
            }
            bit += Pickups.units(trips.device()).size() + 1;
        }
        return all;
    }

    /** {@return the trips of a device} */
    private Trips trips(Element.Device device) {
        return watched.stream()
                .filter(t -> t.device().name().equals(device.name()))
                .findFirst()
                .orElseThrow();
    }

    /** {@return what a reaction does, with its figures} @param scene the state from which it comes @param onFault whether a fault is there */
    String words(Reaction reaction, Scene scene, boolean onFault) {
        return reaction.kind().isTrip() || reaction.kind() == Reaction.Kind.RECLOSE
                ? trips(reaction.device()).words(reaction, scene, onFault)
                : Controls.words(reaction);
    }

    /** {@return what happens by itself at the start, in words; empty if nothing does, or a control that may do it any time} */
    Optional<String> atStart(Scene scene) {
        return calledInAll(scene).stream()
                .filter(c -> c.kind().isTrip() || c.must())
                .findFirst()
                .map(c -> c.device().name() + " "
                        + words(new Reaction(-1, c.kind(), c.device(), c.unit()), scene, false));
    }

    /** {@return whether what may happen can be told in a state} */
    boolean isKnown(Scene scene) {
        return calledInAll(scene) != null;
    }
}
