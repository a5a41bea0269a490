package org.keeplit.gridfile;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.StringJoiner;
import org.keeplit.electric.complex.ComplexMatrix;
import org.keeplit.electric.line.Cable;
import org.keeplit.electric.line.ConcentricNeutralCable;
import org.keeplit.electric.line.Earth;
import org.keeplit.electric.line.LineConstants;
import org.keeplit.electric.line.OverheadLine;
import org.keeplit.electric.line.TapeShieldCable;
import org.keeplit.electric.line.UndergroundLine;
import org.keeplit.electric.line.Wire;
import org.keeplit.network.Conductor;

/** Line constants from wires and where they hang: Carson's equations and Kron's reduction, see {@link org.keeplit.electric.line}. */
final class WireConstants {
    private static final double FEET = 0.3048;
    private static final double INCHES = 0.0254;
    private static final double MILE = 1609.344;
    /** The usual resistivity of the ground, ohm metres; grid files do not state one. */
    private static final double EARTH = 100;
    /** Relative permittivity on which the constants of cables rest. */
    private static final double PERMITTIVITY = 2.3;
    /** Of a solid round wire, its geometric mean radius over its radius. */
    private static final double SOLID = Math.exp(-0.25);

    /**
     * What was worked out.
     *
     * @param impedance ohm per metre, a row for each phase
     * @param shunt siemens per metre
     * @param cable whether it is a cable
     * @param ampacity the least of the wires', in amperes; 0 if they do not say
     */
    record Strung(ComplexMatrix impedance, ComplexMatrix shunt, boolean cable, double ampacity) {}

    private final Work work;
    private final CimModel model;
    private final Earth earth;

    WireConstants(Work work, double hertz) {
        this.work = work;
        this.model = work.model();
        this.earth = new Earth(hertz, EARTH);
    }

    Optional<CimObject> spacing(CimObject segment) {
        Optional<CimObject> own = model.follow(segment, "WireSpacingInfo");
        return own.isPresent() ? own : model.follow(segment, "AssetDatasheet").filter(d -> d.type().equals("WireSpacingInfo"));
    }

    private Optional<CimObject> wire(CimObject part) {
        Optional<CimObject> own = model.follow(part, "WireInfo");
        return own.isPresent() ? own : model.follow(part, "AssetDatasheet");
    }

    /** {@return what two segments have in common that have the same constants} */
    String key(CimObject spacing, List<CimObject> parts, List<Conductor> phases) {
        StringJoiner key = new StringJoiner(" ");
        key.add(spacing.id()).add(phases.toString());
        parts.forEach(p -> key.add(wire(p).map(CimObject::id).orElse("")));
        return key.toString();
    }

    /** {@return the constants of a segment, unless something is missing, which is told} */
    Optional<Strung> of(CimObject segment, CimObject spacing, List<CimObject> parts, List<Conductor> phases) {
        List<CimObject> positions = model.pointing(spacing, "WirePosition", "WireSpacingInfo");
        if (positions.size() < parts.size() || parts.isEmpty()) {
            model.mark("missing-figure", segment, spacing + " has " + positions.size() + " WirePositions, and " + segment + " has "
                    + parts.size() + " conductors to hang there", "");
            return Optional.empty();
        }
        work.ledger().part(spacing);
        List<Wire> bare = new ArrayList<>();
        List<Wire> neutrals = new ArrayList<>();
        List<UndergroundLine.Laid> laid = new ArrayList<>();
        for (int i = 0; i < parts.size(); i++) {
            Optional<CimObject> info = wire(parts.get(i));
            if (info.isEmpty()) {
                model.mark("missing-figure", parts.get(i), parts.get(i) + " does not say its WireInfo", "the spacing of " + segment + " needs the wires that hang there");
                return Optional.empty();
            }
            CimObject one = info.get();
            work.ledger().part(one);
            work.ledger().part(positions.get(i));
            double x = model.number(positions.get(i), "xCoord", 0) / FEET;
            double y = model.number(positions.get(i), "yCoord", 0) / FEET;
            boolean neutral = phases.get(i) == Conductor.N;
            if (one.type().equals("OverheadWireInfo")) {
                (neutral ? neutrals : bare).add(new Wire(conductor(one), x, y));
            } else if (neutral) {
                model.mark("bad-phase", parts.get(i), parts.get(i) + " is a neutral of " + one.type() + ", and a neutral is a bare wire", "");
                return Optional.empty();
            } else {
                laid.add(new UndergroundLine.Laid(cable(one), x, y));
            }
        }
        boolean cable = !laid.isEmpty();
        return constants(segment, bare, neutrals, laid).map(c -> new Strung(
                c.impedance().times(1 / MILE),
                c.shunt().times((cable ? permittivity(parts) / PERMITTIVITY : 1) / MILE),
                cable,
                least(parts, phases)));
    }

