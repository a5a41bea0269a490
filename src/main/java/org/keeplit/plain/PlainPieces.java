package org.keeplit.plain;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.ToIntFunction;
import org.keeplit.network.Base;
import org.keeplit.network.Conductor;
import org.keeplit.network.Connection;
import org.keeplit.network.Element;
import org.keeplit.network.LoadModel;
import org.keeplit.network.Network;
import org.keeplit.procedure.Bound;
import org.keeplit.procedure.Temporary;
import org.keeplit.unit.Quantity;

/** Everything that carries or draws current, as admittances between its ends; an end is a place, or null for the earth, with which every neutral is one. */
final class PlainPieces {
    static final double SQRT3 = Math.sqrt(3);
    private static final double USUAL_SOURCE_RATIO = 8;
    private static final double REGULATOR_PART = 1e-4;
    private static final double USUAL_REGULATOR_AMPERES = 200;
    private static final double TAP = 0.00625;

    private final Network network;
    private final PlainNominal nominal;
    private final PlainLines lines;
    private final List<Piece> pieces = new ArrayList<>();
    private final List<Draw> draws = new ArrayList<>();
    private final Map<String, Piece> byName = new HashMap<>();
    /** The regulators by name and phase. */
    private final Map<String, Stepper> steppers = new LinkedHashMap<>();
    /** The sections with load along them. */
    private final Set<String> loaded = new HashSet<>();

    /**
     * One piece.
     *
     * @param ends its ends
     * @param siemens the current into each end for a volt at each
     * @param alive groups of ends that are alive together
     * @param fed what it pushes into each end by itself; null for nothing
     */
    record Piece(List<String> ends, PlainMatrix siemens, List<List<String>> alive, Cx[] fed) {}

    /** A load between two places. @param power what it draws at rated voltage @param made whether a generator makes it */
    record Draw(String from, String to, double volts, LoadModel model, Cx power, boolean made) {}

    /** A case that figures are judged on. @param factor of all loads @param running whether generators run */
    record Case(int number, double factor, boolean running) {}

    PlainPieces(Bound bound) {
        this.network = bound.network();
        this.nominal = new PlainNominal(network);
        this.lines = new PlainLines(network);
        network.all(Element.Load.class).forEach(load -> load.along().ifPresent(loaded::add));
        network.all(Element.Source.class).forEach(this::source);
        network.all(Element.Line.class).forEach(this::line);
        network.all(Element.Regulator.class).forEach(this::regulator);
        PlainBanks banks = new PlainBanks(nominal);
        network.all(Element.Transformer.class).forEach(t -> pieces.addAll(banks.of(t)));
        network.all(Element.Load.class).forEach(this::load);
        network.all(Element.Capacitor.class).forEach(this::capacitor);
        network.all(Element.Generator.class).forEach(this::generator);
        bound.temporaries().stream().filter(t -> t.kind().base() == Base.MOBILE).forEach(t -> machine(t, bound));
    }

    /** {@return the loads, and the generators that run} */
    List<Draw> draws(boolean running) {
        return draws.stream().filter(d -> running || !d.made()).toList();
    }

    /** {@return the cases that figures are judged on} */
    List<Case> cases() {
        List<Case> all = new ArrayList<>();
        boolean generators = draws.stream().anyMatch(Draw::made);
        for (boolean running : generators ? new boolean[] {false, true} : new boolean[] {false}) {
            factors().forEach(factor -> all.add(new Case(all.size(), factor, running)));
        }
        return all;
    }

    /** {@return by how much all loads are multiplied in each load case; as they are written first} */
    private List<Double> factors() {
        List<Double> all = new ArrayList<>(List.of(1.0));
        network.system().forEach((name, factor) -> {
            if (name.startsWith("load case ")) {
                all.add(factor.si());
            }
        });
        return all;
    }

    /** {@return the nominal voltage to ground at a place} */
    double nominal(String place) {
        return ground(place) == null
                ? 0
                : nominal.toGround(node(place), Conductor.valueOf(place.substring(place.lastIndexOf('/') + 1)));
    }

