package org.keeplit.electric.power;

import com.google.common.collect.ImmutableMap;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import org.keeplit.electric.complex.Complex;
import org.keeplit.electric.complex.ComplexMatrix;
import org.keeplit.electric.flow.SourceImpedance;
import org.keeplit.electric.line.Conductor;
import org.keeplit.electric.line.Earth;
import org.keeplit.electric.line.LineConstants;
import org.keeplit.electric.line.OverheadLine;
import org.keeplit.electric.line.Wire;
import org.keeplit.network.Element;
import org.keeplit.network.Network;
import org.keeplit.network.Phases;
import org.keeplit.network.Spacing;
import org.keeplit.network.Trait;
import org.keeplit.unit.Quantity;

/**
 * The impedance of line sections: as a matrix given outright, as sequence impedances, or from conductor and spacing.
 *
 * <p>A cable without figures of its own takes its conductor's resistance, 0.12 ohm reactance and, where it states no
 * susceptance, 0.25 microfarad for one kilometre (from memory, 15 kV single-core).
 */
final class LineOhms {
    private static final Pattern ENTRY = Pattern.compile("(resistance|reactance) [ABC]{2}");
    private static final double METRES_PER_MILE = 1609.344;
    private static final double FEET_PER_METRE = 1 / 0.3048;
    private static final double INCHES_PER_METRE = FEET_PER_METRE * 12;
    private static final double CABLE_REACTANCE = 0.12e-3;
    private static final double CABLE_FARADS = 0.25e-9;

    private final Network network;
    private final Earth earth;
    /** Lines of one conductor on one spacing are alike for each metre, and most lines of a feeder are of a few sorts. */
    private final Map<Sort, PerMetre> known = new HashMap<>();

    /** What sets the figures of an overhead line for one metre. */
    private record Sort(Phases phases, String conductor, String spacing) {}

    /** A line's impedance and admittance. @param impedance ohm a metre @param shunt siemens a metre */
    record PerMetre(ComplexMatrix impedance, ComplexMatrix shunt) {}

    LineOhms(Network network, double hertz) {
        this.network = network;
        this.earth = new Earth(hertz, Earth.USUAL.ohmMetres());
    }

    /**
     * Works it out.
     *
     * @param line the line
     * @return its figures for one metre, a row for each of its phases
     * @throws PowerException if nothing is known of it
     */
    PerMetre of(Element.Line line) {
        int phases = (int) line.phases().list().stream().filter(p -> p.isPhase()).count();
        Map<String, Quantity> figures = line.figures();
        if (figures.keySet().stream().anyMatch(name -> ENTRY.matcher(name).matches())) {
            return matrix(line);
        }
        if (figures.containsKey("resistance") || figures.containsKey("reactance")) {
            return sequences(line, phases);
        }
        ImmutableMap<String, Quantity> conductor =
                line.conductor().map(network.conductors()::get).orElse(null);
        if (conductor == null || !conductor.containsKey("resistance")) {
            throw new PowerException(line.kind().name() + " " + line.name() + " has no impedance: it states neither "
                    + "resistance and reactance nor a matrix, and "
                    + line.conductor().map(c -> "its conductor " + c + " states no resistance").orElse("no conductor"));
        }
        if (line.kind().has(Trait.CABLE)) {
            Complex ohms = new Complex(conductor.get("resistance").si(), CABLE_REACTANCE);
            return new PerMetre(diagonal(phases, ohms), charging(line, phases));
        }
        Sort sort = new Sort(line.phases(), line.conductor().orElse(""), line.spacing().orElse(""));
        PerMetre same = known.get(sort);
        if (same == null) {
            LineConstants perMile = overhead(line, conductor);
            same = new PerMetre(
                    perMile.impedance().times(1 / METRES_PER_MILE), perMile.shunt().times(1 / METRES_PER_MILE));
            known.put(sort, same);
        }
        return same;
    }

    /** {@return the admittance that a line states of each phase, or a cable's usual one} */
    private ComplexMatrix charging(Element.Line line, int phases) {
        double usual = line.kind().has(Trait.CABLE) ? 2 * Math.PI * earth.hertz() * CABLE_FARADS : 0;
        return diagonal(phases, new Complex(0, si(line.figures(), "susceptance", usual)));
    }

    private static ComplexMatrix diagonal(int phases, Complex value) {
        return ComplexMatrix.of(phases, phases, (i, j) -> i == j ? value : Complex.ZERO);
    }

