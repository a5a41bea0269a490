package org.keeplit.plain;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import org.keeplit.condition.Condition;
import org.keeplit.condition.Figure;
import org.keeplit.condition.Measure;
import org.keeplit.condition.PhaseTerm;
import org.keeplit.condition.Truth;
import org.keeplit.network.Conductor;
import org.keeplit.network.Element;
import org.keeplit.reference.ApproachDistances;
import org.keeplit.reference.Insulation;
import org.keeplit.reference.ApproachDistances.Exposure;
import org.keeplit.unit.Dimension;
import org.keeplit.unit.Quantity;

/** Works figures out in one state, and compares them. */
final class PlainFigures {
    /** Figures this close, as a part of the larger, are equal. */
    private static final double CLOSE = 1e-6;

    private final Scenery scenery;
    private final Names names;
    private final Circuit circuit;
    private final PlainSwitching switching;
    private final Map<String, PlainFlow> flows = new HashMap<>();

    PlainFigures(Scenery scenery, Circuit circuit) {
        this.scenery = scenery;
        this.names = scenery.names();
        this.circuit = circuit;
        this.switching = new PlainSwitching(this);
    }

    /** {@return the load flow of a load case} */
    PlainFlow flow(int loadCase) {
        return flow("now " + loadCase, circuit::isClosed, loadCase);
    }

    /** {@return the load flow once a contact is open or closed, with all that its fact moves} */
    PlainFlow flow(int loadCase, Joint contact, boolean closed) {
        String key = contact.fact() + " " + (closed ? contact.value() : 0) + " " + loadCase;
        return flow(key, j -> circuit.isClosedThen(j, contact, closed), loadCase);
    }

    private PlainFlow flow(String key, Predicate<Joint> closed, int loadCase) {
        return flows.computeIfAbsent(key, k -> scenery.flows().computeIfAbsent(position(closed, loadCase), p -> new PlainFlow(
                names.bound().network(),
                pieces(),
                regulator -> scenery.taps().at(regulator, circuit, asked(loadCase)),
                scenery.wiring().joints(),
                closed,
                asked(loadCase))));
    }

    /** {@return all that a load flow depends on in a run: what is closed, which regulators are at neutral, and the load case} */
    private List<Object> position(Predicate<Joint> closed, int loadCase) {
        BitSet is = new BitSet();
        int at = 0;
        for (Joint joint : scenery.wiring().joints()) {
            is.set(at++, joint.isContact() && closed.test(joint));
        }
        for (Element.Regulator regulator : names.bound().network().all(Element.Regulator.class).toList()) {
            for (Conductor phase : regulator.phases()) {
                is.set(at++, circuit.isNeutral(regulator.name(), phase));
            }
        }
        return List.of(is, loadCase);
    }

    private PlainPieces.Case asked(int number) {
        return pieces().cases().get(number);
    }

    Scenery scenery() {
        return scenery;
    }

    Circuit circuit() {
        return circuit;
    }

    int loadCases() {
        return pieces().cases().size();
    }

    PlainPieces pieces() {
        return scenery.wiring().pieces();
    }

    /** {@return whether a comparison holds on every phase that it means, in every load case} */
    Truth ask(Condition.Compare compare, Map<String, Thing> env) {
        List<Conductor> lefts = phases(compare.left(), env);
        List<Conductor> rights = named(compare.right(), env);
        if (lefts.isEmpty()) {
            lefts = phases(compare.right(), env);
        }
        Truth all = Truth.TRUE;
        for (Conductor left : lefts.isEmpty() ? List.of(Conductor.A) : lefts) {
            for (Conductor right : rights.isEmpty() ? List.of(left) : rights) {
                for (int c = 0; c < loadCases(); c++) {
                    double one = value(compare.left(), env, left, c);
                    double other = value(compare.right(), env, right, c);
                    boolean known = !Double.isNaN(one) && !Double.isNaN(other);
                    all = all.and(known ? Truth.of(holds(one, compare.comparison(), other)) : Truth.UNKNOWN);
                }
            }
        }
        return all;
    }

    private static boolean holds(double one, Condition.Comparison comparison, double other) {
        boolean equal = Math.abs(one - other) <= CLOSE * Math.max(Math.abs(one), Math.abs(other));
        return switch (comparison) {
            case AT_MOST -> equal || one < other;
            case AT_LEAST -> equal || one > other;
            case BELOW -> !equal && one < other;
            case ABOVE -> !equal && one > other;
        };
    }

    /** {@return the phases that a figure itself says; none if it says none} */
    private static List<Conductor> named(Figure figure, Map<String, Thing> env) {
        if (figure instanceof Figure.Part part) {
            return named(part.figure(), env);
        } else if (figure instanceof Figure.Measured m && m.phase() instanceof PhaseTerm.Given given) {
            return given.phases().list();
        } else if (figure instanceof Figure.Measured m && m.phase() instanceof PhaseTerm.Variable variable) {
            return List.of(env.get(variable.name()).phase());
        }
        return List.of();
    }

    private List<Conductor> phases(Figure figure, Map<String, Thing> env) {
        List<Conductor> said = named(figure, env);
        if (figure instanceof Figure.Part part) {
            return phases(part.figure(), env);
        } else if (said.isEmpty() && figure instanceof Figure.Measured m) {
            return scenery.phasesOf(scenery.thing(m.of(), env)).list().stream()
                    .filter(Conductor::isPhase)
                    .toList();
        }
        return said;
    }

