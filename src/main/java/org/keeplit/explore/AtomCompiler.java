package org.keeplit.explore;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.IntPredicate;
import org.keeplit.condition.Condition;
import org.keeplit.condition.Term;
import org.keeplit.condition.Truth;
import org.keeplit.electric.Contact;
import org.keeplit.network.Conductor;
import org.keeplit.network.Element;
import org.keeplit.network.LeadEnd;
import org.keeplit.network.Mode;
import org.keeplit.network.Place;
import org.keeplit.network.Trait;
import org.keeplit.procedure.Permit;
import org.keeplit.procedure.Person;
import org.keeplit.program.Field;
import org.keeplit.program.FieldKey;
import org.keeplit.program.Points;
import org.keeplit.program.Units;

/** Turns one question about positions, papers, people and proofs into a node. */
final class AtomCompiler {
    private final World world;
    private final VoltageAtoms voltage;

    AtomCompiler(World world) {
        this.world = world;
        this.voltage = new VoltageAtoms(world, this);
    }

    /** {@return the node} @param phase the phase, or null where the question is not asked of phases */
    Node compile(Condition.Atom atom, List<Obj> objects, Conductor phase) {
        Obj first = objects.isEmpty() ? null : objects.get(0);
        return switch (atom.predicate()) {
            case OPEN -> pole(first, phase, 0);
            case CLOSED -> pole(first, phase, 1);
            case ATTACHED -> lead(atom, first, phase);
            case DETACHED -> Node.not(lead(atom, first, phase));
            case MODE -> mode(first, phase, atom.words().get(0), atom.words().get(1));
            case NEUTRAL -> neutral(first, phase);
            case INSTALLED -> Node.all(List.of(clamped(first, phase, 1), clamped(first, phase, 2)));
            case RUNNING -> clamped(first, phase, 1);
            case IN_USE -> Node.one(List.of(clamped(first, phase, 1), clamped(first, phase, 2)));
            case PLACED -> placed(first, phase, atom.words().get(0));
            case ALOFT -> aloft(first, world.siteOf(objects.get(1)));
            case ON_GROUND -> where(first, i -> i == 0);
            case ASKED, IN_FORCE, OUT, RELEASED -> paper(atom, (Obj.Paper) first);
            case COVERS -> constant(world.siteOf(objects.get(1))
                    .equals(Points.site(world.bound(), ((Obj.Paper) first).permit().target())));
            case HELD_AT -> constant(world.program()
                    .heldAt()
                    .get(((Obj.Paper) first).permit().name())
                    .contains(objects.get(1).words()));
            case HELD_BY -> constant(((Obj.Paper) first)
                    .permit()
                    .holder()
                    .toString()
                    .equals(objects.get(1).words()));
            case INCLUDES -> constant(((Obj.Paper) first)
                    .permit()
                    .includes(objects.get(1).words()));
            case CLAMPED_TO -> clampedTo(first, objects.get(1));
            case TAGGED -> is(new FieldKey.Tagged(first.words()), 1);
            case PROVED_DEAD, PROVED_OPEN, PROVED_CLOSED, PROVED_CARRYING, PROVED_IN_PHASE, PROVED_NEUTRAL -> proved(
                    atom, first, phase);
            case RECORDED -> is(new FieldKey.Recorded(atom.words().get(0)), 1);
            case FOUND -> found(atom.words().get(0), atom.words().get(1));
            case WAITED -> atLeast(
                    new FieldKey.Waited(first.words(), phase),
                    (int) Math.ceil(Double.parseDouble(atom.words().get(0)) / 60));
            case OUTAGE_PLANNED -> constant(world.bound().outages().contains(first.words()));
            case HAS -> constant(has((Obj.Of) first, atom.words().get(0)));
            case CRITICAL -> constant(((Obj.Of) first).element() instanceof Element.Load load
                    && load.critical().isPresent());
            case IN_CHARGE, AT_CONTROL, OBSERVER, GROUND_HAND, ON_SIDE, QUALIFIED, QUALIFIED_FOR -> constant(
                    isInCrew(atom, first.words()));
            case IN_CLASS -> constant(isInClass(atom.words(), world.nominal(first)));
            case STANDS_AT -> constant(world.siteOf(first).equals(world.siteOf(objects.get(1))));
            case SAME -> constant(first.equals(objects.get(1)));
            case COUNTED -> is(
                    new FieldKey.Count(first.words(), unit(first, phase)),
                    Integer.parseInt(atom.words().get(0)));
            default -> voltage.compile(atom, objects, phase);
        };
    }

