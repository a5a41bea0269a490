package org.keeplit.explore;

import com.google.common.primitives.ImmutableIntArray;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.keeplit.condition.Condition;
import org.keeplit.electric.Contact;
import org.keeplit.network.ClosingDuty;
import org.keeplit.network.Conductor;
import org.keeplit.network.DutyTable;
import org.keeplit.network.Element;
import org.keeplit.network.OpeningDuty;
import org.keeplit.network.Phases;
import org.keeplit.program.Points;
import org.keeplit.program.Units;
import org.keeplit.program.Vertex;

/** Turns one question about voltage, paths and duties into a node. */
final class VoltageAtoms {
    private final World world;
    private final AtomCompiler atoms;

    VoltageAtoms(World world, AtomCompiler atoms) {
        this.world = world;
        this.atoms = atoms;
    }

    Node compile(Condition.Atom atom, List<Obj> objects, Conductor phase) {
        Obj first = objects.get(0);
        return switch (atom.predicate()) {
            case ENERGIZED -> alive(first, phase, Nodes.Voltage.ENERGIZED);
            case ALIVE -> alive(first, phase, Nodes.Voltage.ALIVE);
            case DEAD -> alive(first, phase, Nodes.Voltage.DEAD);
            case GROUNDED -> number(first, phase)
                    .<Node>map(Nodes.Grounded::new)
                    .orElse(Node.Constant.FALSE);
            case GROUNDED_THROUGHOUT -> groundedThroughout(vertex(first, phase));
            case TIED_TO_GROUND -> number(first, phase)
                    .<Node>map(Nodes.Tied::new)
                    .orElse(Node.Constant.FALSE);
            case SHORTED -> number(first, phase)
                    .<Node>map(v ->
                            new Nodes.Shorted(v, world.electric().cells().cell(v)))
                    .orElse(Node.Constant.FALSE);
            case BYPASSED -> lacks(first, phase)
                    ? Node.Constant.FALSE
                    : new Nodes.Bypassed(branch(first), phase, world.siteGraph(world.siteOf(first)));
            case LOOPED -> lacks(first, phase) ? Node.Constant.FALSE : new Nodes.Looped(branch(first), phase);
            case OPENING_DUTY -> opening(first, phase, atom.words());
            case CLOSING_DUTY -> closing(first, phase, atom.words());
            case FIT_TO_OPEN -> fitToOpen(((Obj.Joint) first).contact());
            case FIT_TO_CLOSE -> fitToClose(((Obj.Joint) first).contact());
            case ISOLATED -> new Nodes.Isolated(branch(first));
            case SUPPLIED -> supplied((Element.Load) ((Obj.Of) first).element());
            case FEEDS -> new Nodes.Feeds(first.words(), world.siteOf(objects.get(1)), world.elsewhere());
            case LIVE_SITE -> live(world.siteOf(first));
            default -> throw new IllegalStateException("no node for " + atom.predicate());
        };
    }

    /** {@return whether something has no such phase, so that nothing is there to join, to open or to close} */
    private boolean lacks(Obj object, Conductor phase) {
        return !(object instanceof Obj.Joint) && !world.phasesOf(object).contains(phase);
    }

    private static Element.Branch branch(Obj object) {
        return (Element.Branch) ((Obj.Of) object).element();
    }

    /** {@return the vertex of a point on a phase} */
    Vertex vertex(Obj object, Conductor phase) {
        if (object instanceof Obj.Spot spot) {
            return spot.vertex();
        } else if (object instanceof Obj.Place place) {
            return Points.vertex(world.bound(), place.term(), phase);
        } else if (object instanceof Obj.Family family) {
            return new Vertex.Temporary(family.temporary().name(), phase);
        } else if (object instanceof Obj.Of of && of.element() instanceof Element.Shunt shunt) {
            return new Vertex.AtNode(shunt.node(), phase);
        }
        throw new IllegalStateException(object.words() + " is not a point");
    }

    private Optional<Integer> number(Obj object, Conductor phase) {
        return world.grid().number(vertex(object, phase));
    }

