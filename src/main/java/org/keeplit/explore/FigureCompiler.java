package org.keeplit.explore;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.keeplit.condition.Condition;
import org.keeplit.condition.Figure;
import org.keeplit.condition.Measure;
import org.keeplit.condition.PhaseTerm;
import org.keeplit.electric.Contact;
import org.keeplit.network.Conductor;
import org.keeplit.network.Element;
import org.keeplit.program.FieldKey;
import org.keeplit.program.Pickups;
import org.keeplit.reference.ApproachDistances;
import org.keeplit.reference.Insulation;
import org.keeplit.reference.ApproachDistances.Exposure;
import org.keeplit.unit.Dimension;
import org.keeplit.unit.Quantity;

/** Turns comparisons of figures into nodes. */
final class FigureCompiler {
    private final World world;
    private final ConditionCompiler conditions;
    private final SwitchingFigures switching;

    FigureCompiler(World world, ConditionCompiler conditions) {
        this.world = world;
        this.conditions = conditions;
        this.switching = new SwitchingFigures(world);
    }

    /** What is compared on one phase. @param left the phase of the left side, null if none is meant @param right of the right */
    record OnPhases(Conductor left, Conductor right) {}

    /** {@return the comparison, on every phase that it means} */
    Node compile(Condition.Compare compare, Environment environment) {
        return Node.all(phases(compare, environment).stream()
                .<Node>map(p -> new Amount.Compared(
                        amount(compare.left(), environment, p.left()),
                        compare.comparison(),
                        amount(compare.right(), environment, p.right())))
                .toList());
    }

    /**
     * The phases of a comparison: those that its left side means, or its right side if the left has none. A right side that
     * says its own phase keeps it.
     */
    List<OnPhases> phases(Condition.Compare compare, Environment environment) {
        List<Conductor> left = phases(compare.left(), environment);
        List<Conductor> right = said(compare.right(), environment);
        if (left.isEmpty()) {
            left = phases(compare.right(), environment);
        }
        List<OnPhases> all = new ArrayList<>();
        for (Conductor one : left) {
            (right.isEmpty() ? List.of(one) : right).forEach(other -> all.add(new OnPhases(one, other)));
        }
        // Figures that are merely stated have no phase; where a place is needed, any will do.
        return all.isEmpty() ? List.of(new OnPhases(Conductor.A, Conductor.A)) : all;
    }

    /** {@return the phases that a figure is asked on; none for figures that have none} */
    List<Conductor> phases(Figure figure, Environment environment) {
        if (figure instanceof Figure.Part part) {
            return phases(part.figure(), environment);
        } else if (figure instanceof Figure.Measured measured) {
            List<Conductor> said = said(measured, environment);
            if (!said.isEmpty()) {
                return said;
            }
            Obj object = conditions.object(measured.of(), environment);
            return world.phasesOf(object).list().stream().filter(Conductor::isPhase).toList();
        }
        return List.of();
    }

    /** {@return the phases that a figure itself says; none if it says none} */
    private static List<Conductor> said(Figure figure, Environment environment) {
        if (figure instanceof Figure.Part part) {
            return said(part.figure(), environment);
        } else if (figure instanceof Figure.Measured measured
                && measured.phase() instanceof PhaseTerm.Given given) {
            return given.phases().list();
        } else if (figure instanceof Figure.Measured measured
                && measured.phase() instanceof PhaseTerm.Variable variable) {
            return List.of(((Obj.OnPhase) environment.get(variable.name())).phase());
        }
        return List.of();
    }

    Amount amount(Figure figure, Environment environment, Conductor phase) {
        if (figure instanceof Figure.Setting setting) {
            return new Amount.Fixed(setting.quantity().si());
        } else if (figure instanceof Figure.Given given) {
            return new Amount.Fixed(given.quantity().si());
        } else if (figure instanceof Figure.Part part) {
            return new Amount.Part(part.factor(), amount(part.figure(), environment, phase));
        } else if (figure instanceof Figure.Rated rated) {
            return rated(rated.name(), conditions.object(rated.of(), environment));
        }
        Figure.Measured measured = (Figure.Measured) figure;
        Obj object = conditions.object(measured.of(), environment);
        if (measured.measure().perPhase() && !world.phasesOf(object).contains(phase)) {
            // Where there is no conductor nothing flows and no voltage is.
            return new Amount.Fixed(0);
        }
        return switch (measured.measure()) {
            case CURRENT -> through(object, phase);
            case LOADING -> rated("continuous", object) instanceof Amount.Fixed rating
                    ? new Amount.Part(1 / rating.value(), through(object, phase))
                    : rated("continuous", object);
            case RESIDUAL -> new Amount.Residual(poles(object));
            case VOLTAGE -> new Amount.Between(conditions.vertex(object, phase), 0);
            case VOLTAGE_ACROSS -> new Amount.Between(
                    contact(object, phase).a(), contact(object, phase).b());
            case ANGLE -> new SwitchingAmounts.Angle(contact(object, phase));
            case RECOVERY -> new SwitchingAmounts.Recovery(contact(object, phase));
            case CLOSING_CURRENT -> new SwitchingAmounts.Closing(contact(object, phase));
            case COLD_LOAD -> switching.coldLoad(contact(object, phase));
            case INRUSH -> switching.inrush(contact(object, phase));
            case FAULT_CURRENT -> new Amount.AtFault(conditions.vertex(object, phase));
            case FAULT_THROUGH -> new FaultAmounts.AtContact(contact(object, phase));
            case SECTION_FAULT, SECTION_GROUND -> switching.beyond(
                    object,
                    conditions.object(measured.beyond().orElseThrow(), environment),
                    measured.measure() == Measure.SECTION_GROUND);
            case AVAILABLE -> switching.available(object, phase);
            case WITHSTAND -> switching.withstand(object);
            case TRAPPED -> switching.trapped(conditions.vertex(object, phase), phase);
            case TRAPPED_BEHIND -> switching.trappedBehind(contact(object, phase));
        };
    }