    /** {@return a figure on a phase; not a number if it is not known} */
    double value(Figure figure, Map<String, Thing> env, Conductor p, int loadCase) {
        if (figure instanceof Figure.Setting setting) {
            return setting.quantity().si();
        } else if (figure instanceof Figure.Given given) {
            return given.quantity().si();
        } else if (figure instanceof Figure.Part part) {
            return part.factor() * value(part.figure(), env, p, loadCase);
        } else if (figure instanceof Figure.Rated rated) {
            return rated(rated.name(), scenery.thing(rated.of(), env));
        }
        Figure.Measured measured = (Figure.Measured) figure;
        Thing it = scenery.thing(measured.of(), env);
        if (measured.measure().perPhase() && !scenery.phasesOf(it).contains(p)) {
            return 0;
        }
        Measure measure = measured.measure();
        if (measure.ignoresLoad()) {
            return switching.withoutLoad(measured, it, env, p);
        } else if (measure == Measure.RECOVERY || measure == Measure.CLOSING_CURRENT || measure == Measure.COLD_LOAD) {
            return switching.after(measure, contact(it, p), loadCase);
        }
        PlainFlow flow = flow(loadCase);
        if (!flow.settled()) {
            return Double.NaN;
        }
        return switch (measure) {
            case CURRENT -> current(flow, it, p);
            case LOADING -> current(flow, it, p) / rated("continuous", it);
            case RESIDUAL -> poles(it.name()).stream()
                    .map(flow::through)
                    .reduce(Cx.ZERO, Cx::plus)
                    .size();
            case VOLTAGE -> flow.volts(scenery.vertex(it, p)).size();
            case VOLTAGE_ACROSS -> PlainSwitching.across(flow, contact(it, p));
            case ANGLE -> PlainSwitching.angle(flow, contact(it, p));
            default -> throw new IllegalStateException("nothing measures " + measure);
        };
    }

    /** {@return the contact that is meant: itself, or a device's pole} */
    Joint contact(Thing it, Conductor p) {
        return it.joint() != null ? it.joint() : Asking.pole(scenery.wiring(), it.name(), p);
    }

    /** {@return the closed poles of a device} */
    List<Joint> poles(String device) {
        return scenery.wiring().joints().stream()
                .filter(j -> j.part() == Joint.Part.POLE && j.owner().equals(device) && circuit.isClosed(j))
                .filter(j -> j.phase().isPhase())
                .toList();
    }

    /** The current through a device's pole, a jumper's first clamp, or the sending end of a line or a regulator. */
    private double current(PlainFlow flow, Thing it, Conductor p) {
        if (it.joint() != null) {
            return circuit.isClosed(it.joint()) ? flow.through(it.joint()).size() : 0;
        }
        Element element = names.bound().network().element(it.name()).orElse(null);
        if (element instanceof Element.Branch branch && !(element instanceof Element.Device)) {
            PlainPieces.Piece piece = flow.piece(element instanceof Element.Line ? it.name() : it.name() + " " + p);
            return piece == null ? 0 : flow.into(piece, Names.node(branch.from(), p)).size();
        }
        List<Joint> closed = new ArrayList<>(poles(it.name()));
        closed.removeIf(j -> j.phase() != p);
        for (Joint joint : scenery.wiring().joints()) {
            if (joint.isContact() && joint.fact().equals(Names.clamp(it.name(), p, 1)) && circuit.isClosed(joint)) {
                closed.add(joint);
            }
        }
        return closed.stream().mapToDouble(j -> flow.through(j).size()).sum();
    }

    private double rated(String name, Thing it) {
        if (name.equals("nominal voltage")) {
            return nominal(it);
        } else if (name.equals("voltage low") || name.equals("voltage high")) {
            Quantity limit = names.bound().network().system().get(name);
            return limit == null ? Double.NaN : limit.si() * nominal(it);
        }
        if (name.equals("approach distance")) {
            return approach(it, Exposure.PHASE_TO_GROUND);
        } else if (name.equals("approach distance between phases")) {
            return approach(it, Exposure.PHASE_TO_PHASE);
        } else if (name.equals("least insulation resistance")) {
            return Insulation.of(scenery.nominal(it)).megohms() * 1e6;
        }
        Quantity found = stated(name, it.name());
        if (found == null && name.equals("continuous")) {
            found = stated("rating", it.name());
        }
        if (found == null && name.equals("pickup")) {
            // A hydraulic unit trips from its minimum trip on, which is twice its coil unless stated.
            found = stated("minimum trip", it.name());
            Quantity coil = stated("coil", it.name());
            return found != null ? found.si() : coil != null ? 2 * coil.si() : Double.NaN;
        }
        return found == null ? Double.NaN : found.si();
    }

    private double approach(Thing it, Exposure exposure) {
        Quantity altitude = names.bound().network().system().getOrDefault("altitude", new Quantity(0, Dimension.LENGTH));
        return ApproachDistances.table(scenery.nominal(it) / 1000, exposure, altitude.si())
                .orElse(Double.NaN);
    }

    private double nominal(Thing it) {
        return pieces().nominal(scenery.vertex(it, scenery.phasesOf(it).list().get(0)));
    }

    /** {@return what is stated for a thing itself, else for its kind, else for its conductor; null if nothing is} */
    private Quantity stated(String name, String of) {
        if (names.bound().temporary(of).isPresent()) {
            return names.bound().temporary(of).get().kind().ratings().get(name);
        }
        Optional<Element> element = names.bound().network().element(of);
        Quantity found = element.map(e -> e.figures().get(name)).orElse(null);
        if (found == null) {
            found = element.map(e -> e.kind().ratings().get(name)).orElse(null);
        }
        if (found == null && element.orElse(null) instanceof Element.Line line && line.conductor().isPresent()) {
            found = names.bound().network().conductors().get(line.conductor().get())
                    .get(name.equals("continuous") ? "ampacity" : name);
        }
        return found;
    }
}