    VoltageAtoms voltage() {
        return voltage;
    }

    /** {@return the number of the vertex that a point is on a phase} */
    int vertex(Obj point, Conductor phase) {
        return world.grid().number(voltage.vertex(point, phase)).orElseThrow();
    }

    static Node constant(boolean value) {
        return new Node.Constant(Truth.of(value));
    }

    private static Conductor unit(Obj object, Conductor phase) {
        return object instanceof Obj.Of of ? Units.pole(of.element(), phase) : phase;
    }

    /** {@return the question whether a field has a value; settled at once if nothing can change it} */
    Node is(FieldKey key, int value) {
        return world.program()
                .layout()
                .field(key)
                // What no act of the run brings about is no question to each state.
                .<Node>map(f -> value < f.size() ? new Nodes.FieldIs(f, value) : Node.Constant.FALSE)
                .orElseGet(() -> constant(world.program().layout().constant(key) == value));
    }

    private Node atLeast(FieldKey key, int least) {
        return world.program()
                .layout()
                .field(key)
                .<Node>map(f -> new Nodes.FieldIn(f, least, Integer.MAX_VALUE))
                .orElseGet(() -> constant(world.program().layout().constant(key) >= least));
    }

    private Node pole(Obj device, Conductor phase, int value) {
        return is(new FieldKey.Pole(device.words(), unit(device, phase)), value);
    }

    private Node lead(Condition.Atom atom, Obj object, Conductor phase) {
        if (object instanceof Obj.Place place && place.term() instanceof Term.LeadOf lead) {
            String device = lead.of().toString();
            if (!Points.hasLeads(world.bound(), lead.of())) {
                return Node.Constant.TRUE;
            }
            return Node.all(List.of(
                    is(new FieldKey.End(device, lead.side(), phase, LeadEnd.LINE), 1),
                    is(new FieldKey.End(device, lead.side(), phase, LeadEnd.BUSHING), 1)));
        }
        throw new IllegalStateException(atom.predicate() + " is asked of a lead, not of " + object.words());
    }

    private Node mode(Obj object, Conductor phase, String name, String value) {
        Element element = ((Obj.Of) object).element();
        Mode mode = element.kind().mode(name).orElse(null);
        if (mode == null) {
            // A device without such a setting cannot act in that way: it counts as blocked.
            return constant(value.equals(Mode.BLOCKED));
        }
        return is(new FieldKey.Mode(element.name(), Units.mode(element, mode, phase), name), mode.values().indexOf(value));
    }

    private Node neutral(Obj regulator, Conductor phase) {
        FieldKey key = new FieldKey.Tap(regulator.words(), phase);
        return world.program()
                .layout()
                .field(key)
                .<Node>map(Nodes.Neutral::new)
                .orElseGet(() -> new Node.Constant(
                        world.program().layout().constant(key) == FieldKey.Tap.NEUTRAL ? Truth.TRUE : Truth.UNKNOWN));
    }

    Node clamped(Obj family, Conductor phase, int clamp) {
        return atLeast(new FieldKey.Clamp(family.words(), phase, clamp), 1);
    }

    /** {@return the question whether something hangs on a place, on each phase that is meant} */
    private Node clampedTo(Obj family, Obj point) {
        List<Node> all = new ArrayList<>();
        for (Conductor phase : world.phasesOf(point)) {
            if (!phase.isPhase()) {
                continue;
            }
            int there = vertex(point, phase);
            List<Node> some = new ArrayList<>();
            for (Contact contact : world.grid().contactsOf(family.words())) {
                if (contact.a() == there || contact.b() == there) {
                    some.add(is(contact.key(), contact.value()));
                }
            }
            all.add(Node.one(some));
        }
        return Node.all(all);
    }

    private Node placed(Obj device, Conductor phase, String words) {
        for (Place place : Place.values()) {
            if (place.phrase().equals(words) || place.name().toLowerCase(Locale.ROOT).equals(words)) {
                return is(new FieldKey.Placed(device.words(), unit(device, phase)), place.ordinal());
            }
        }
        throw new IllegalStateException("no such place: " + words);
    }

