package org.keeplit.plain;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.keeplit.network.Conductor;
import org.keeplit.network.Element;
import org.keeplit.network.Network;
import org.keeplit.network.Spacing;
import org.keeplit.network.Trait;
import org.keeplit.unit.Quantity;

/**
 * Impedance and charging of line sections, for one metre: as stated, or worked out from the wires with the earth as
 * return. In metres throughout.
 */
final class PlainLines {
    private static final double FOOT = 0.3048;
    private static final double MILE = 1609.344;
    private static final double CABLE_REACTANCE = 0.12e-3;
    private static final double CABLE_FARADS = 0.25e-9;

    private final Network network;
    private final double hertz;

    /** What one metre has. @param ohms in series @param siemens to ground */
    record Metre(PlainMatrix ohms, PlainMatrix siemens) {}

    /** One wire, in metres. */
    private record Wire(double x, double y, double ohms, double meanRadius, double radius) {}

    PlainLines(Network network) {
        this.network = network;
        this.hertz = network.system().containsKey("frequency")
                ? network.system().get("frequency").si()
                : 60;
    }

    Metre of(Element.Line line) {
        List<Conductor> phases =
                line.phases().list().stream().filter(Conductor::isPhase).toList();
        int n = phases.size();
        if (line.figures().keySet().stream().anyMatch(f -> f.matches("(resistance|reactance) [ABC][ABC]"))) {
            boolean shunt = line.figures().keySet().stream().anyMatch(f -> f.startsWith("susceptance "));
            return new Metre(stated(line, phases, true), shunt ? stated(line, phases, false) : charging(line, n));
        }
        if (line.figures().containsKey("resistance") || line.figures().containsKey("reactance")) {
            return new Metre(sequences(line, n), charging(line, n));
        }
        Map<String, Quantity> conductor = network.conductors().get(line.conductor().orElseThrow());
        if (line.kind().has(Trait.CABLE)) {
            Cx ohms = new Cx(conductor.get("resistance").si(), CABLE_REACTANCE);
            return new Metre(diagonal(n, ohms), charging(line, n));
        }
        List<Wire> wires = wires(line, phases, conductor);
        return new Metre(withoutNeutral(ohms(wires), n), siemens(wires, n));
    }

    /** {@return what each phase has to ground: as stated, and of a cable that does not say the usual} */
    private PlainMatrix charging(Element.Line line, int n) {
        double usual = line.kind().has(Trait.CABLE) ? 2 * Math.PI * hertz * CABLE_FARADS : 0;
        return diagonal(n, new Cx(0, figure(line.figures(), "susceptance", usual)));
    }

    private static PlainMatrix diagonal(int n, Cx value) {
        PlainMatrix matrix = new PlainMatrix(n);
        for (int i = 0; i < n; i++) {
            matrix.add(i, i, value);
        }
        return matrix;
    }

    private static PlainMatrix stated(Element.Line line, List<Conductor> phases, boolean series) {
        PlainMatrix matrix = new PlainMatrix(phases.size());
        for (int i = 0; i < phases.size(); i++) {
            for (int j = 0; j < phases.size(); j++) {
                String pair = " " + phases.get(i) + phases.get(j);
                String back = " " + phases.get(j) + phases.get(i);
                Cx value = series
                        ? new Cx(either(line, "resistance", pair, back), either(line, "reactance", pair, back))
                        : new Cx(0, either(line, "susceptance", pair, back));
                matrix.add(i, j, value);
            }
        }
        return matrix;
    }

    private static double either(Element.Line line, String what, String pair, String back) {
        return figure(line.figures(), what + pair, figure(line.figures(), what + back, 0));
    }

    private static double figure(Map<String, Quantity> figures, String name, double otherwise) {
        return figures.containsKey(name) ? figures.get(name).si() : otherwise;
    }

