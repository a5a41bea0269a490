package org.keeplit.electric.power;

import static org.keeplit.electric.power.Assembly.SQRT3;
import static org.keeplit.electric.power.Assembly.figure;
import static org.keeplit.electric.power.Assembly.need;

import com.google.common.collect.Multimaps;
import java.util.ArrayList;
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
import org.keeplit.electric.flow.DistributedLoad;
import org.keeplit.electric.flow.FlowModel;
import org.keeplit.electric.flow.LineDropControl;
import org.keeplit.electric.flow.FlowModelBuilder;
import org.keeplit.electric.flow.RegulatorKind;
import org.keeplit.electric.flow.SourceImpedance;
import org.keeplit.network.Conductor;
import org.keeplit.network.Element;
import org.keeplit.network.Network;
import org.keeplit.network.Side;
import org.keeplit.procedure.Temporary;
import org.keeplit.program.Vertex;
import org.keeplit.unit.Quantity;

/** Makes a load-flow model of an electrical graph. */
final class PowerBuilder {
    /** When a source states no ratio of reactance to resistance. */
    private static final double USUAL_RATIO = 8;
    /** A regulator's own impedance, all reactance, in parts of its line's base; from memory a few ten-thousandths. */
    private static final double REGULATOR_PART = 1e-4;
    /** When a regulator states no rating, in ampere. */
    private static final double USUAL_RATING = 200;

    private final Assembly assembly;
    private final Shunts shunts;
    private final Grid grid;
    private final Network network;
    private final FlowModelBuilder builder;
    private final Nominal nominal;
    private final LineOhms lineOhms;
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

    PowerBuilder(Grid grid) {
        this.assembly = new Assembly(grid);
        this.shunts = new Shunts(assembly);
        this.grid = grid;
        this.network = assembly.network;
        this.builder = assembly.builder;
        this.nominal = assembly.nominal;
        this.loaded = network.all(Element.Load.class)
                .flatMap(load -> load.along().stream())
                .collect(Collectors.toSet());
        this.lineOhms = new LineOhms(network, figure(network.system(), "frequency", 60));
        this.contacts = new int[grid.contacts().size()];
        this.nominalAt = new double[grid.vertices().size()];
    }

    PowerModel build() {
        loadCases();
        for (int i = 0; i < nominalAt.length; i++) {
            Vertex vertex = grid.vertices().get(i);
            boolean earth = vertex.equals(Vertex.EARTH) || !vertex.conductor().isPhase();
            if (earth) {
                assembly.ground(i);
            } else {
                nominalAt[i] = node(vertex).map(n -> nominal.toGround(n, vertex.conductor())).orElse(0.0);
            }
        }
        network.all(Element.Source.class).forEach(this::source);
        machines();
        network.all(Element.Line.class).forEach(this::line);
        network.all(Element.Regulator.class).forEach(this::regulator);
        network.all(Element.Transformer.class).forEach(new Banks(assembly)::add);
        network.all(Element.Load.class).forEach(shunts::load);
        network.all(Element.Capacitor.class).forEach(shunts::capacitor);
        network.all(Element.Generator.class).forEach(shunts::generator);
        for (Contact contact : grid.contacts()) {
            String name = "contact " + contact.id() + " of " + contact.owner() + " on phase " + contact.phase();
            int from = assembly.terminal(contact.a());
            int to = assembly.terminal(contact.b());
            // Between neutral and neutral there is nothing to work out: every neutral is one with the earth.
            boolean nothing = from == FlowModel.GROUND && to == FlowModel.GROUND;
            contacts[contact.id()] = builder.contact(
                    name,
                    from,
                    nothing ? builder.terminal(name) : to,
                    Ohms.of(contact, network),
                    false);
        }
        return new PowerModel(grid, builder.build(), assembly.terminals(), contacts, branches, nominalAt, new PowerModel.Automatic(taps, controls, shunts.generators()));
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

    private void loadCases() {
        List<String> names = new ArrayList<>(List.of("peak"));
        network.system().keySet().stream()
                .filter(k -> k.startsWith("load case "))
                .forEach(k -> names.add(k.substring("load case ".length())));
        builder.loadCases(names.toArray(String[]::new));
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
                source.name(), assembly.at(source.node(), source.phases()), FlowModel.GROUND, emf, three.pick(rows, rows));
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
                    list.stream().mapToInt(m -> assembly.terminal(m.vertex())).toArray(),
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
                        assembly.at(line.from(), line.phases()),
                        assembly.at(line.to(), line.phases()),
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
            assembly.quarters.put(line.name() + " " + phases.get(i), quarter[i]);
        }
        branches.put(
                line.name(),
                DistributedLoad.section(
                        builder,
                        line.name(),
                        assembly.at(line.from(), line.phases()),
                        quarter,
                        assembly.at(line.to(), line.phases()),
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
                        assembly.at(regulator.from(), phase),
                        assembly.at(regulator.to(), phase),
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
}
