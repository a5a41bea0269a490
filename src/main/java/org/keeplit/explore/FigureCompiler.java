package org.keeplit.explore;

import java.util.List;
import java.util.Optional;
import org.keeplit.condition.Condition;
import org.keeplit.condition.Figure;
import org.keeplit.condition.PhaseTerm;
import org.keeplit.electric.Contact;
import org.keeplit.network.Conductor;
import org.keeplit.network.Element;
import org.keeplit.program.FieldKey;
import org.keeplit.unit.Dimension;
import org.keeplit.unit.Quantity;

/** Turns comparisons of figures into nodes. */
final class FigureCompiler {
    private final World world;
    private final ConditionCompiler conditions;

    FigureCompiler(World world, ConditionCompiler conditions) {
        this.world = world;
        this.conditions = conditions;
    }

    /** {@return the comparison, on every phase that its left side means} */
    Node compile(Condition.Compare compare, Environment environment) {
        List<Conductor> phases = phases(compare.left(), environment);
        if (phases.isEmpty()) {
            return compared(compare, environment, null);
        }
        return Node.all(phases.stream().map(p -> compared(compare, environment, p)).toList());
    }

    private Node compared(Condition.Compare compare, Environment environment, Conductor phase) {
        return new Amount.Compared(
                amount(compare.left(), environment, phase),
                compare.comparison(),
                amount(compare.right(), environment, phase));
    }

    /** {@return the phases that a figure is asked on; none for figures that have none} */
    List<Conductor> phases(Figure figure, Environment environment) {
        if (figure instanceof Figure.Part part) {
            return phases(part.figure(), environment);
        } else if (figure instanceof Figure.Measured measured) {
            if (measured.phase() instanceof PhaseTerm.Given given) {
                return given.phases().list();
            } else if (measured.phase() instanceof PhaseTerm.Variable variable) {
                return List.of(((Obj.OnPhase) environment.get(variable.name())).phase());
            }
            Obj object = conditions.object(measured.of(), environment);
            return world.phasesOf(object).list().stream().filter(Conductor::isPhase).toList();
        }
        return List.of();
    }

    Amount amount(Figure figure, Environment environment, Conductor phase) {
        if (figure instanceof Figure.Given given) {
            return new Amount.Fixed(given.quantity().si());
        } else if (figure instanceof Figure.Part part) {
            return new Amount.Part(part.factor(), amount(part.figure(), environment, phase));
        } else if (figure instanceof Figure.Rated rated) {
            return new Amount.Fixed(rated(rated.name(), conditions.object(rated.of(), environment), phase));
        }
        Figure.Measured measured = (Figure.Measured) figure;
        Obj object = conditions.object(measured.of(), environment);
        return switch (measured.measure()) {
            case CURRENT -> through(object, phase);
            case LOADING -> new Amount.Part(1 / rated("continuous", object, phase), through(object, phase));
            case RESIDUAL -> new Amount.Residual(poles(object));
            case VOLTAGE -> new Amount.Between(conditions.vertex(object, phase), 0);
            case VOLTAGE_ACROSS -> across(object, phase);
            case FAULT_CURRENT -> new Amount.AtFault(conditions.vertex(object, phase));
        };
    }

    private List<Contact> poles(Obj object) {
        return world.grid().contactsOf(object.words()).stream()
                .filter(c -> c.part() == Contact.Part.POLE)
                .toList();
    }

    private Amount across(Obj object, Conductor phase) {
        Contact pole = poles(object).stream().filter(c -> c.phase() == phase).findFirst().orElseThrow();
        return new Amount.Between(pole.a(), pole.b());
    }

    private Amount through(Obj object, Conductor phase) {
        if (object instanceof Obj.Of of && !(of.element() instanceof Element.Device)) {
            int[] place = world.power()
                    .branch(of.element().name(), phase)
                    .orElseThrow(() -> new IllegalStateException("no current is known through " + object.words()));
            return new Amount.InBranch(place[0], place[1]);
        }
        return new Amount.Through(world.grid().contactsOf(object.words()).stream()
                .filter(c -> c.phase() == phase)
                .filter(c -> c.part() == Contact.Part.POLE
                        || c.key() instanceof FieldKey.Clamp clamp && clamp.clamp() == 1)
                .toList());
    }

    /** {@return a figure of an object: its own, else its kind's, else its conductor's} */
    private double rated(String name, Obj object, Conductor phase) {
        if (name.equals("nominal voltage") || name.equals("voltage low") || name.equals("voltage high")) {
            double nominal = world.power().nominal(conditions.vertex(object, phase));
            Quantity part = world.bound().network().system().get(name);
            return name.equals("nominal voltage") ? nominal : part == null ? Double.NaN : part.si() * nominal;
        }
        return stated(name, object)
                .or(() -> name.equals("continuous") ? stated("rating", object) : Optional.empty())
                .map(Quantity::si)
                .orElse(Double.NaN);
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
        return Double.isNaN(value) ? "not known" : new Quantity(value, dimension).toString();
    }
}