    /** A third of zero sequence and two thirds of positive on the diagonal, a third of their difference beside it. */
    private static PlainMatrix sequences(Element.Line line, int n) {
        double r = figure(line.figures(), "resistance", 0);
        double x = figure(line.figures(), "reactance", 0);
        Cx positive = new Cx(r, x);
        Cx zero = new Cx(
                figure(line.figures(), "zero resistance", 3 * r), figure(line.figures(), "zero reactance", 3 * x));
        return balanced(n, positive, zero);
    }

    static PlainMatrix balanced(int n, Cx positive, Cx zero) {
        PlainMatrix matrix = new PlainMatrix(n);
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                matrix.add(i, j, zero.minus(positive).times(1.0 / 3));
            }
            matrix.add(i, i, positive);
        }
        return matrix;
    }

    private List<Wire> wires(Element.Line line, List<Conductor> phases, Map<String, Quantity> conductor) {
        List<Wire> all = new ArrayList<>();
        Spacing spacing = network.spacings().get(line.spacing().orElseThrow());
        for (Conductor phase : phases) {
            Spacing.Position at = spacing.positions().get(phase);
            all.add(wire(at.across(), at.height(), conductor));
        }
        Spacing.Position at = spacing.positions().get(Conductor.N);
        if (at != null) {
            Map<String, Quantity> neutral =
                    spacing.neutral().<Map<String, Quantity>>map(network.conductors()::get).orElse(conductor);
            all.add(wire(at.across(), at.height(), neutral));
        }
        return all;
    }

    private static Wire wire(double x, double y, Map<String, Quantity> conductor) {
        double mean = conductor.get("radius").si();
        // A solid round wire's own radius is e^(1/4) times its mean one.
        double diameter = figure(conductor, "diameter", 2 * mean * Math.exp(0.25));
        return new Wire(x, y, conductor.get("resistance").si(), mean, diameter / 2);
    }

    /**
     * Carson's equations, cut after their first terms, earth of 100 ohm metres. The constants are the published ones for
     * ohm per mile and feet, so that figures agree with those of the test feeders to all their digits.
     */
    private PlainMatrix ohms(List<Wire> wires) {
        int n = wires.size();
        PlainMatrix matrix = new PlainMatrix(n);
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                Wire a = wires.get(i);
                Wire b = wires.get(j);
                double metres = i == j ? a.meanRadius() : Math.hypot(a.x() - b.x(), a.y() - b.y());
                double depth = 7.6786 + 0.5 * Math.log(100 / hertz) - Math.log(metres / FOOT);
                Cx earth = new Cx(0.00158836 * hertz, 0.00202237 * hertz * depth);
                matrix.add(i, j, earth.times(1 / MILE));
            }
            matrix.add(i, i, Cx.real(wires.get(i).ohms()));
        }
        return matrix;
    }

    /** Potential coefficients with the wires' images, at 11.17689 miles per microfarad; the neutral at no potential. */
    private PlainMatrix siemens(List<Wire> wires, int phases) {
        int n = wires.size();
        PlainMatrix potential = new PlainMatrix(n);
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                Wire a = wires.get(i);
                Wire b = wires.get(j);
                double image = Math.hypot(a.x() - b.x(), a.y() + b.y());
                double own = i == j ? a.radius() : Math.hypot(a.x() - b.x(), a.y() - b.y());
                potential.add(i, j, Cx.real(11.17689e6 * MILE * Math.log(image / own)));
            }
        }
        PlainMatrix charge = potential.inverse();
        PlainMatrix kept = new PlainMatrix(phases);
        for (int i = 0; i < phases; i++) {
            for (int j = 0; j < phases; j++) {
                kept.add(i, j, charge.at(i, j).times(new Cx(0, 2 * Math.PI * hertz)));
            }
        }
        return kept;
    }

    /** The voltage along a neutral that is grounded everywhere is nothing: of the inverse only the phases are kept. */
    private static PlainMatrix withoutNeutral(PlainMatrix all, int phases) {
        PlainMatrix through = all.inverse();
        PlainMatrix kept = new PlainMatrix(phases);
        for (int i = 0; i < phases; i++) {
            for (int j = 0; j < phases; j++) {
                kept.add(i, j, through.at(i, j));
            }
        }
        return kept.inverse();
    }
}
