package org.keeplit.electric.power;

import com.google.common.collect.Multimaps;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.Optional;
import org.keeplit.electric.Contact;
import org.keeplit.electric.Grid;
import org.keeplit.electric.complex.Complex;
import org.keeplit.electric.complex.ComplexMatrix;
import org.keeplit.electric.flow.CentreTapped;
import org.keeplit.electric.flow.DistributedLoad;
import org.keeplit.electric.flow.FlowModel;
import org.keeplit.electric.flow.LineDropControl;
import org.keeplit.electric.flow.FlowModelBuilder;
import org.keeplit.electric.flow.LoadPower;
import org.keeplit.electric.flow.RegulatorKind;
import org.keeplit.electric.flow.SourceImpedance;
import org.keeplit.electric.flow.Winding;
import org.keeplit.network.Conductor;
import org.keeplit.network.Connection;
import org.keeplit.network.Element;
import org.keeplit.network.Network;
import org.keeplit.network.Phases;
import org.keeplit.network.Side;
import org.keeplit.procedure.Temporary;
import org.keeplit.program.Vertex;
import org.keeplit.unit.Quantity;

/** Makes a load-flow model of an electrical graph. */
final class PowerBuilder {
    private static final double SQRT3 = Math.sqrt(3);
    private static final int UNUSED = -2;
    /** When a source states no ratio of reactance to resistance. */
    private static final double USUAL_RATIO = 8;
    /** When a transformer states no ratio of reactance to resistance. */
    private static final double USUAL_TRANSFORMER_RATIO = 5;
    /** A regulator's own impedance, all reactance, in parts of its line's base; from memory a few ten-thousandths. */
    private static final double REGULATOR_PART = 1e-4;
    /** When a regulator states no rating, in ampere. */
    private static final double USUAL_RATING = 200;

    private final Grid grid;
    private final Network network;
    private final FlowModelBuilder builder = FlowModel.builder();
    private final Nominal nominal;
    private final LineOhms lineOhms;
    private final int[] terminals;
    private final int[] contacts;
    private final double[] nominalAt;
    private final Map<String, Integer> branches = new HashMap<>();
    /** Controls work on 120 V, within a band of 2 V, unless stated: common practice, no source. */
    private static final double CONTROL_VOLTS = 120;
    private static final double USUAL_BAND = 2;
    private static final double USUAL_RANGE = 0.1;
    private static final double USUAL_STEPS = 16;
    private final List<PowerModel.Tap> taps = new ArrayList<>();
    private final List<LineDropControl> controls = new ArrayList<>();
    /** The sections with load along them. */
    private final Set<String> loaded;
    /** The terminals of the quarter points of sections with load along them, by section and phase. */
    private final Map<String, Integer> quarters = new HashMap<>();
    private final List<Integer> generators = new ArrayList<>();

    PowerBuilder(Grid grid) {
        this.grid = grid;
        this.network = grid.network();
        this.nominal = new Nominal(network);
        this.loaded = network.all(Element.Load.class)
                .flatMap(load -> load.along().stream())
                .collect(Collectors.toSet());
        this.lineOhms = new LineOhms(network, figure(network.system(), "frequency", 60));
        this.terminals = new int[grid.vertices().size()];
        this.contacts = new int[grid.contacts().size()];
        this.nominalAt = new double[terminals.length];
    }

    PowerModel build() {
        loadCases();
        for (int i = 0; i < terminals.length; i++) {
            Vertex vertex = grid.vertices().get(i);
            boolean earth = vertex.equals(Vertex.EARTH) || !vertex.conductor().isPhase();
            terminals[i] = earth ? FlowModel.GROUND : UNUSED;
            if (!earth) {
                nominalAt[i] = node(vertex).map(n -> nominal.toGround(n, vertex.conductor())).orElse(0.0);
            }
        }
        network.all(Element.Source.class).forEach(this::source);
        machines();
        network.all(Element.Line.class).forEach(this::line);
        network.all(Element.Regulator.class).forEach(this::regulator);
        network.all(Element.Transformer.class).forEach(this::transformer);
        network.all(Element.Load.class).forEach(this::load);
        network.all(Element.Capacitor.class).forEach(this::capacitor);
        network.all(Element.Generator.class).forEach(this::generator);
        for (Contact contact : grid.contacts()) {
            String name = "contact " + contact.id() + " of " + contact.owner() + " on phase " + contact.phase();
            int from = terminal(contact.a());
            int to = terminal(contact.b());
            // Between neutral and neutral there is nothing to work out: every neutral is one with the earth.
            boolean nothing = from == FlowModel.GROUND && to == FlowModel.GROUND;
            contacts[contact.id()] = builder.contact(
                    name,
                    from,
                    nothing ? builder.terminal(name) : to,
                    Ohms.of(contact, network),
                    false);
        }
        Arrays.setAll(terminals, i -> terminals[i] == UNUSED ? FlowModel.GROUND : terminals[i]);
        return new PowerModel(grid, builder.build(), terminals, contacts, branches, nominalAt, new PowerModel.Automatic(taps, controls, generators));
    }

