package org.keeplit.program;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.keeplit.condition.Condition;
import org.keeplit.condition.PhaseTerm;
import org.keeplit.condition.Predicate;
import org.keeplit.condition.Term;
import org.keeplit.network.Conductor;
import org.keeplit.network.Element;
import org.keeplit.network.LeadEnd;
import org.keeplit.network.Mode;
import org.keeplit.network.Phases;
import org.keeplit.network.Place;
import org.keeplit.network.Side;
import org.keeplit.network.Trait;
import org.keeplit.procedure.Bound;
import org.keeplit.procedure.Procedure;
import org.keeplit.text.Problem;
import org.keeplit.text.Problems;

/** The value of every field at the start: the network's normal state, changed by the lines that say {@code given}. */
public final class StartValues {
    private final Bound bound;
    private final Problems problems;
    private final Map<FieldKey, Integer> values = new LinkedHashMap<>();
    private final Map<FieldKey, Vertex> spots = new LinkedHashMap<>();

    private StartValues(Bound bound, Problems problems) {
        this.bound = bound;
        this.problems = problems;
    }

    /**
     * Works them out.
     *
     * @param bound the bound procedure
     * @param problems collects {@code given} lines that cannot be made so
     * @return the values
     */
    public static StartValues of(Bound bound, Problems problems) {
        StartValues start = ofNetwork(bound, problems);
        for (Procedure.Start line : bound.starts()) {
            if (line.given()) {
                start.given(line.condition());
            }
        }
        return start;
    }

    /** {@return the values that the network alone gives, whatever the procedure says of its start} @param bound the procedure on it */
    public static StartValues ofNetwork(Bound bound) {
        return ofNetwork(bound, new Problems());
    }

    private static StartValues ofNetwork(Bound bound, Problems problems) {
        StartValues start = new StartValues(bound, problems);
        bound.network().all(Element.Device.class).forEach(start::device);
        bound.network().all(Element.Regulator.class).forEach(start::regulator);
        return start;
    }

    /** {@return the value of a field at the start; 0 if nothing was said} @param key its key */
    public int value(FieldKey key) {
        return values.getOrDefault(key, 0);
    }

    /** {@return all values that were set, in a fixed order} */
    public Map<FieldKey, Integer> values() {
        return values;
    }

    /** {@return where the clamps are that are on at the start} */
    public Map<FieldKey, Vertex> spots() {
        return spots;
    }

    static Conductor unit(Element element, Conductor phase) {
        boolean ganged = element instanceof Element.Device device && device.ganged();
        return ganged ? element.phases().list().get(0) : phase;
    }

    /** {@return the phase under which a mode of an element is kept} */
    static Conductor modeUnit(Element element, Mode mode, Conductor phase) {
        return isPerPhase(element, mode) ? phase : element.phases().list().get(0);
    }

    static boolean isPerPhase(Element element, Mode mode) {
        return mode.each() && !(element instanceof Element.Device device && device.ganged());
    }

    private void device(Element.Device device) {
        for (Conductor phase : device.phases()) {
            values.put(
                    new FieldKey.Pole(device.name(), unit(device, phase)), device.closed().contains(phase) ? 1 : 0);
            values.put(new FieldKey.Placed(device.name(), unit(device, phase)), Place.POLE.ordinal());
            if (device.kind().has(Trait.LEADS)) {
                for (Side side : Side.values()) {
                    for (LeadEnd end : LeadEnd.values()) {
                        values.put(new FieldKey.End(device.name(), side, phase, end), 1);
                    }
                }
            }
        }
        for (Mode mode : device.kind().modes()) {
            String value = device.settings().getOrDefault(mode.name(), mode.normal());
            modes(device, mode, value, device.phases());
        }
    }

    private void regulator(Element.Regulator regulator) {
        for (Mode mode : regulator.kind().modes()) {
            String value = regulator.settings().getOrDefault(mode.name(), mode.normal());
            modes(regulator, mode, value, regulator.phases());
        }
        for (Conductor phase : regulator.phases()) {
            values.put(new FieldKey.Tap(regulator.name(), phase), FieldKey.Tap.ANY);
        }
    }

    private void modes(Element element, Mode mode, String value, Phases phases) {
        for (Conductor phase : phases) {
            values.put(
                    new FieldKey.Mode(element.name(), modeUnit(element, mode, phase), mode.name()),
                    Math.max(0, mode.values().indexOf(value)));
        }
    }