    /** {@return the relative permittivity of the cables among some conductors, on average} */
    private double permittivity(List<CimObject> parts) {
        return parts.stream().map(this::wire).flatMap(Optional::stream).filter(w -> !w.type().equals("OverheadWireInfo"))
                .mapToDouble(w -> model.number(w, "relativePermittivity", PERMITTIVITY)).average().orElse(PERMITTIVITY);
    }

    private double least(List<CimObject> parts, List<Conductor> phases) {
        double least = Double.MAX_VALUE;
        for (int i = 0; i < parts.size(); i++) {
            OptionalDouble amperes = phases.get(i) == Conductor.N ? OptionalDouble.empty() : wire(parts.get(i)).map(w -> model.number(w, "ratedCurrent")).orElse(OptionalDouble.empty());
            least = Math.min(least, amperes.orElse(least));
        }
        return least == Double.MAX_VALUE ? 0 : least;
    }

    private Optional<LineConstants> constants(CimObject segment, List<Wire> bare, List<Wire> neutrals, List<UndergroundLine.Laid> laid) {
        if (!bare.isEmpty() && !laid.isEmpty()) {
            model.mark("bad-phase", segment, segment + " has bare wires and cables as its phases", "");
            return Optional.empty();
        }
        try {
            return Optional.of(laid.isEmpty() ? OverheadLine.of(bare, neutrals, earth) : UndergroundLine.of(laid, neutrals, earth));
        } catch (IllegalArgumentException | ArithmeticException e) {
            model.mark("bad-figure", segment, "the wires of " + segment + " make no line: " + e.getMessage(), "look at its WirePositions");
            return Optional.empty();
        }
    }

    private org.keeplit.electric.line.Conductor conductor(CimObject wire) {
        double radius = model.positive(wire, "radius", "metres");
        double gmr = model.number(wire, "gmr", radius * SOLID);
        return new org.keeplit.electric.line.Conductor(wire.name(), resistance(wire) * MILE, gmr / FEET, 2 * radius / INCHES);
    }

    /** {@return ohm per metre: at 50 degrees Celsius if that is stated, else as warm as comes next} */
    private double resistance(CimObject wire) {
        for (String attribute : List.of("rAC50", "rAC75", "rAC25", "rDC20")) {
            if (model.number(wire, attribute, 0) > 0) {
                return model.number(wire, attribute, 0);
            }
        }
        return model.positive(wire, "rAC50", "ohm per metre");
    }

    private Cable cable(CimObject cable) {
        if (cable.type().equals("TapeShieldCableInfo")) {
            double tape = model.positive(cable, "tapeThickness", "metres");
            // The tape lies on the screen.
            double outside = model.positive(cable, "diameterOverScreen", "metres") + 2 * tape;
            return new TapeShieldCable(conductor(cable), outside / INCHES, tape / INCHES * 1000);
        }
        double radius = model.positive(cable, "neutralStrandRadius", "metres");
        org.keeplit.electric.line.Conductor strand = new org.keeplit.electric.line.Conductor(
                cable.name() + " strand",
                model.positive(cable, "neutralStrandRDC20", "ohm per metre") * MILE,
                model.number(cable, "neutralStrandGmr", radius * SOLID) / FEET,
                2 * radius / INCHES);
        return new ConcentricNeutralCable(conductor(cable), strand, (int) model.positive(cable, "neutralStrandCount", "strands"),
                model.positive(cable, "diameterOverNeutral", "metres") / INCHES);
    }
}