    /** {@return the node whose nominal voltage a place has: a lead or a bushing that of the node on its side} */
    private Optional<String> node(Vertex vertex) {
        if (vertex instanceof Vertex.AtNode at) {
            return Optional.of(at.node());
        } else if (vertex instanceof Vertex.Lead lead) {
            return Optional.of(node(lead.device(), lead.side()));
        } else if (vertex instanceof Vertex.Bushing bushing) {
            return Optional.of(node(bushing.device(), bushing.side()));
        }
        return Optional.empty();
    }

    private String node(String device, Side side) {
        return ((Element.Branch) network.element(device).orElseThrow()).node(side);
    }

    private List<Double> factors() {
        return network.system().entrySet().stream()
                .filter(e -> e.getKey().startsWith("load case "))
                .map(e -> e.getValue().si())
                .toList();
    }

    private void loadCases() {
        List<String> names = new ArrayList<>(List.of("peak"));
        network.system().keySet().stream()
                .filter(k -> k.startsWith("load case "))
                .forEach(k -> names.add(k.substring("load case ".length())));
        builder.loadCases(names.toArray(String[]::new));
    }

    private static double figure(Map<String, Quantity> figures, String name, double otherwise) {
        Quantity quantity = figures.get(name);
        return quantity == null ? otherwise : quantity.si();
    }

    private static double need(Element element, String name) {
        Quantity quantity = element.figures().get(name);
        if (quantity == null) {
            throw new PowerException(
                    element.kind().name() + " " + element.name() + " states no " + name + ", which a load flow needs");
        }
        return quantity.si();
    }

    private int at(String node, Conductor phase) {
        return terminal(grid.number(new Vertex.AtNode(node, phase)).orElseThrow());
    }

    /** A vertex becomes a terminal when an element first uses it; a piece that no step brings stays at no voltage. */
    private int terminal(int vertex) {
        if (terminals[vertex] == UNUSED) {
            terminals[vertex] = builder.terminal(grid.vertices().get(vertex).toString());
        }
        return terminals[vertex];
    }

    private int[] at(String node, Phases phases) {
        return phases.list().stream()
                .filter(Conductor::isPhase)
                .mapToInt(p -> at(node, p))
                .toArray();
    }

    private void source(Element.Source source) {
        double volts = figure(source.figures(), "voltage", nominal.lineToLine(source.node()));
        double level = need(source, "fault level");
        double ratio = figure(source.figures(), "reactance ratio", USUAL_RATIO);
        double ground = figure(source.figures(), "ground fault level", level);
        ComplexMatrix three = SourceImpedance.ofFaultLevels(volts, level, ratio, ground, ratio);
        List<Conductor> phases =
                source.phases().list().stream().filter(Conductor::isPhase).toList();
        Complex[] emf = phases.stream()
                .map(p -> Complex.polar(volts / SQRT3, -30.0 * p.clock()))
                .toArray(Complex[]::new);
        int[] rows = phases.stream().mapToInt(Conductor::ordinal).toArray();
        builder.source(
                source.name(), at(source.node(), source.phases()), FlowModel.GROUND, emf, three.pick(rows, rows));
    }