    /** {@return the node at which a place is: a lead or a bushing is at the node on its side} */
    private String node(String place) {
        String head = place.substring(0, place.lastIndexOf('/'));
        int slash = head.indexOf('/');
        if (slash < 0) {
            return head;
        }
        Element.Branch device =
                (Element.Branch) network.element(head.substring(0, slash)).orElseThrow();
        return head.substring(slash + 1).startsWith("SOURCE") ? device.from() : device.to();
    }

    /** {@return the place; null if it is earth or a neutral} */
    static String ground(String place) {
        return place.equals(Names.EARTH) || place.endsWith("/" + Conductor.N) ? null : place;
    }

    static double figure(Element element, String name, double otherwise) {
        Quantity quantity = element.figures().get(name);
        return quantity == null ? otherwise : quantity.si();
    }

    static double need(Element element, String name) {
        return element.figures().get(name).si();
    }

    private static List<Conductor> phases(Element element) {
        return element.phases().list().stream().filter(Conductor::isPhase).toList();
    }

    private static List<String> places(String node, List<Conductor> phases) {
        return phases.stream().map(p -> Names.node(node, p)).toList();
    }

    static List<List<String>> allAlive(List<String> ends) {
        return List.of(ends.stream().filter(e -> e != null).toList());
    }

    private void source(Element.Source source) {
        List<Conductor> phases = phases(source);
        double volts = figure(source, "voltage", nominal.at(source.node()));
        double level = need(source, "fault level");
        double ratio = figure(source, "reactance ratio", USUAL_SOURCE_RATIO);
        double positive = volts * volts / level;
        // A fault to ground of one phase drives three currents of a third each through Z1, Z2 and Z0 in a row.
        double zero = 3 * volts * volts / figure(source, "ground fault level", level) - 2 * positive;
        Cx direction = new Cx(1, ratio).times(1 / Math.hypot(1, ratio));
        PlainMatrix siemens = PlainLines.balanced(
                        phases.size(), direction.times(positive), direction.times(zero))
                .inverse();
        Cx[] fed = new Cx[phases.size()];
        for (int i = 0; i < fed.length; i++) {
            fed[i] = Cx.ZERO;
            for (int j = 0; j < fed.length; j++) {
                Cx behind = Cx.polar(volts / SQRT3, -30.0 * phases.get(j).clock());
                fed[i] = fed[i].plus(siemens.at(i, j).times(behind));
            }
        }
        List<String> ends = places(source.node(), phases);
        pieces.add(new Piece(ends, siemens, List.of(), fed));
    }

    /** Every phase of a set that was brought is a voltage behind a reactance, whether or not it is connected to anything. */
    private void machine(Temporary set, Bound bound) {
        Element of = network.element(set.of().toString()).orElseThrow();
        String node = of instanceof Element.Branch branch ? branch.to() : ((Element.Shunt) of).node();
        List<Conductor> phases = bound.phasesOf(set.of()).list();
        for (Conductor p : phases) {
            double volts = nominal.toGround(node, p);
            double each = set.kind().ratings().get("power").si() / phases.size();
            Cx siemens = Cx.ONE.over(new Cx(0, set.kind().ratings().get("reactance").si() * volts * volts / each));
            PlainMatrix matrix = new PlainMatrix(1);
            matrix.add(0, 0, siemens);
            Cx pushed = Cx.polar(volts, -30.0 * p.clock()).times(siemens);
            pieces.add(new Piece(List.of(Names.machine(set.name(), p)), matrix, List.of(), new Cx[] {pushed}));
        }
    }

    /** The place a quarter of the way along a section, where two thirds of the load along it count. */
    private static String quarter(String line, Conductor phase) {
        return line + " at a quarter/" + phase;
    }

    private void line(Element.Line line) {
        List<Conductor> phases = phases(line);
        List<String> from = places(line.from(), phases);
        List<String> to = places(line.to(), phases);
        double metres = need(line, "length");
        if (!loaded.contains(line.name())) {
            put(line.name(), section(line, from, to, metres));
            return;
        }
        List<String> quarter = phases.stream().map(p -> quarter(line.name(), p)).toList();
        put(line.name(), section(line, from, quarter, metres / 4));
        put(line.name() + ", the rest", section(line, quarter, to, metres * 3 / 4));
    }