    private Node alive(Obj object, Conductor phase, Nodes.Voltage asked) {
        return number(object, phase)
                .<Node>map(v -> new Nodes.Alive(v, asked))
                .orElseGet(() -> AtomCompiler.constant(asked == Nodes.Voltage.DEAD));
    }

    private Node groundedThroughout(Vertex there) {
        List<Node> parts = new ArrayList<>();
        for (Conductor phase : Conductor.values()) {
            if (!phase.isPhase()) {
                continue;
            }
            world.grid().number(there.beside(phase)).ifPresent(v -> parts.add(new Nodes.Grounded(v)));
        }
        return Node.all(parts);
    }

    private Contact pole(Obj object, Conductor phase) {
        if (object instanceof Obj.Joint joint) {
            return joint.contact();
        }
        return world.grid().contactsOf(object.words()).stream()
                .filter(c -> c.part() == Contact.Part.POLE && c.phase() == phase)
                .findFirst()
                .orElseThrow();
    }

    private Node opening(Obj object, Conductor phase, List<String> words) {
        if (lacks(object, phase)) {
            return AtomCompiler.constant(words.contains(OpeningDuty.NOTHING.phrase()));
        }
        int duties = 0;
        for (OpeningDuty duty : OpeningDuty.values()) {
            if (words.contains(duty.phrase())) {
                duties |= 1 << duty.ordinal();
            }
        }
        return new Nodes.Opening(pole(object, phase), duties);
    }

    private Node closing(Obj object, Conductor phase, List<String> words) {
        if (lacks(object, phase)) {
            return AtomCompiler.constant(words.contains(ClosingDuty.NOTHING.phrase()));
        }
        int duties = 0;
        for (ClosingDuty duty : ClosingDuty.values()) {
            if (words.contains(duty.phrase())) {
                duties |= 1 << duty.ordinal();
            }
        }
        Contact contact = pole(object, phase);
        return new Nodes.Closing(contact, world.siteGraph(contact.site()), duties);
    }

    private static DutyTable table(Contact contact) {
        return contact.part() == Contact.Part.LEAD || contact.isCable()
                ? contact.kind().leadDuties()
                : contact.kind().duties();
    }

    DutyFit.ToOpen fitToOpen(Contact contact) {
        return new DutyFit.ToOpen(contact, table(contact), DutyFit.stated(world, contact, "interrupting"));
    }

    DutyFit.ToClose fitToClose(Contact contact) {
        List<Node> dead = new ArrayList<>();
        for (int vertex : new int[] {contact.a(), contact.b()}) {
            dead.add(atoms.is(Units.provedDead(world.grid().vertices().get(vertex)), 1));
        }
        return new DutyFit.ToClose(
                contact,
                world.siteGraph(contact.site()),
                table(contact),
                DutyFit.stated(world, contact, "making"),
                Node.one(dead));
    }

    private Node supplied(Element.Load load) {
        boolean legs = !load.phases().and(Phases.LEGS).isEmpty();
        int[] cells = legs ? new int[] {-1, -1} : new int[] {-1, -1, -1};
        int first = legs ? Conductor.X1.ordinal() : Conductor.A.ordinal();
        for (Conductor phase : load.phases()) {
            if (phase.isPhase()) {
                int vertex = world.grid()
                        .number(new Vertex.AtNode(load.node(), phase))
                        .orElseThrow();
                cells[phase.ordinal() - first] = world.electric().cells().cell(vertex);
            }
        }
        return new Nodes.Supplied(ImmutableIntArray.copyOf(cells));
    }

    /** A site is live as long as some conductor of it is not both proved dead and grounded there. */
    private Node live(String site) {
        List<Node> safe = new ArrayList<>();
        for (int vertex : world.grid().siteVertices(site)) {
            Vertex there = world.grid().vertices().get(vertex);
            safe.add(Node.all(List.of(atoms.is(Units.provedDead(there), 1), new Nodes.Grounded(vertex))));
        }
        return Node.not(Node.all(safe));
    }
}
