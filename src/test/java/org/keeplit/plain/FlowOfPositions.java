package org.keeplit.plain;

import static org.keeplit.electric.flow.FlowModel.GROUND;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.keeplit.electric.Contact;
import org.keeplit.electric.complex.Complex;
import org.keeplit.electric.complex.ComplexMatrix;
import org.keeplit.electric.flow.FlowModel;
import org.keeplit.electric.flow.FlowModelBuilder;
import org.keeplit.electric.flow.FlowSolution;
import org.keeplit.electric.flow.FlowState;
import org.keeplit.electric.flow.LoadPower;
import org.keeplit.electric.flow.Winding;
import org.keeplit.network.Conductor;
import org.keeplit.network.Connection;
import org.keeplit.network.Element;

/** The physics of made positions: the same network with impedances, solved. All voltages are 7200 V to ground. */
final class FlowOfPositions {
    static final double VOLTS = 7200;
    private static final Complex SMALL = new Complex(0.001, 0.001);
    private static final Complex LEAKAGE = new Complex(1, 5);

    private final MadePositions made;
    private final FlowModelBuilder builder = FlowModel.builder();
    private final Map<Contact, Integer> contacts = new HashMap<>();
    private final FlowModel model;
    private final boolean generatorsRun;

    FlowOfPositions(MadePositions made, boolean generatorsRun) {
        this.made = made;
        this.generatorsRun = generatorsRun;
        made.network().elements().forEach(this::element);
        // Each phase of a set that was brought, turned as every supply but alpha is.
        made.grid().machines().forEach(m -> builder.source(
                m.family().name() + m.phase(),
                new int[] {terminal(Names.machine(m.family().name(), m.phase()))},
                GROUND,
                new Complex[] {Complex.polar(VOLTS, 17 - m.phase().clock() * 30)},
                ComplexMatrix.of(1, 1, (i, j) -> new Complex(0.3, 2))));
        for (Contact c : made.grid().contacts()) {
            String name = MadePositions.name(made.grid().vertices().get(c.a()));
            int a = name.equals(Names.EARTH) ? GROUND : terminal(name);
            int b = terminal(MadePositions.name(made.grid().vertices().get(c.b())));
            contacts.put(c, builder.contact("contact " + c.id(), b, a, SMALL, made.isClosed(c)));
        }
        this.model = builder.build();
    }

    /** {@return the solution with some contact in another position, null for none; null if there is no solution} */
    FlowSolution solve(Contact changed) {
        FlowState state = model.baseState();
        if (changed != null) {
            FlowState.Editor edit = state.edit();
            made.grid().contacts(changed.key()).stream()
                    .filter(c -> made.isClosed(c) == made.isClosed(changed))
                    .forEach(c -> edit.contact(contacts.get(c), !made.isClosed(c)));
            state = edit.state();
        }
        return model.solver().solve(state).solution().orElse(null);
    }

    boolean isGroundedAnywhere() {
        return contacts.keySet().stream().anyMatch(c -> c.part() == Contact.Part.GROUND && made.isClosed(c));
    }

    boolean knows(String place) {
        return model.terminals().contains(place);
    }

    double volts(FlowSolution solution, String place) {
        return place.equals(Names.EARTH) ? 0 : solution.voltage(model.terminals().indexOf(place)).abs();
    }

    Complex phasor(FlowSolution solution, String place) {
        return solution.voltage(model.terminals().indexOf(place));
    }

    double amperes(FlowSolution solution, Contact contact) {
        return solution.current(contacts.get(contact), 0).abs();
    }

    double voltsAcross(FlowSolution solution, Contact contact) {
        var element = model.elements().get(contacts.get(contact));
        return solution.voltageBetween(element.terminal(0), element.terminal(1)).abs();
    }

    private int terminal(String place) {
        return builder.terminal(place);
    }

    private int at(String node, Conductor phase) {
        return terminal(Names.node(node, phase));
    }

    private int[] all(String node, Element of) {
        return of.phases().list().stream().mapToInt(p -> at(node, p)).toArray();
    }

    private void element(Element element) {
        if (element instanceof Element.Source s) {
            double turn = s.supply().equals("alpha") ? 0 : 17;
            source(s.name(), s.node(), s, turn, -1);
        } else if (element instanceof Element.Generator g) {
            if (generatorsRun) {
                source(g.name(), g.node(), g, 5, 1);
            }
        } else if (element instanceof Element.Line l) {
            for (Conductor p : l.phases()) {
                join(l, p, new Complex(0.3, 0.6));
            }
        } else if (element instanceof Element.Regulator r) {
            for (Conductor p : r.phases()) {
                join(r, p, new Complex(0.01, 0.05));
            }
        } else if (element instanceof Element.Transformer t) {
            transformer(t);
        } else if (element instanceof Element.Load l) {
            double watts = 10_000;
            draw(l.name(), l.node(), l.phases().list(), l.connection(), new Complex(watts, 3000));
            if (l.motor() && l.connection() == Connection.GROUNDED_WYE) {
                draw(l.name() + " motor", l.node(), l.phases().list(), Connection.DELTA, new Complex(watts, 3000));
            }
        } else if (element instanceof Element.Capacitor c) {
            draw(c.name(), c.node(), c.phases().list(), c.connection(), new Complex(0, -17_000));
        }
    }

