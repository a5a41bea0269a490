package org.keeplit.explore;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.keeplit.condition.Noun;
import org.keeplit.condition.Term;
import org.keeplit.condition.Type;
import org.keeplit.electric.Electric;
import org.keeplit.electric.Grid;
import org.keeplit.electric.SiteGraph;
import org.keeplit.electric.power.Nominal;
import org.keeplit.electric.power.PowerModel;
import org.keeplit.electric.power.PowerStates;
import org.keeplit.network.Conductor;
import org.keeplit.network.Element;
import org.keeplit.network.Phases;
import org.keeplit.procedure.Bound;
import org.keeplit.procedure.Permit;
import org.keeplit.procedure.Person;
import org.keeplit.procedure.Temporary;
import org.keeplit.program.Act;
import org.keeplit.program.Field;
import org.keeplit.program.FieldKey;
import org.keeplit.program.Points;
import org.keeplit.program.Primitive;
import org.keeplit.program.Program;
import org.keeplit.program.StartValues;
import org.keeplit.program.Vertex;
import org.keeplit.unit.Quantity;

/** The finite objects of a run, and what is fixed about them. */
final class World {
    private final Program program;
    private final Electric electric;
    private final ImmutableList<Chances.One> chances;
    private final Map<String, SiteGraph> siteGraphs = new HashMap<>();
    private final Map<Set<String>, Node> besides = new HashMap<>();
    private PowerStates powerStates;
    private final int solvedBefore;
    private Nominal nominal;

    /** Without events. */
    World(Program program, Electric electric) {
        this(program, electric, ImmutableList.of());
    }

    /** @param chances the events that may happen, whose acts the program has */
    World(Program program, Electric electric, ImmutableList<Chances.One> chances) {
        this.program = program;
        this.electric = electric;
        this.chances = chances;
        this.solvedBefore = solved();
    }

    /** {@return the number of the event that an act is, among those that may happen} */
    int chance(Act act) {
        return act.id() - chances.get(0).act().id();
    }

    /** {@return the vertices at the two ends of a faulted section} */
    List<Integer> places(Primitive.Fault fault) {
        Element.Branch line = (Element.Branch) bound().network().element(fault.line()).orElseThrow();
        List<Integer> all = new ArrayList<>();
        for (String node : List.of(line.from(), line.to())) {
            for (Conductor phase : fault.phases()) {
                all.add(grid().number(new Vertex.AtNode(node, phase)).orElseThrow());
            }
        }
        return all;
    }

    /** {@return the fields of the events that happened} */
    List<Field> happened() {
        List<Field> all = new ArrayList<>();
        for (int place = 0; ; place++) {
            Optional<Field> field = program.layout().field(new FieldKey.Happened(place));
            if (field.isEmpty()) {
                return all;
            }
            all.add(field.get());
        }
    }

    /** {@return whether an event happened besides some; the same for every binding of a rule} @param names these */
    Node besides(Set<String> names) {
        return besides.computeIfAbsent(names, this::findBesides);
    }

    private Node findBesides(Set<String> names) {
        List<Node> any = new ArrayList<>();
        for (Field place : happened()) {
            for (int i = 0; i < chances.size(); i++) {
                if (!names.contains(chances.get(i).chance().name())) {
                    any.add(new Nodes.FieldIs(place, i + 1));
                }
            }
        }
        return Node.one(any);
    }

    /** {@return the events that may happen} */
    ImmutableList<Chances.One> chances() {
        return chances;
    }

    Program program() {
        return program;
    }

    Bound bound() {
        return program.bound();
    }

    Electric electric() {
        return electric;
    }

    Grid grid() {
        return electric.cells().grid();
    }

    /** {@return the figures of the conductors that lines name} */
    ImmutableMap<String, ImmutableMap<String, Quantity>> conductors() {
        return bound().network().conductors();
    }

    /** {@return the load-flow model, made when first asked for: most rules need none} */
    PowerModel power() {
        return powerStates().model();
    }

    /** {@return how many load flows were worked out since this was made} */
    int loadFlows() {
        return solved() - solvedBefore;
    }

    private int solved() {
        return electric.beside(PowerStates.class).map(PowerStates::solved).orElse(0);
    }

    PowerStates powerStates() {
        if (powerStates == null) {
            StartValues start = program.start();
            powerStates = electric.beside(
                    PowerStates.class,
                    () -> new PowerStates(
                            PowerModel.of(grid()),
                            electric.cells(),
                            contact -> start.value(contact.key()) == contact.value()));
        }
        return powerStates;
    }

    /** {@return the nominal voltage where an object is, phase to phase, in volt; of a transformer on its primary} */
    double nominal(Obj object) {
        if (nominal == null) {
            nominal = new Nominal(bound().network());
        }
        return nominal.lineToLine(node(object));
    }

    private String node(Obj object) {
        if (object instanceof Obj.Of of) {
            return of.element() instanceof Element.Branch branch
                    ? branch.from()
                    : ((Element.Shunt) of.element()).node();
        } else if (object instanceof Obj.Family family) {
            return node(bound().network().element(family.temporary().of().toString()).orElseThrow());
        } else if (object instanceof Obj.Joint joint) {
            return bound().temporary(joint.contact().owner())
                    .map(t -> node(new Obj.Family(t)))
                    .orElseGet(() -> node(bound().network().element(joint.contact().owner()).orElseThrow()));
        } else if (object instanceof Obj.Spot spot) {
            return node(spot.vertex());
        }
        Term term = ((Obj.Place) object).term();
        return node(Points.vertex(bound(), term, phasesOf(object).list().get(0)));
    }