    /** A temporary source has the nominal voltage of where it was brought for, each phase behind its own reactance. */
    private void machines() {
        Multimaps.index(grid.machines(), Grid.Machine::family).asMap().forEach((family, phases) -> {
            String node = network.element(family.of().toString())
                    .map(e -> e instanceof Element.Branch b ? b.to() : ((Element.Shunt) e).node())
                    .orElseThrow();
            double rating = rated(family, "power");
            double reactance = rated(family, "reactance");
            List<Grid.Machine> list = List.copyOf(phases);
            builder.source(
                    family.name(),
                    list.stream().mapToInt(m -> terminal(m.vertex())).toArray(),
                    FlowModel.GROUND,
                    list.stream()
                            .map(m -> Complex.polar(nominal.toGround(node, m.phase()), -30.0 * m.phase().clock()))
                            .toArray(Complex[]::new),
                    ComplexMatrix.of(list.size(), list.size(), (i, j) -> {
                        double volts = nominal.toGround(node, list.get(i).phase());
                        return i == j ? new Complex(0, reactance * list.size() * volts * volts / rating) : Complex.ZERO;
                    }));
        });
    }

    private static double rated(Temporary family, String name) {
        Quantity quantity = family.kind().ratings().get(name);
        if (quantity == null) {
            throw new PowerException(
                    "the kind " + family.kind().name() + " states no rating " + name + ", which a load flow needs of " + family.name());
        }
        return quantity.si();
    }

    private void line(Element.Line line) {
        LineOhms.PerMetre ohms = lineOhms.of(line);
        if (loaded.contains(line.name())) {
            spread(line, ohms);
            return;
        }
        branches.put(
                line.name(),
                builder.line(
                        line.name(),
                        at(line.from(), line.phases()),
                        at(line.to(), line.phases()),
                        ohms.impedance(),
                        ohms.shunt(),
                        need(line, "length")));
    }

    /** A section with load along it is two, joined where most of that load is drawn. */
    private void spread(Element.Line line, LineOhms.PerMetre ohms) {
        List<Conductor> phases = line.phases().list().stream().filter(Conductor::isPhase).toList();
        int[] quarter = phases.stream()
                .mapToInt(p -> builder.terminal(line.name() + " quarter " + p))
                .toArray();
        for (int i = 0; i < quarter.length; i++) {
            quarters.put(line.name() + " " + phases.get(i), quarter[i]);
        }
        branches.put(
                line.name(),
                DistributedLoad.section(
                        builder,
                        line.name(),
                        at(line.from(), line.phases()),
                        quarter,
                        at(line.to(), line.phases()),
                        ohms.impedance(),
                        ohms.shunt(),
                        need(line, "length"))[0]);
    }

    /** Load volts are (1 + 5/8 % a step) times source volts, as the published test feeders count their taps. */
    private void regulator(Element.Regulator regulator) {
        double range = figure(regulator.figures(), "range", USUAL_RANGE);
        double steps = figure(regulator.figures(), "steps", USUAL_STEPS);
        if (Math.abs(range / steps - USUAL_RANGE / USUAL_STEPS) > 1e-9) {
            throw new PowerException(
                    "the load flow knows regulators of 5/8 % a step, and " + regulator.name() + " states "
                            + Math.round(range * 1000) / 10.0 + " % in " + Math.round(steps) + " steps");
        }
        double rating = figure(regulator.figures(), "rating", USUAL_RATING);
        for (Conductor phase : regulator.phases()) {
            if (phase.isPhase()) {
                double tap = figure(regulator.figures(), "tap " + phase, figure(regulator.figures(), "tap", 0));
                int element = builder.regulator(
                        regulator.name() + " on phase " + phase,
                        at(regulator.from(), phase),
                        at(regulator.to(), phase),
                        FlowModel.GROUND,
                        RegulatorKind.TYPE_A,
                        new Complex(0, REGULATOR_PART * nominal.lineToLine(regulator.from()) / SQRT3 / rating),
                        (int) Math.round(tap));
                branches.put(regulator.name() + " " + phase, element);
                taps.add(new PowerModel.Tap(regulator.name(), phase, element));
                if (findsItsTap(regulator, phase)) {
                    controls.add(control(regulator, element));
                }
            }
        }
    }

    /** A control that says what it holds finds its tap, unless the network says where that stands. */
    private static boolean findsItsTap(Element.Regulator regulator, Conductor phase) {
        Map<String, Quantity> figures = regulator.figures();
        return figures.containsKey("setting")
                && !figures.containsKey("tap")
                && !figures.containsKey("tap " + phase);
    }

