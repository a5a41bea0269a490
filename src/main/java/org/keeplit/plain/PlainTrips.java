package org.keeplit.plain;

import java.util.ArrayList;
import java.util.HashMap;
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
    /** Of less than this part of a fault a pole sees nothing. */
    private static final double SHARE = 0.01;

    private final Scenery scenery;
    private final Names names;
    private final Effects effects;
    private final List<Element.Device> devices;
    private final PlainTripCurrents currents;

    PlainTrips(Scenery scenery, Effects effects) {
        this.scenery = scenery;
        this.names = scenery.names();
        this.effects = effects;
        this.devices = names.bound()
                .network()
                .all(Element.Device.class)
                .filter(d -> trips(d)
                        || d.kind().has(Trait.RESTORES)
                        || d.kind().has(Trait.SELF_SWITCHING))
                .toList();
        this.currents = new PlainTripCurrents(
                scenery, devices.stream().filter(PlainTrips::trips).toList());
    }

    /** What happened by itself since the act: what came, which units tripped, and the fault that it began with, or null. */
    record Happened(Set<String> events, Set<String> units, Deed.Fault fault) {
        static final Happened NOTHING = new Happened(Set.of(), Set.of(), null);

        /** {@return what happened with the first of it, which nobody does} */
        static Happened of(List<Deed> deeds, List<String> tripping, Names names) {
            Set<String> tripped = new TreeSet<>();
            Deed.Fault fault = null;
            for (Deed deed : deeds) {
                if (deed instanceof Deed.Switch d && tripping.contains(d.device())) {
                    tripped.add(names.pole(d.device(), d.phases().list().get(0)));
                } else if (deed instanceof Deed.Fault d) {
                    fault = d;
                }
            }
            return new Happened(Set.of(), tripped, fault);
        }

        Happened with(String event, List<String> tripped) {
            Set<String> more = new TreeSet<>(events);
            more.add(event);
            Set<String> gone = new TreeSet<>(units);
            gone.addAll(tripped);
            return new Happened(more, gone, fault);
        }
    }

    /** One thing that may happen. @param device who does it @param trips whether it trips @param facts what is so then */
    record Move(String device, boolean trips, Facts facts, Happened happened) {}

    /** The state from which something may happen, and what was found that may. @param first devices that let none before them that clears later */
    private record Now(Asking asking, Facts facts, Happened happened, List<Move> moves, Set<String> first) {}

    /** What may happen. @param known whether the load flow could say @param rest whether nothing may happen */
    record Ways(boolean known, boolean rest, List<Move> moves) {}

    Ways ways(Asking asking, Facts facts, Happened happened) {
        if (devices.isEmpty()) {
            return new Ways(true, true, List.of());
        }
        Now now = new Now(asking, facts, happened, new ArrayList<>(), new TreeSet<>());
        boolean rest = true;
        for (Element.Device device : devices) {
            rest &= !controls(device, now);
            if (!trips(device)) {
                continue;
            }
            Map<String, List<PlainTripCurrents.Range>> currents = this.currents.in(asking);
            if (currents == null) {
                return new Ways(false, true, List.of());
            }
            List<Conductor> units = units(device);
            for (Conductor unit : units) {
                Double pickup = pickup(device, false);
                if (pickup != null && served(device, unit, "phase-trip", facts)) {
                    String event = device.name() + " " + unit;
                    rest &= !trip(device, event, List.of(unit), pickup, currents.get(event), now);
                }
            }
            Double pickup = pickup(device, true);
            if (pickup != null && units.stream().anyMatch(u -> served(device, u, "ground-trip", facts))) {
                String event = device.name() + " ground";
                rest &= !trip(device, event, units, pickup, currents.get(event), now);
            }
            onFault(device, now);
            if (happened.fault() == null || !happened.fault().stays()) {
                units.forEach(unit -> reclose(device, unit, now));
            }
        }
        List<Move> allowed = now.moves().stream()
                .filter(m -> !m.trips() || now.first().stream().noneMatch(d -> names.bound().network().clearsBefore(d, m.device())))
                .toList();
        return new Ways(true, rest, allowed);
    }

    /** {@return the places at the two ends of a faulted section} */
    static List<String> places(Names names, Deed.Fault fault) {
        Element.Branch line = (Element.Branch) names.element(fault.line());
        List<String> all = new ArrayList<>();
        fault.phases().forEach(p -> all.add(Names.node(line.from(), p)));
        fault.phases().forEach(p -> all.add(Names.node(line.to(), p)));
        return all;
    }

    /** Adds the trips of a device that may come on a fault, bolted to ground or between two phases, as long as it is there. */
    private void onFault(Element.Device device, Now now) {
        int before = now.moves().size();
        addOnFault(device, now);
        if (now.moves().size() > before) {
            now.first().add(device.name());
        }
    }

    private void addOnFault(Element.Device device, Now now) {
        Deed.Fault fault = now.happened().fault();
        if (fault == null || now.happened().events().stream().anyMatch(e -> e.contains(" again "))) {
            return;
        }
        Voltages voltages = now.asking().circuit().now();
        List<String> places = places(names, fault).stream().filter(p -> voltages.level(p) != Voltages.DEAD).toList();
        List<Joint> poles = now.asking().poles(device.name());
        Map<Conductor, Double> seen = new HashMap<>();
        double ground = 0;
        for (String place : places) {
            for (String other : places) {
                boolean same = place.equals(other);
                boolean beside = place.substring(0, place.lastIndexOf('/')).equals(other.substring(0, other.lastIndexOf('/')));
                List<Cx> found = same || beside ? now.asking().fault(place, same ? null : other, poles) : null;
                if (found == null || poles.isEmpty()) {
                    continue;
                }
                Cx sum = Cx.ZERO;
                for (int i = 0; i < poles.size(); i++) {
                    Cx own = found.get(i + 1);
                    if (own.size() >= SHARE * found.get(0).size()) {
                        seen.merge(poles.get(i).phase(), own.size(), Math::max);
                        sum = sum.plus(own);
                    }
                }
                ground = same ? Math.max(ground, sum.size()) : ground;
            }
        }
        List<Conductor> units = units(device);
        Double pickup = pickup(device, false);
        for (Conductor unit : units) {
            double most = seen.entrySet().stream()
                    .filter(e -> device.ganged() || e.getKey() == unit)
                    .mapToDouble(Map.Entry::getValue)
                    .max()
                    .orElse(0);
            if (pickup != null && served(device, unit, "phase-trip", now.facts())) {
                trip(device, device.name() + " " + unit, List.of(unit), pickup, List.of(new PlainTripCurrents.Range(0, most)), now);
            }
        }
        Double residual = pickup(device, true);
        if (residual != null && units.stream().anyMatch(u -> served(device, u, "ground-trip", now.facts()))) {
            trip(device, device.name() + " ground", units, residual, List.of(new PlainTripCurrents.Range(0, ground)), now);
        }
    }

    /** Adds a trip if it may come; {@return whether it must}. */
    private boolean trip(
            Element.Device device,
            String event,
            List<Conductor> units,
            double pickup,
            List<PlainTripCurrents.Range> currents,
            Now now) {
        double tolerance = figure(device, "pickup tolerance") == null ? TOLERANCE : figure(device, "pickup tolerance");
        double low = pickup * (1 - tolerance) * (1 - CLOSE);
        double high = pickup * (1 + tolerance) * (1 + CLOSE);
        List<Conductor> opening = units.stream()
                .filter(u -> now.facts().get(names.pole(device.name(), u)) == 1)
                .filter(u -> !now.happened().units().contains(names.pole(device.name(), u)))
                .toList();
        if (opening.isEmpty() || now.happened().events().contains(event) || currents.stream().noneMatch(c -> c.most() >= low)) {
            return false;
        }
        List<String> poles =
                opening.stream().map(u -> names.pole(device.name(), u)).toList();
        now.moves().add(new Move(
                device.name(),
                true,
                effects.byItself(switches(device, opening, false), now.asking(), now.facts()),
                now.happened().with(event, poles)));
        boolean must = currents.stream().noneMatch(c -> c.least() <= high);
        if (must) {
            now.first().add(device.name());
        }
        return must;
    }

    private void reclose(
            Element.Device device, Conductor unit, Now now) {
        String event = device.name() + " again " + unit;
        boolean may = device.kind().recloses()
                && now.happened().units().contains(names.pole(device.name(), unit))
                && now.facts().get(names.pole(device.name(), unit)) == 0
                && !now.happened().events().contains(event)
                && first(device, unit, "reclosing", now.facts());
        if (may) {
            now.moves().add(new Move(
                    device.name(),
                    false,
                    effects.byItself(switches(device, List.of(unit), true), now.asking(), now.facts()),
                    now.happened().with(event, List.of())));
        }
    }

    static boolean trips(Element.Device device) {
        return device.kind().has(Trait.TRIPS) && (pickup(device, false) != null || pickup(device, true) != null);
    }

    /** Adds what a control does without any current; {@return whether it must}. */
    private boolean controls(
            Element.Device device, Now now) {
        Conductor unit = units(device).get(0);
        boolean powered = first(device, unit, "control-power", now.facts());
        boolean must = false;
        boolean open = units(device).stream().allMatch(u -> now.facts().get(names.pole(device.name(), u)) == 0);
        if (device.kind().has(Trait.RESTORES) && powered && open && first(device, unit, "scheme", now.facts())) {
            must = lostOn(device.to(), device.from(), device, now.asking()) || lostOn(device.from(), device.to(), device, now.asking());
            must = must && move(device, "restores", true, now);
        }
        if (device.kind().has(Trait.SELF_SWITCHING) && powered && first(device, unit, "control", now.facts())) {
            move(device, "opens", false, now);
            move(device, "closes", true, now);
        }
        return must;
    }

    private static boolean lostOn(String node, String other, Element.Device device, Asking asking) {
        Voltages now = asking.circuit().now();
        List<Conductor> phases = device.phases().list();
        return phases.stream().anyMatch(p -> now.level(Names.node(node, p)) == Voltages.DEAD)
                && phases.stream().allMatch(p -> now.level(Names.node(other, p)) == Voltages.ENERGIZED);
    }

    /** Adds the moving of all poles that are not so yet and did not trip; {@return whether there is any}. */
    private boolean move(
            Element.Device device, String word, boolean close, Now now) {
        List<Conductor> moving = units(device).stream()
                .filter(u -> now.facts().get(names.pole(device.name(), u)) != (close ? 1 : 0))
                .filter(u -> !now.happened().units().contains(names.pole(device.name(), u)))
                .toList();
        String event = device.name() + " " + word;
        if (moving.isEmpty() || now.happened().events().contains(event)) {
            return false;
        }
        now.moves().add(new Move(
                device.name(),
                false,
                effects.byItself(switches(device, moving, close), now.asking(), now.facts()),
                now.happened().with(event, List.of())));
        return true;
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
        return facts.get("lame " + device.name()) == 0
                && first(device, unit, "trip", facts)
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
        Double said = trip == null ? figure(device, "pickup") : trip;
        Double coil = figure(device, "coil");
        return said != null || coil == null ? said : Double.valueOf(2 * coil);
    }

    private static Double figure(Element.Device device, String name) {
        Quantity own = device.figures().get(name);
        Quantity said = own == null ? device.kind().ratings().get(name) : own;
        return said == null ? null : said.si();
    }
}