    private String node(Element element) {
        return node(new Obj.Of(element));
    }

    private String node(Vertex vertex) {
        if (vertex instanceof Vertex.AtNode at) {
            return at.node();
        } else if (vertex instanceof Vertex.Lead lead) {
            return node(bound().network().element(lead.device()).orElseThrow());
        } else if (vertex instanceof Vertex.Bushing bushing) {
            return node(bound().network().element(bushing.device()).orElseThrow());
        }
        String family = vertex instanceof Vertex.Machine machine
                ? machine.family()
                : ((Vertex.Temporary) vertex).family();
        return node(new Obj.Family(bound().temporary(family).orElseThrow()));
    }

    SiteGraph siteGraph(String site) {
        return siteGraphs.computeIfAbsent(site, s -> new SiteGraph(grid(), s));
    }

    /** {@return the objects that a noun ranges over, in a fixed order} */
    List<Obj> domain(Noun noun) {
        Bound bound = bound();
        return switch (noun.type()) {
            case DEVICE -> elements(noun, Element.Device.class);
            case REGULATOR -> elements(noun, Element.Regulator.class);
            case CAPACITOR -> elements(noun, Element.Capacitor.class);
            case TRANSFORMER -> elements(noun, Element.Transformer.class);
            case LINE -> elements(noun, Element.Line.class);
            case LOAD -> elements(noun, Element.Load.class);
            case GENERATOR -> elements(noun, Element.Generator.class);
            case SOURCE -> elements(noun, Element.Source.class);
            case PERSON -> bound.procedure().crew().stream()
                    .<Obj>map((Person p) -> new Obj.Someone(p.name()))
                    .toList();
            case SITE -> sites();
            case JUMPER, GROUND, MOBILE -> bound.temporaries().stream()
                    .filter(t -> Type.valueOf(t.kind().base().name()) == noun.type())
                    .filter(t -> noun.kinds().isEmpty() || noun.kinds().contains(t.kind().name()))
                    .<Obj>map(Obj.Family::new)
                    .toList();
            case HOLD, CLEARANCE -> bound.permits().stream()
                    .filter(p -> p.type() == noun.type())
                    .<Obj>map(Obj.Paper::new)
                    .toList();
            case POINT -> grid().vertices().stream()
                    .filter(v -> v instanceof Vertex.AtNode)
                    .<Obj>map(Obj.Spot::new)
                    .toList();
            case CONTACT -> grid().contacts().stream().<Obj>map(Obj.Joint::new).toList();
            case PHASE -> phases(bound().network().livePhases());
        };
    }

    private List<Obj> elements(Noun noun, Class<? extends Element> type) {
        return bound().network()
                .all(type)
                .filter(e -> noun.kinds().isEmpty() || noun.kinds().contains(e.kind().name()))
                .<Obj>map(Obj.Of::new)
                .toList();
    }

    private List<Obj> sites() {
        Set<Obj> all = new LinkedHashSet<>();
        bound().network().sites().forEach(s -> all.add(new Obj.Site(s)));
        program.sites().forEach(s -> all.add(new Obj.Site(s)));
        return List.copyOf(all);
    }

    static List<Obj> phases(Phases phases) {
        return phases.list().stream()
                .filter(Conductor::isPhase)
                .<Obj>map(Obj.OnPhase::new)
                .toList();
    }

    /** {@return the phases that an object has} */
    Phases phasesOf(Obj object) {
        if (object instanceof Obj.Of of) {
            return of.element().phases();
        } else if (object instanceof Obj.Place place) {
            return bound().phasesOf(place.term());
        } else if (object instanceof Obj.Spot spot) {
            return Phases.of(spot.vertex().conductor());
        } else if (object instanceof Obj.Family family) {
            return bound().phasesOf(family.temporary().of());
        } else if (object instanceof Obj.Joint joint) {
            return Phases.of(joint.contact().phase());
        } else if (object instanceof Obj.OnPhase on) {
            return Phases.of(on.phase());
        }
        return Phases.NONE;
    }

    /** {@return the structure where an object stands} */
    String siteOf(Obj object) {
        if (object instanceof Obj.Site site) {
            return site.name();
        } else if (object instanceof Obj.Family family) {
            return Points.siteOf(bound(), family.temporary().name());
        } else if (object instanceof Obj.Joint joint) {
            return joint.contact().site();
        }
        return Points.siteOf(bound(), object.words());
    }

    /** {@return the object that a name stands for, from the procedure first and then from the network} */
    Obj named(Term.Name name) {
        String text = name.name();
        for (Person person : bound().procedure().crew()) {
            if (person.name().equals(text)) {
                return new Obj.Someone(text);
            }
        }
        for (Temporary temporary : bound().temporaries()) {
            if (temporary.name().equals(text)) {
                return new Obj.Family(temporary);
            }
        }
        for (Permit permit : bound().permits()) {
            if (permit.name().equals(text)) {
                return new Obj.Paper(permit);
            }
        }
        return bound().network()
                .element(text)
                .<Obj>map(Obj.Of::new)
                .orElseGet(() -> name.type() == Type.SITE
                        ? new Obj.Site(text)
                        : new Obj.Place(name));
    }
}