    private Node aloft(Obj person, String site) {
        int number = world.program().sites().indexOf(site);
        // Nobody goes up anywhere that no step names.
        return number < 0 ? Node.Constant.FALSE : where(person, i -> i == number + 1);
    }

    private Node where(Obj person, IntPredicate wanted) {
        FieldKey key = new FieldKey.Where(person.words());
        Field field = world.program().layout().field(key).orElse(null);
        if (field == null) {
            return constant(wanted.test(world.program().layout().constant(key)));
        }
        for (int i = 0; i <= world.program().sites().size(); i++) {
            if (wanted.test(i)) {
                return new Nodes.FieldIs(field, i);
            }
        }
        return Node.Constant.FALSE;
    }

    private Node paper(Condition.Atom atom, Obj.Paper paper) {
        Permit permit = paper.permit();
        int[] range = switch (atom.predicate()) {
            case ASKED -> new int[] {FieldKey.Permitted.ASKED, FieldKey.Permitted.ASKED};
            case IN_FORCE -> new int[] {FieldKey.Permitted.IN_FORCE, FieldKey.Permitted.IN_FORCE};
            case OUT -> new int[] {FieldKey.Permitted.ISSUED, FieldKey.Permitted.IN_FORCE};
            default -> new int[] {FieldKey.Permitted.RELEASED, FieldKey.Permitted.RELEASED};
        };
        FieldKey key = new FieldKey.Permitted(permit.name());
        return world.program()
                .layout()
                .field(key)
                .<Node>map(f -> new Nodes.FieldIn(f, range[0], range[1]))
                .orElseGet(() -> {
                    int value = world.program().layout().constant(key);
                    return constant(value >= range[0] && value <= range[1]);
                });
    }

    private Node proved(Condition.Atom atom, Obj object, Conductor phase) {
        String proof = atom.predicate().name().substring("PROVED_".length());
        if (!proof.equals("DEAD")) {
            return is(new FieldKey.Proved(proof, object.words(), phase), 1);
        }
        return is(Units.provedDead(voltage.vertex(object, phase)), 1);
    }

    private Node found(String item, String outcome) {
        int number = world.program().outcomes(item).indexOf(outcome);
        return number < 0 ? Node.Constant.FALSE : is(new FieldKey.Found(item), number + 1);
    }

    /** {@return what the crew list says of a person} */
    private boolean isInCrew(Condition.Atom atom, String name) {
        Person person = world.bound().procedure().crew().stream()
                .filter(p -> p.name().equals(name))
                .findFirst()
                .orElseThrow();
        return switch (atom.predicate()) {
            case IN_CHARGE -> person.inCharge();
            case AT_CONTROL -> person.desk();
            case OBSERVER -> person.observer();
            case GROUND_HAND -> person.groundHand();
            case ON_SIDE -> person.side().map(s -> s.word().equals(atom.words().get(0))).orElse(false);
            case QUALIFIED_FOR -> person.qualifications().contains(atom.words().get(0));
            default -> person.qualified();
        };
    }

    private static boolean isInClass(List<String> bounds, double volts) {
        for (int i = 0; i < bounds.size(); i += 2) {
            double bound = Double.parseDouble(bounds.get(i + 1));
            boolean inside = switch (bounds.get(i)) {
                case "above" -> volts > bound;
                case "below" -> volts < bound;
                case "from" -> volts >= bound;
                default -> volts <= bound;
            };
            if (!inside) {
                return false;
            }
        }
        return true;
    }

    private static boolean has(Obj.Of object, String what) {
        if (object.element().kind().mode(what).isPresent()) {
            return true;
        }
        for (Trait trait : Trait.values()) {
            if (trait.phrase().equals(what)) {
                boolean ganged = object.element() instanceof Element.Device d && d.ganged();
                return switch (trait) {
                    case GANGED -> ganged;
                    case SINGLE_PHASE_UNITS -> !ganged;
                    default -> object.element().kind().has(trait);
                };
            }
        }
        return false;
    }

    /** {@return whether modes of a device, as far as its kind has them, are at their first value} @param unit the unit asked */
    Node atFirst(Element.Device device, Conductor unit, String... modes) {
        List<Node> all = new ArrayList<>();
        for (String name : modes) {
            device.kind()
                    .mode(name)
                    .ifPresent(mode ->
                            all.add(is(new FieldKey.Mode(device.name(), Units.mode(device, mode, unit), name), 0)));
        }
        return Node.all(all);
    }
}