    private Piece section(Element.Line line, List<String> from, List<String> to, double metres) {
        int n = from.size();
        PlainLines.Metre metre = lines.of(line);
        PlainMatrix through = metre.ohms().times(metres).inverse();
        PlainMatrix siemens = new PlainMatrix(2 * n);
        List<List<String>> alive = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                Cx half = metre.siemens().at(i, j).times(metres / 2);
                siemens.add(i, j, through.at(i, j).plus(half));
                siemens.add(n + i, n + j, through.at(i, j).plus(half));
                siemens.add(i, n + j, through.at(i, j).times(-1));
                siemens.add(n + i, j, through.at(i, j).times(-1));
            }
            alive.add(List.of(from.get(i), to.get(i)));
        }
        List<String> ends = new ArrayList<>(from);
        ends.addAll(to);
        return new Piece(ends, siemens, alive, null);
    }

    private void put(String name, Piece piece) {
        pieces.add(piece);
        byName.put(name, piece);
    }

    /** A regulator on one phase. */
    record Stepper(Element.Regulator bank, Conductor phase) {
        String name() {
            return bank.name() + " " + phase;
        }

        /** {@return the tap that the network states; 0 if it states none} */
        int statedTap() {
            return (int) Math.round(figure(bank, "tap " + phase, figure(bank, "tap", 0)));
        }

        /** {@return whether its control finds its tap} */
        boolean isFree() {
            return bank.figures().containsKey("setting")
                    && !bank.figures().containsKey("tap")
                    && !bank.figures().containsKey("tap " + phase);
        }
    }

    private void regulator(Element.Regulator regulator) {
        for (Conductor phase : phases(regulator)) {
            Stepper stepper = new Stepper(regulator, phase);
            put(stepper.name(), stepped(stepper, stepper.statedTap()));
            steppers.put(stepper.name(), stepper);
        }
    }

    /** {@return a regulator on one phase at a tap} */
    private Piece stepped(Stepper stepper, int tap) {
        Element.Regulator regulator = stepper.bank();
        Conductor phase = stepper.phase();
        double rating = figure(regulator, "rating", USUAL_REGULATOR_AMPERES);
        double ohms = REGULATOR_PART * nominal.at(regulator.from()) / SQRT3 / rating;
        // Its one impedance carries the load current; on the source side that current is as much larger.
        double ratio = 1 + TAP * tap;
        List<String> ends = List.of(Names.node(regulator.from(), phase), Names.node(regulator.to(), phase));
        return new Piece(ends, outer(Cx.ONE.over(new Cx(0, ohms)), -ratio, 1), allAlive(ends), null);
    }

    /** {@return a line section by its name, or a regulator by its name and the phase, at a tap} */
    Piece piece(String name, ToIntFunction<Stepper> taps) {
        Stepper stepper = steppers.get(name);
        return stepper == null ? byName.get(name) : stepped(stepper, taps.applyAsInt(stepper));
    }

    /** {@return all pieces} @param taps where regulators stand */
    List<Piece> pieces(ToIntFunction<Stepper> taps) {
        List<Piece> all = new ArrayList<>(pieces);
        steppers.forEach((name, stepper) ->
                all.set(pieces.indexOf(byName.get(name)), stepped(stepper, taps.applyAsInt(stepper))));
        return all;
    }

    /** {@return the regulators whose control finds its tap} */
    List<Stepper> free() {
        return steppers.values().stream().filter(Stepper::isFree).toList();
    }

    /** {@return which way a control steps by what it sees} @param amperes into its load side */
    int step(Stepper stepper, Cx volts, Cx amperes) {
        Element.Regulator bank = stepper.bank();
        double ratio = figure(bank, "voltage ratio", nominal.at(bank.from()) / SQRT3 / 120);
        Cx drop = new Cx(figure(bank, "compensator resistance", 0), figure(bank, "compensator reactance", 0))
                .times(amperes.times(1 / figure(bank, "rating", USUAL_REGULATOR_AMPERES)));
        double seen = volts.times(1 / ratio).minus(drop).size();
        double half = figure(bank, "bandwidth", 2) / 2;
        double level = need(bank, "setting");
        return seen < level - half ? 1 : seen > level + half ? -1 : 0;
    }

    /** {@return what one admittance is between ends that see it with these weights} */
    static PlainMatrix outer(Cx siemens, double... weights) {
        PlainMatrix matrix = new PlainMatrix(weights.length);
        for (int i = 0; i < weights.length; i++) {
            for (int j = 0; j < weights.length; j++) {
                matrix.add(i, j, siemens.times(weights[i] * weights[j]));
            }
        }
        return matrix;
    }

    static Piece between(String from, String to, Cx siemens) {
        List<String> ends = Arrays.asList(from, to);
        return new Piece(ends, outer(siemens, 1, -1), allAlive(ends), null);
    }

    private void load(Element.Load load) {
        List<Conductor> phases = phases(load);
        List<Leg> legs = legs(load.name(), load.node(), load.connection(), phases);
        boolean each = load.figures().keySet().stream().anyMatch(f -> f.startsWith("active power "));
        for (Leg leg : legs) {
            Cx power = each
                    ? new Cx(
                            figure(load, "active power " + leg.label(), 0),
                            figure(load, "reactive power " + leg.label(), 0))
                    : new Cx(figure(load, "active power", 0), figure(load, "reactive power", 0))
                            .times(1.0 / legs.size());
            if (load.along().isEmpty()) {
                draws.add(new Draw(leg.from(), leg.to(), leg.volts(), load.model(), power, false));
            } else {
                String along = load.along().get();
                draws.add(new Draw(
                        moved(leg.from(), load, along, " at the quarter"),
                        moved(leg.to(), load, along, " at the quarter"),
                        leg.volts(),
                        load.model(),
                        power.times(2.0 / 3),
                        false));
                draws.add(new Draw(
                        leg.from(),
                        moved(leg.to(), load, null, " at the end"),
                        leg.volts(),
                        load.model(),
                        power.times(1.0 / 3),
                        false));
            }
        }
    }

    /** A place of the load's node is that of the quarter point; its star point is one for each part. */
    private static String moved(String place, Element.Load load, String along, String part) {
        if (place == null) {
            return null;
        }
        Conductor phase = load.phases().list().stream()
                .filter(p -> place.equals(Names.node(load.node(), p)))
                .findFirst()
                .orElse(null);
        return phase == null ? place + part : along == null ? place : quarter(along, phase);
    }

    private void generator(Element.Generator generator) {
        // With no ground anywhere it has nothing to deliver to but the other phases.
        Connection joined = nominal.grounds(generator.node()) ? Connection.GROUNDED_WYE : Connection.DELTA;
        List<Leg> legs = legs(generator.name(), generator.node(), joined, phases(generator));
        Cx each = new Cx(need(generator, "active power"), figure(generator, "reactive power", 0)).times(-1.0 / legs.size());
        legs.forEach(leg -> draws.add(new Draw(leg.from(), leg.to(), leg.volts(), LoadModel.POWER, each, true)));
    }

    private void capacitor(Element.Capacitor bank) {
        List<Leg> legs = legs(bank.name(), bank.node(), bank.connection(), phases(bank));
        for (Leg leg : legs) {
            double siemens = need(bank, "reactive power") / legs.size() / (leg.volts() * leg.volts());
            pieces.add(between(leg.from(), leg.to(), new Cx(0, siemens)));
        }
    }

    /** One leg of a load or a bank. @param label how its own power is called */
    private record Leg(String from, String to, double volts, String label) {}

    private List<Leg> legs(String name, String node, Connection connection, List<Conductor> phases) {
        List<Leg> all = new ArrayList<>();
        int n = phases.size();
        boolean delta = connection == Connection.DELTA && n > 1;
        for (int i = 0; i < (delta && n == 2 ? 1 : n); i++) {
            Conductor one = phases.get(i);
            Conductor next = phases.get((i + 1) % n);
            String star = connection == Connection.WYE && n > 1 ? name + "/star" : null;
            // Between A and C a leg is called CA, as it is between C and A.
            String pair = one == Conductor.A && next == Conductor.C ? "CA" : "" + one + next;
            all.add(new Leg(
                    Names.node(node, one),
                    delta ? Names.node(node, next) : star,
                    delta ? nominal.at(node) : nominal.toGround(node, one),
                    delta ? pair : one.toString()));
        }
        return all;
    }
}