    private LineDropControl control(Element.Regulator regulator, int element) {
        Map<String, Quantity> figures = regulator.figures();
        double usual = nominal.lineToLine(regulator.from()) / SQRT3 / CONTROL_VOLTS;
        return new LineDropControl(
                element,
                figure(figures, "voltage ratio", usual),
                figure(figures, "rating", USUAL_RATING),
                new Complex(
                        figure(figures, "compensator resistance", 0), figure(figures, "compensator reactance", 0)),
                figures.get("setting").si(),
                figure(figures, "bandwidth", USUAL_BAND));
    }

    /** A generator follows the voltage that it finds, phase by phase; it holds no island. */
    private void generator(Element.Generator generator) {
        int phases = (int) generator.phases().list().stream()
                .filter(Conductor::isPhase)
                .count();
        Complex each = new Complex(
                        need(generator, "active power"), figure(generator.figures(), "reactive power", 0))
                .times(1.0 / phases);
        for (Conductor phase : generator.phases()) {
            if (phase.isPhase()) {
                generators.add(builder.follower(
                        generator.name() + " on phase " + phase,
                        at(generator.node(), phase),
                        FlowModel.GROUND,
                        nominal.toGround(generator.node(), phase),
                        each,
                        false));
            }
        }
    }

    private void transformer(Element.Transformer transformer) {
        double kva = need(transformer, "rating") / 1000;
        double low = need(transformer, "low voltage");
        double high = nominal.lineToLine(transformer.from());
        Complex perUnit = leakage(transformer);
        double unit = kva * 1000 / transformer.windings().size();
        if (transformer.centreTapped()) {
            centreTapped(transformer, high, low, perUnit);
            return;
        }
        Clock clock = Clock.of(transformer);
        for (Conductor start : transformer.windings()) {
            builder.transformer(
                    transformer.name() + " from phase " + start,
                    winding(transformer, true, clock.primary(start), high, perUnit, unit),
                    winding(transformer, false, clock.secondary(start), low, perUnit, unit));
        }
    }

    /** {@return the leakage impedance in parts of the rating's base: as stated in parts, or from its magnitude} */
    private static Complex leakage(Element.Transformer transformer) {
        Map<String, Quantity> figures = transformer.figures();
        if (figures.containsKey("reactance") && figures.containsKey("resistance")) {
            return new Complex(need(transformer, "resistance"), need(transformer, "reactance"));
        }
        double whole = need(transformer, "impedance");
        double usual = figures.containsKey("reactance")
                ? Math.sqrt(Math.max(0, whole * whole - Math.pow(need(transformer, "reactance"), 2)))
                : whole / Math.hypot(1, figure(figures, "reactance ratio", USUAL_TRANSFORMER_RATIO));
        double resistance = figure(figures, "resistance", usual);
        return new Complex(resistance, Math.sqrt(Math.max(0, whole * whole - resistance * resistance)));
    }

    private void centreTapped(Element.Transformer transformer, double high, double low, Complex perUnit) {
        int[] primary =
                transformer.ends().stream().mapToInt(p -> at(transformer.from(), p)).toArray();
        int[] legs = at(transformer.to(), Phases.LEGS);
        CentreTapped.add(
                builder,
                transformer.name(),
                primary.length == 2 ? primary : new int[] {primary[0], FlowModel.GROUND},
                new int[] {legs[0], FlowModel.GROUND, legs[1]},
                primary.length == 2 ? high : high / SQRT3,
                low / 2,
                need(transformer, "rating") / 1000,
                perUnit);
    }

    /** One unit's winding on one side, with half of the unit's impedance. @param ends its phases; null for the neutral */
    private Winding winding(
            Element.Transformer transformer,
            boolean primary,
            Conductor[] ends,
            double lineToLine,
            Complex perUnit,
            double voltAmperes) {
        Connection connection = primary ? transformer.primary() : transformer.secondary();
        String node = primary ? transformer.from() : transformer.to();
        String star = transformer.name() + (primary ? " primary neutral" : " secondary neutral");
        double volts = connection == Connection.DELTA ? lineToLine : lineToLine / SQRT3;
        int[] at = new int[2];
        for (int i = 0; i < 2; i++) {
            if (ends[i] != null && grid.number(new Vertex.AtNode(node, ends[i])).isEmpty()) {
                throw new PowerException(transformer.kind().name() + " " + transformer.name() + " has a winding to phase "
                        + ends[i] + " of " + node + ", which has no such phase; one unit between two phases is written single-phase");
            }
            at[i] = ends[i] != null
                    ? at(node, ends[i])
                    : connection == Connection.WYE ? builder.terminal(star) : FlowModel.GROUND;
        }
        return new Winding(at[0], at[1], volts, perUnit.times(0.5 * volts * volts / voltAmperes));
    }

