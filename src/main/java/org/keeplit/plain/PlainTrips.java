package org.keeplit.plain;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.keeplit.network.Conductor;
import org.keeplit.network.Element;
import org.keeplit.network.Phases;
import org.keeplit.network.Trait;
import org.keeplit.unit.Quantity;

/** What trips by itself, and what closes again by itself. */
final class PlainTrips {
    private static final double TOLERANCE = 0.1;
    private static final double CLOSE = 1e-6;

    private final Scenery scenery;
    private final Names names;
    private final Effects effects;
    private final List<Element.Device> devices;
    private final Map<BitSet, Map<String, List<Range>>> known = new HashMap<>();

    PlainTrips(Scenery scenery, Effects effects) {
        this.scenery = scenery;
        this.names = scenery.names();
        this.effects = effects;
        this.devices = names.bound()
                .network()
                .all(Element.Device.class)
                .filter(d -> d.kind().has(Trait.TRIPS))
                .filter(d -> pickup(d, false) != null || pickup(d, true) != null)
                .toList();
    }

    /** What happened by itself since the act: what came, and which units tripped. */
    record Happened(Set<String> events, Set<String> units) {
        static final Happened NOTHING = new Happened(Set.of(), Set.of());

        Happened with(String event, List<String> tripped) {
            Set<String> more = new TreeSet<>(events);
            more.add(event);
            Set<String> gone = new TreeSet<>(units);
            gone.addAll(tripped);
            return new Happened(more, gone);
        }
    }

    /** One thing that may happen. @param device who does it @param facts what is so then */
    record Move(String device, Facts facts, Happened happened) {}

    /** What may happen. @param known whether the load flow could say @param rest whether nothing may happen */
    record Ways(boolean known, boolean rest, List<Move> moves) {}

    /** A current is somewhere between two values. */
    private record Range(double least, double most) {}

    Ways ways(Asking asking, Facts facts, Happened happened) {
        if (devices.isEmpty()) {
            return new Ways(true, true, List.of());
        }
        List<Move> moves = new ArrayList<>();
        boolean rest = true;
        for (Element.Device device : devices) {
            Map<String, List<Range>> currents = currents(asking);
            if (currents == null) {
                return new Ways(false, true, List.of());
            }
            List<Conductor> units = units(device);
            for (Conductor unit : units) {
                Double pickup = pickup(device, false);
                if (pickup != null && served(device, unit, "phase-trip", facts)) {
                    String event = device.name() + " " + unit;
                    rest &= !trip(device, event, List.of(unit), pickup, currents.get(event), facts, happened, asking, moves);
                }
            }
            Double pickup = pickup(device, true);
            if (pickup != null && units.stream().anyMatch(u -> served(device, u, "ground-trip", facts))) {
                String event = device.name() + " ground";
                rest &= !trip(device, event, units, pickup, currents.get(event), facts, happened, asking, moves);
            }
            units.forEach(unit -> reclose(device, unit, facts, happened, asking, moves));
        }
        return new Ways(true, rest, moves);
    }

    /** Adds a trip if it may come; {@return whether it must}. */
    private boolean trip(
            Element.Device device,
            String event,
            List<Conductor> units,
            double pickup,
            List<Range> currents,
            Facts facts,
            Happened happened,
            Asking asking,
            List<Move> moves) {
        double tolerance = figure(device, "pickup tolerance") == null ? TOLERANCE : figure(device, "pickup tolerance");
        double low = pickup * (1 - tolerance) * (1 - CLOSE);
        double high = pickup * (1 + tolerance) * (1 + CLOSE);
        List<Conductor> opening = units.stream()
                .filter(u -> facts.get(names.pole(device.name(), u)) == 1)
                .filter(u -> !happened.units().contains(names.pole(device.name(), u)))
                .toList();
        if (opening.isEmpty() || happened.events().contains(event) || currents.stream().noneMatch(c -> c.most() >= low)) {
            return false;
        }
        List<String> poles =
                opening.stream().map(u -> names.pole(device.name(), u)).toList();
        moves.add(new Move(
                device.name(),
                effects.byItself(switches(device, opening, false), asking, facts),
                happened.with(event, poles)));
        return currents.stream().noneMatch(c -> c.least() <= high);
    }

    private void reclose(
            Element.Device device, Conductor unit, Facts facts, Happened happened, Asking asking, List<Move> moves) {
        String event = device.name() + " again " + unit;
        boolean may = device.kind().recloses()
                && happened.units().contains(names.pole(device.name(), unit))
                && facts.get(names.pole(device.name(), unit)) == 0
                && !happened.events().contains(event)
                && first(device, unit, "reclosing", facts);
        if (may) {
            moves.add(new Move(
                    device.name(),
                    effects.byItself(switches(device, List.of(unit), true), asking, facts),
                    happened.with(event, List.of())));
        }
    }

    private List<Deed.Switch> switches(Element.Device device, List<Conductor> units, boolean close) {
        return units.stream()
                .map(u -> new Deed.Switch(device.name(), device.ganged() ? device.phases() : Phases.of(u), close))
                .toList();
    }