    /** The matrix as given; what is given for AB is meant for BA too. */
    private PerMetre matrix(Element.Line line) {
        List<org.keeplit.network.Conductor> phases = phases(line);
        int n = phases.size();
        ComplexMatrix impedance = ComplexMatrix.of(n, n, (i, j) -> new Complex(
                entry(line, "resistance", phases.get(i), phases.get(j), i == j),
                entry(line, "reactance", phases.get(i), phases.get(j), i == j)));
        if (line.figures().keySet().stream().noneMatch(f -> f.startsWith("susceptance "))) {
            return new PerMetre(impedance, charging(line, n));
        }
        ComplexMatrix shunt = ComplexMatrix.of(
                n, n, (i, j) -> new Complex(0, entry(line, "susceptance", phases.get(i), phases.get(j), false)));
        return new PerMetre(impedance, shunt);
    }

    private static List<org.keeplit.network.Conductor> phases(Element.Line line) {
        return line.phases().list().stream()
                .filter(org.keeplit.network.Conductor::isPhase)
                .toList();
    }

    private static double entry(
            Element.Line line,
            String what,
            org.keeplit.network.Conductor one,
            org.keeplit.network.Conductor other,
            boolean needed) {
        Quantity quantity = line.figures().getOrDefault(what + " " + one + other, line.figures().get(what + " " + other + one));
        if (quantity == null && needed) {
            throw new PowerException("line " + line.name() + " gives no " + what + " for phase " + one);
        }
        return quantity == null ? 0 : quantity.si();
    }

    /** A line of which only the positive sequence is known has a zero sequence of three times that, as open wire has. */
    private PerMetre sequences(Element.Line line, int phases) {
        Map<String, Quantity> figures = line.figures();
        double r = si(figures, "resistance", 0);
        double x = si(figures, "reactance", 0);
        Complex positive = new Complex(r, x);
        Complex zero = new Complex(si(figures, "zero resistance", 3 * r), si(figures, "zero reactance", 3 * x));
        ComplexMatrix three = SourceImpedance.ofSequences(positive, zero);
        ComplexMatrix kept = ComplexMatrix.of(phases, phases, three::at);
        return new PerMetre(kept, charging(line, phases));
    }

    private static double si(Map<String, Quantity> figures, String name, double otherwise) {
        Quantity quantity = figures.get(name);
        return quantity == null ? otherwise : quantity.si();
    }

    private LineConstants overhead(Element.Line line, ImmutableMap<String, Quantity> figures) {
        Conductor conductor = conductor(line, line.conductor().orElse(""), figures);
        return hung(
                line,
                conductor,
                line.spacing()
                        .map(network.spacings()::get)
                        .orElseThrow(() -> new PowerException("overhead " + line.kind().name() + " " + line.name()
                                + " hangs on no spacing: none of those declared ("
                                + String.join(", ", network.spacings().keySet()) + ") has exactly its phases "
                                + line.phases() + "; name one, or state resistance and reactance")));
    }

    private LineConstants hung(Element.Line line, Conductor conductor, Spacing spacing) {
        List<Wire> wires = new ArrayList<>();
        for (org.keeplit.network.Conductor phase : phases(line)) {
            wires.add(wire(conductor, spacing.positions().get(phase)));
        }
        List<Wire> grounded = new ArrayList<>();
        Spacing.Position neutral = spacing.positions().get(org.keeplit.network.Conductor.N);
        if (neutral != null) {
            String name = spacing.neutral().orElse(line.conductor().orElse(""));
            grounded.add(wire(conductor(line, name, network.conductors().get(name)), neutral));
        }
        return OverheadLine.of(wires, grounded, earth);
    }

    private static Wire wire(Conductor conductor, Spacing.Position position) {
        return new Wire(conductor, position.across() * FEET_PER_METRE, position.height() * FEET_PER_METRE);
    }

    private static Conductor conductor(Element.Line line, String name, ImmutableMap<String, Quantity> figures) {
        if (figures == null || !figures.containsKey("radius") || !figures.containsKey("resistance")) {
            throw new PowerException("conductor " + name + " of line " + line.name()
                    + " states no resistance or no radius (geometric mean)");
        }
        double radius = figures.get("radius").si();
        // Without a diameter, that of a solid round wire of this geometric mean radius; it only sets the charging.
        double diameter = figures.containsKey("diameter")
                ? figures.get("diameter").si()
                : 2 * radius / Math.exp(-0.25);
        return new Conductor(
                name,
                figures.get("resistance").si() * METRES_PER_MILE,
                radius * FEET_PER_METRE,
                diameter * INCHES_PER_METRE);
    }
}