    private void load(Element.Load load) {
        if (load.along().isEmpty()) {
            load(load, load.name(), at(load.node(), load.phases()), 1);
            return;
        }
        int[] quarter = load.phases().list().stream()
                .filter(Conductor::isPhase)
                .mapToInt(p -> quarters.get(load.along().get() + " " + p))
                .toArray();
        load(load, load.name() + " at the quarter", quarter, DistributedLoad.AT_QUARTER);
        load(load, load.name() + " at the end", at(load.node(), load.phases()), DistributedLoad.AT_END);
    }

    /** Adds a part of a load at some terminals. */
    private void load(Element.Load load, String name, int[] phases, double part) {
        double volts = nominal.lineToLine(load.node());
        List<Conductor> list =
                load.phases().list().stream().filter(Conductor::isPhase).toList();
        boolean between = load.connection() == Connection.DELTA && phases.length > 1;
        int parts = between && phases.length == 2 ? 1 : phases.length;
        int neutral = load.connection() == Connection.WYE && phases.length > 1
                ? builder.terminal(name + " neutral")
                : FlowModel.GROUND;
        for (int i = 0; i < parts; i++) {
            int back = between ? phases[(i + 1) % phases.length] : neutral;
            builder.load(
                    name + "." + (i + 1),
                    phases[i],
                    back,
                    between ? volts : nominal.toGround(load.node(), list.get(i)),
                    inAllCases(load, power(load, leg(list, i, between), parts).times(part)));
        }
    }

    /** {@return how the power of a part is called: by its phase, in delta by its two in the order of the rotation} */
    private static String leg(List<Conductor> phases, int part, boolean between) {
        Conductor one = phases.get(part);
        if (!between) {
            return one.toString();
        }
        Conductor next = phases.get((part + 1) % phases.size());
        return one == Conductor.A && next == Conductor.C ? "CA" : "" + one + next;
    }

    /** {@return what a load draws on one phase, or between it and the next: its own figure, or a share of the whole} */
    private static Complex power(Element.Load load, String leg, int parts) {
        boolean own = load.figures().keySet().stream().anyMatch(name -> name.startsWith("active power "));
        return own
                ? new Complex(
                        figure(load.figures(), "active power " + leg, 0),
                        figure(load.figures(), "reactive power " + leg, 0))
                : new Complex(
                                figure(load.figures(), "active power", 0),
                                figure(load.figures(), "reactive power", 0))
                        .times(1.0 / parts);
    }

    private LoadPower[] inAllCases(Element.Load load, Complex power) {
        LoadPower each = switch (load.model()) {
            case POWER -> LoadPower.constantPower(power);
            case CURRENT -> LoadPower.constantCurrent(power);
            case IMPEDANCE -> LoadPower.constantImpedance(power);
        };
        LoadPower[] cases = new LoadPower[factors().size() + 1];
        cases[0] = each;
        for (int i = 1; i < cases.length; i++) {
            cases[i] = each.times(factors().get(i - 1));
        }
        return cases;
    }

    private void capacitor(Element.Capacitor bank) {
        double volts = nominal.lineToLine(bank.node());
        int[] phases = at(bank.node(), bank.phases());
        boolean between = bank.connection() == Connection.DELTA && phases.length > 1;
        int parts = between && phases.length == 2 ? 1 : phases.length;
        double vars = need(bank, "reactive power") / parts;
        int neutral = bank.connection() == Connection.WYE && phases.length > 1
                ? builder.terminal(bank.name() + " neutral")
                : FlowModel.GROUND;
        for (int i = 0; i < parts; i++) {
            int back = between ? phases[(i + 1) % phases.length] : neutral;
            builder.capacitor(bank.name() + "." + (i + 1), phases[i], back, between ? volts : volts / SQRT3, vars);
        }
    }
}