    private void join(Element.Branch branch, Conductor p, Complex impedance) {
        builder.line(
                branch.name() + " " + p,
                new int[] {at(branch.from(), p)},
                new int[] {at(branch.to(), p)},
                ComplexMatrix.of(1, 1, (i, j) -> impedance),
                1);
    }

    private void source(String name, String node, Element of, double turn, int generator) {
        List<Conductor> phases = of.phases().list().stream().filter(Conductor::isPhase).toList();
        int[] ends = phases.stream().mapToInt(p -> at(node, p)).toArray();
        Complex[] emf = phases.stream()
                .map(p -> Complex.polar(VOLTS, turn - p.clock() * 30))
                .toArray(Complex[]::new);
        ComplexMatrix z = ComplexMatrix.balanced(ends.length, new Complex(0.2, 1.1), new Complex(0.05, 0.2));
        if (generator < 0) {
            builder.source(name, ends, GROUND, emf, z);
        } else {
            builder.generator(name, ends, GROUND, emf, z, true);
        }
    }

    private void draw(String name, String node, List<Conductor> phases, Connection connection, Complex power) {
        int n = phases.size();
        if (n == 1 || connection == Connection.GROUNDED_WYE) {
            phases.forEach(p -> load(name + p, at(node, p), GROUND, VOLTS, power));
        } else if (connection == Connection.WYE) {
            int star = terminal(name + "/star");
            phases.forEach(p -> load(name + p, at(node, p), star, VOLTS, power));
        } else {
            for (int i = 0; i < (n == 2 ? 1 : n); i++) {
                load(name + i, at(node, phases.get(i)), at(node, phases.get((i + 1) % n)), VOLTS * Math.sqrt(3), power);
            }
        }
    }

    private void load(String name, int from, int to, double volts, Complex power) {
        builder.load(name, from, to, volts, LoadPower.constantImpedance(power));
    }

    /** Winding i lies on one core with winding i of the other side; the clock says which way a delta is closed. */
    private void transformer(Element.Transformer t) {
        int n = t.phases().size();
        if (t.centreTapped()) {
            int[] high = all(t.from(), t);
            double across = n == 2 ? VOLTS * Math.sqrt(3) : VOLTS;
            // From C on to A, as the rotation goes.
            boolean round = n == 2 && t.phases().contains(Conductor.A) && t.phases().contains(Conductor.C);
            builder.transformer(
                    t.name(),
                    new Winding(high[round ? 1 : 0], n == 1 ? GROUND : high[round ? 0 : 1], across, LEAKAGE),
                    new Winding(at(t.to(), Conductor.X1), GROUND, VOLTS, LEAKAGE),
                    new Winding(GROUND, at(t.to(), Conductor.X3), VOLTS, LEAKAGE));
            return;
        }
        int units = n == 2 && (t.primary() == Connection.DELTA || t.secondary() == Connection.DELTA) ? 1 : n;
        for (int i = 0; i < units; i++) {
            builder.transformer(
                    t.name() + "." + i,
                    winding(t.name() + "/1", all(t.from(), t), t.primary(), i, shifts(t) ? -30 * t.clock() : 30),
                    winding(t.name() + "/2", all(t.to(), t), t.secondary(), i, shifts(t) ? 30 * t.clock() : 30));
        }
    }

    private static boolean shifts(Element.Transformer t) {
        return t.primary() == Connection.DELTA != (t.secondary() == Connection.DELTA);
    }

    private Winding winding(String star, int[] ends, Connection connection, int i, int degrees) {
        return switch (connection) {
            case GROUNDED_WYE -> new Winding(ends[i], GROUND, VOLTS, LEAKAGE);
            case WYE -> new Winding(ends[i], terminal(star), VOLTS, LEAKAGE);
            case DELTA -> ends.length == 3 ? delta(ends, i, degrees) : new Winding(ends[0], ends[1], VOLTS * Math.sqrt(3), LEAKAGE);
        };
    }

    /** {@return the winding whose voltage stands at an angle to that of phase i, found by trying all} */
    private static Winding delta(int[] ends, int i, int degrees) {
        for (int p = 0; p < 3; p++) {
            for (int q = 0; q < 3; q++) {
                Complex across = Complex.polar(1, -120 * p).minus(Complex.polar(1, -120 * q));
                Complex wanted = Complex.polar(Math.sqrt(3), -120 * i + degrees);
                if (across.minus(wanted).abs() < 1e-6) {
                    return new Winding(ends[p], ends[q], VOLTS * Math.sqrt(3), LEAKAGE);
                }
            }
        }
        throw new IllegalArgumentException("no winding stands at " + degrees + " degrees");
    }
}