    private void given(Condition condition) {
        if (condition instanceof Condition.All all) {
            all.parts().forEach(this::given);
        } else if (condition instanceof Condition.Atom atom && set(atom)) {
            return;
        } else {
            problems.add(Problem.error(
                            "cannot-be-given",
                            condition.span(),
                            "this cannot be made so at the start: it follows from other things")
                    .help("give positions, leads, jumpers, settings or places, and check the rest without given"));
        }
    }

    private boolean set(Condition.Atom atom) {
        Term term = atom.terms().isEmpty() ? null : atom.terms().get(0);
        if (term instanceof Term.LeadOf lead) {
            return lead(lead, atom);
        }
        if (!(term instanceof Term.Name name)) {
            return false;
        }
        if (bound.temporary(name.name()).isPresent()) {
            return jumper(name.name(), atom);
        }
        if (bound.permit(name.name()).isPresent()) {
            return permit(name.name(), atom);
        }
        return bound.network().element(name.name()).map(e -> element(e, atom)).orElse(false);
    }

    private boolean permit(String name, Condition.Atom atom) {
        if (atom.predicate() == Predicate.IN_FORCE) {
            values.put(new FieldKey.Permitted(name), FieldKey.Permitted.IN_FORCE);
            return true;
        }
        return false;
    }

    private Phases phases(Condition.Atom atom, Phases all) {
        return atom.phase() instanceof PhaseTerm.Given given ? given.phases() : all;
    }

    private boolean lead(Term.LeadOf lead, Condition.Atom atom) {
        if (atom.predicate() != Predicate.ATTACHED && atom.predicate() != Predicate.DETACHED) {
            return false;
        }
        int value = atom.predicate() == Predicate.ATTACHED ? 1 : 0;
        for (Conductor phase : phases(atom, bound.phasesOf(lead.of()))) {
            for (LeadEnd end : LeadEnd.values()) {
                values.put(new FieldKey.End(lead.of().toString(), lead.side(), phase, end), value);
            }
        }
        return true;
    }

    private boolean jumper(String family, Condition.Atom atom) {
        Term of = bound.temporary(family).orElseThrow().of();
        Element around = bound.network().element(of.toString()).orElse(null);
        if (atom.predicate() != Predicate.INSTALLED || !(around instanceof Element.Branch branch)) {
            return false;
        }
        for (Conductor phase : phases(atom, branch.phases())) {
            FieldKey first = new FieldKey.Clamp(family, phase, 1);
            FieldKey second = new FieldKey.Clamp(family, phase, 2);
            values.put(first, 1);
            values.put(second, 1);
            spots.put(first, new Vertex.AtNode(branch.from(), phase));
            spots.put(second, new Vertex.AtNode(branch.to(), phase));
        }
        return true;
    }

    private boolean element(Element element, Condition.Atom atom) {
        Phases phases = phases(atom, element.phases());
        switch (atom.predicate()) {
            case OPEN, CLOSED -> {
                for (Conductor phase : phases) {
                    values.put(
                            new FieldKey.Pole(element.name(), unit(element, phase)),
                            atom.predicate() == Predicate.CLOSED ? 1 : 0);
                }
            }
            case MODE -> {
                Mode mode = element.kind().mode(atom.words().get(0)).orElse(null);
                if (mode == null) {
                    return false;
                }
                modes(element, mode, atom.words().get(1), phases);
            }
            case PLACED -> {
                for (Conductor phase : phases) {
                    values.put(
                            new FieldKey.Placed(element.name(), unit(element, phase)),
                            place(atom.words().get(0)).ordinal());
                }
            }
            case NEUTRAL -> {
                for (Conductor phase : phases) {
                    values.put(new FieldKey.Tap(element.name(), phase), FieldKey.Tap.NEUTRAL);
                }
            }
            case TAGGED -> values.put(new FieldKey.Tagged(element.name()), 1);
            default -> {
                return false;
            }
        }
        return true;
    }

    /** {@return the place that words name} @param words such as {@code on the pole} */
    static Place place(String words) {
        for (Place place : List.of(Place.values())) {
            if (place.phrase().equals(words) || place.name().equalsIgnoreCase(words)) {
                return place;
            }
        }
        throw new IllegalArgumentException("no such place: " + words);
    }
}