    private static List<Conductor> units(Element.Device device) {
        List<Conductor> all = device.phases().list().stream().filter(Conductor::isPhase).toList();
        return device.ganged() ? all.subList(0, 1) : all;
    }

    private boolean served(Element.Device device, Conductor unit, String trip, Facts facts) {
        return first(device, unit, "trip", facts)
                && first(device, unit, trip, facts)
                && first(device, unit, "control-power", facts);
    }

    private boolean first(Element.Device device, Conductor unit, String mode, Facts facts) {
        return device.kind().mode(mode).isEmpty() || facts.get(names.mode(device.name(), unit, mode)) == 0;
    }

    private static Double pickup(Element.Device device, boolean ground) {
        if (ground) {
            return figure(device, "ground pickup");
        }
        Double trip = figure(device, "minimum trip");
        return trip == null ? figure(device, "pickup") : trip;
    }

    private static Double figure(Element.Device device, String name) {
        Quantity own = device.figures().get(name);
        Quantity said = own == null ? device.kind().ratings().get(name) : own;
        return said == null ? null : said.si();
    }

    /** {@return the currents of every unit and every residual, in each load case; null if a load flow does not settle} */
    private Map<String, List<Range>> currents(Asking asking) {
        BitSet position = new BitSet();
        List<Joint> joints = scenery.wiring().joints();
        for (int i = 0; i < joints.size(); i++) {
            position.set(i, asking.circuit().isClosed(joints.get(i)));
        }
        if (!known.containsKey(position)) {
            known.put(position, findCurrents(asking.circuit()));
        }
        return known.get(position);
    }

    private Map<String, List<Range>> findCurrents(Circuit circuit) {
        Map<String, List<Range>> all = new HashMap<>();
        Map<Set<Joint>, List<PlainFlow>> flows = new HashMap<>();
        for (Element.Device device : devices) {
            Set<Joint> around = new HashSet<>();
            Set<Conductor> shared = new HashSet<>();
            for (Conductor phase : device.phases()) {
                if (phase.isPhase() && circuit.isClosed(pole(device, phase))) {
                    List<Joint> ways = circuit.waysAround(device, phase);
                    around.addAll(ways);
                    if (!ways.isEmpty()) {
                        shared.add(phase);
                    }
                }
            }
            // Most devices have no way around them, and share one load flow.
            for (PlainFlow flow : flows.computeIfAbsent(around, a -> flows(circuit, a))) {
                if (!flow.settled()) {
                    return null;
                }
                note(device, flow, circuit, shared, all);
            }
        }
        return all;
    }

    private List<PlainFlow> flows(Circuit circuit, Set<Joint> opened) {
        return scenery.wiring().pieces().factors().stream()
                .map(factor -> new PlainFlow(
                        names.bound().network(),
                        scenery.wiring().pieces(),
                        scenery.wiring().joints(),
                        j -> circuit.isClosed(j) && !opened.contains(j),
                        factor))
                .toList();
    }

    private Joint pole(Element.Device device, Conductor phase) {
        return Asking.pole(scenery.wiring(), device.name(), phase);
    }

    private void note(
            Element.Device device, PlainFlow flow, Circuit circuit, Set<Conductor> shared, Map<String, List<Range>> all) {
        Cx known = Cx.ZERO;
        List<Cx> parts = new ArrayList<>();
        double least = 0;
        double most = 0;
        for (Conductor phase : device.phases()) {
            Cx current = phase.isPhase() && circuit.isClosed(pole(device, phase))
                    ? flow.through(pole(device, phase))
                    : Cx.ZERO;
            Range range = new Range(shared.contains(phase) ? 0 : current.size(), current.size());
            least = Math.max(least, range.least());
            most = Math.max(most, range.most());
            if (!device.ganged()) {
                add(all, device.name() + " " + phase, range);
            }
            if (shared.contains(phase)) {
                parts.add(current);
            } else {
                known = known.plus(current);
            }
        }
        if (device.ganged()) {
            add(all, device.name() + " " + units(device).get(0), new Range(least, most));
        }
        add(all, device.name() + " ground", sum(known, parts));
    }

    private static void add(Map<String, List<Range>> all, String event, Range range) {
        all.computeIfAbsent(event, e -> new ArrayList<>()).add(range);
    }

    /** The sum when some currents are had in any part: the least is found by going downhill, one part after another. */
    private static Range sum(Cx known, List<Cx> parts) {
        double most = 0;
        for (int taken = 0; taken < 1 << parts.size(); taken++) {
            Cx sum = known;
            for (int i = 0; i < parts.size(); i++) {
                sum = (taken & 1 << i) == 0 ? sum : sum.plus(parts.get(i));
            }
            most = Math.max(most, sum.size());
        }
        double[] share = new double[parts.size()];
        Cx sum = known;
        for (int round = 0; round < 5_000; round++) {
            for (int i = 0; i < share.length; i++) {
                Cx part = parts.get(i);
                Cx others = sum.minus(part.times(share[i]));
                double square = part.size() * part.size();
                double best = square == 0 ? 0 : -(others.re() * part.re() + others.im() * part.im()) / square;
                share[i] = Math.min(1, Math.max(0, best));
                sum = others.plus(part.times(share[i]));
            }
        }
        return new Range(sum.size(), most);
    }
}