    private List<Contact> poles(Obj object) {
        return world.grid().contactsOf(object.words()).stream()
                .filter(c -> c.part() == Contact.Part.POLE)
                .toList();
    }

    private Contact contact(Obj object, Conductor phase) {
        return object instanceof Obj.Joint joint
                ? joint.contact()
                : poles(object).stream().filter(c -> c.phase() == phase).findFirst().orElseThrow();
    }

    private Amount through(Obj object, Conductor phase) {
        if (object instanceof Obj.Of of && !(of.element() instanceof Element.Device)) {
            int[] place = world.power()
                    .branch(of.element().name(), phase)
                    .orElseThrow(() -> new IllegalStateException("no current is known through " + object.words()));
            return new Amount.InBranch(place[0], place[1]);
        }
        if (object instanceof Obj.Joint joint) {
            return new Amount.Through(List.of(joint.contact()));
        }
        return new Amount.Through(world.grid().contactsOf(object.words()).stream()
                .filter(c -> c.phase() == phase)
                .filter(c -> c.part() == Contact.Part.POLE
                        || c.key() instanceof FieldKey.Clamp clamp && clamp.clamp() == 1)
                .toList());
    }

    /** {@return a figure of an object: its own, else its kind's, else its conductor's} */
    private Amount rated(String name, Obj object) {
        if (name.equals("nominal voltage")) {
            return new Amount.Fixed(nominal(object));
        } else if (name.equals("voltage low") || name.equals("voltage high")) {
            Quantity limit = world.bound().network().system().get(name);
            return limit == null
                    ? unstated(name, object)
                    : new Amount.Fixed(limit.si() * nominal(object));
        } else if (name.startsWith("approach distance")) {
            return approach(name, object);
        } else if (name.equals("least insulation resistance")) {
            return new Amount.Fixed(Insulation.of(world.nominal(object)).megohms() * 1e6);
        }
        return stated(name, object)
                .or(() -> name.equals("continuous") ? stated("rating", object) : Optional.empty())
                .or(() -> name.equals("pickup") ? minimumTrip(object) : Optional.empty())
                .<Amount>map(quantity -> new Amount.Fixed(quantity.si()))
                .orElseGet(() -> unstated(name, object));
    }

    /** {@return the distance that is kept from a live part there, as high as the network says that it lies; up to 900 m if it does not} */
    private Amount approach(String name, Obj object) {
        Quantity altitude = world.bound().network().system().get("altitude");
        OptionalDouble metres = ApproachDistances.table(
                world.nominal(object) / 1000,
                name.endsWith("phases") ? Exposure.PHASE_TO_PHASE : Exposure.PHASE_TO_GROUND,
                altitude == null ? 0 : altitude.si());
        return metres.isPresent() ? new Amount.Fixed(metres.getAsDouble()) : unstated(name, object);
    }

    /** {@return the current at which a device that states no pickup trips} */
    private static Optional<Quantity> minimumTrip(Obj object) {
        OptionalDouble amperes = object instanceof Obj.Of of && of.element() instanceof Element.Device device
                ? Pickups.phase(device)
                : OptionalDouble.empty();
        return amperes.isPresent()
                ? Optional.of(new Quantity(amperes.getAsDouble(), Dimension.CURRENT))
                : Optional.empty();
    }

    private static Amount unstated(String name, Obj object) {
        return new Amount.Unstated("the " + ConditionWords.rated(name) + " of " + object.words());
    }

    /** {@return the nominal voltage to ground at a point, which is the same on all its phases} */
    private double nominal(Obj object) {
        return world.power().nominal(conditions.vertex(object, world.phasesOf(object).list().get(0)));
    }

    private Optional<Quantity> stated(String name, Obj object) {
        if (object instanceof Obj.Family family) {
            return Optional.ofNullable(family.temporary().kind().ratings().get(name));
        } else if (object instanceof Obj.Of of) {
            Quantity own = of.element().figures().get(name);
            Quantity kind = of.element().kind().ratings().get(name);
            if (own == null && kind == null && of.element() instanceof Element.Line line) {
                return line.conductor()
                        .map(world.conductors()::get)
                        .map(figures -> figures.get(name.equals("continuous") ? "ampacity" : name));
            }
            return Optional.ofNullable(own != null ? own : kind);
        }
        return Optional.empty();
    }

    /** {@return a figure as people read it} */
    static String words(double value, Dimension dimension) {
        if (Double.isInfinite(value)) {
            return "none, as nothing is alive there";
        }
        return Double.isNaN(value) ? "not known" : new Quantity(value, dimension).toString();
    }
}
