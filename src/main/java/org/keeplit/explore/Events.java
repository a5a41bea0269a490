package org.keeplit.explore;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.List;
import org.keeplit.electric.Contact;
import org.keeplit.network.Base;
import org.keeplit.network.Conductor;
import org.keeplit.network.Element;
import org.keeplit.network.Place;
import org.keeplit.procedure.Action;
import org.keeplit.program.Act;
import org.keeplit.program.FieldKey;
import org.keeplit.program.Primitive;
import org.keeplit.program.Units;
import org.keeplit.program.Vertex;
import org.keeplit.condition.ActKind;

/** The moments that an act is, for rules to bind to. */
final class Events {
    private final World world;
    private final AtomCompiler atoms;
    private final List<Event> out = new ArrayList<>();

    private Events(World world, AtomCompiler atoms) {
        this.world = world;
        this.atoms = atoms;
    }

    /**
     * A moment.
     *
     * @param kind what kind
     * @param participants what takes part
     * @param phase on which phase, or null
     * @param words what narrows it, such as a mode and its value
     * @param when what must be so for the act to be this moment; a clamp comes off wherever it is
     */
    record Event(
            ActKind kind, ImmutableList<Obj> participants, Conductor phase, ImmutableList<String> words, Node when) {}

    static List<Event> of(World world, AtomCompiler atoms, Act act) {
        Events events = new Events(world, atoms);
        if (act.step().action() instanceof Action.Happen) {
            // Rules about what people do say nothing of what comes by itself.
            return List.of();
        }
        act.primitives().forEach(events::add);
        act.step().records().forEach(item -> events.addText(ActKind.RECORDING, item));
        if (act.step().action() instanceof Action.Brief brief) {
            brief.people().forEach(p -> events.add(ActKind.BRIEFING, null, new Obj.Someone(p.toString())));
        } else if (act.step().action() instanceof Action.Do done) {
            events.addText(ActKind.DOING, done.words());
        }
        return events.out;
    }

    private void add(ActKind kind, Conductor phase, Node when, Obj... participants) {
        out.add(new Event(kind, ImmutableList.copyOf(participants), phase, ImmutableList.of(), when));
    }

    private void add(ActKind kind, Conductor phase, Obj... participants) {
        add(kind, phase, Node.Constant.TRUE, participants);
    }

    private void addText(ActKind kind, String text) {
        out.add(new Event(kind, ImmutableList.of(), null, ImmutableList.of(text), Node.Constant.TRUE));
    }

    private Obj element(String name) {
        return new Obj.Of(world.bound().network().element(name).orElseThrow());
    }

    private Obj family(String name) {
        return new Obj.Family(world.bound().temporary(name).orElseThrow());
    }

    private Obj paper(String name) {
        return new Obj.Paper(world.bound().permit(name).orElseThrow());
    }

    private void add(Primitive primitive) {
        if (primitive instanceof Primitive.MovePole move) {
            for (Conductor phase : move.phases()) {
                add(move.closed() ? ActKind.CLOSING : ActKind.OPENING, phase, element(move.device()));
                Element element = world.bound().network().element(move.device()).orElseThrow();
                contacts(new FieldKey.Pole(move.device(), Units.pole(element, phase)), phase, move.closed(), 1);
            }
        } else if (primitive instanceof Primitive.MoveEnd move) {
            add(move.on() ? ActKind.LANDING : ActKind.LIFTING, move.phase(), element(move.device()));
            FieldKey.End key = new FieldKey.End(move.device(), move.side(), move.phase(), move.end());
            contacts(key, move.phase(), move.on(), key.value(move.onto()));
        } else if (primitive instanceof Primitive.MoveClamp move) {
            clamp(move);
        } else if (primitive instanceof Primitive.SetMode set) {
            Element element = world.bound().network().element(set.device()).orElseThrow();
            out.add(new Event(
                    ActKind.SETTING,
                    ImmutableList.of(new Obj.Of(element)),
                    set.phase(),
                    ImmutableList.of(set.mode(), set.value()),
                    Node.Constant.TRUE));
        } else if (primitive instanceof Primitive.RunToNeutral run) {
            add(ActKind.TAPPING, run.phase(), element(run.regulator()));
        } else if (primitive instanceof Primitive.Carry carry) {
            if (carry.place() != Place.SHOP) {
                ActKind kind = carry.place() == Place.POLE ? ActKind.RAISING : ActKind.LOWERING;
                carry.phases().forEach(phase -> add(kind, phase, element(carry.device())));
            }
        } else {
            addPeople(primitive);
        }
    }

    private void addPeople(Primitive primitive) {
        if (primitive instanceof Primitive.GoUp go) {
            add(ActKind.GOING_ALOFT, null, new Obj.Someone(go.person()), new Obj.Site(go.site()));
        } else if (primitive instanceof Primitive.ComeDown come) {
            add(ActKind.COMING_DOWN, null, new Obj.Someone(come.person()));
        } else if (primitive instanceof Primitive.Speak speak) {
            ActKind kind = switch (speak.speech()) {
                case ASK -> ActKind.ASKING;
                case ISSUE -> ActKind.ISSUING;
                case REPEAT -> ActKind.REPEATING;
                case CONFIRM -> ActKind.CONFIRMING;
                case RELEASE -> ActKind.RELEASING;
            };
            add(kind, null, paper(speak.permit()));
        } else if (primitive instanceof Primitive.MoveTag tag) {
            add(tag.on() ? ActKind.TAGGING : ActKind.UNTAGGING, null, element(tag.device()));
        } else if (primitive instanceof Primitive.TestDead test) {
            add(ActKind.TESTING, test.vertex().conductor(), new Obj.Spot(test.vertex()));
        } else if (primitive instanceof Primitive.Touch touch) {
            add(ActKind.WORKING, touch.vertex().conductor(), new Obj.Spot(touch.vertex()));
        } else if (primitive instanceof Primitive.Write write) {
            addText(ActKind.RECORDING, write.item());
        } else if (primitive instanceof Primitive.ComeOut inspection) {
            addText(ActKind.INSPECTING, inspection.item());
        }
    }

    private void clamp(Primitive.MoveClamp move) {
        FieldKey.Clamp key = new FieldKey.Clamp(move.family(), move.phase(), move.clamp());
        boolean on = move.spot() != null;
        Base base = world.bound().temporary(move.family()).orElseThrow().kind().base();
        if (base == Base.MOBILE) {
            ActKind cable = on ? ActKind.CONNECTING : ActKind.DISCONNECTING;
            ActKind output = on ? ActKind.STARTING : ActKind.STOPPING;
            add(move.clamp() == 1 ? output : cable, move.phase(), family(move.family()));
        } else if (base == Base.JUMPER) {
            add(on ? ActKind.CLAMPING : ActKind.UNCLAMPING, move.phase(), family(move.family()));
        } else if (move.clamp() == 1) {
            add(on ? ActKind.EARTHING : ActKind.UNEARTHING, move.phase(), family(move.family()));
        } else if (on) {
            add(ActKind.GROUNDING, move.spot().conductor(), new Obj.Spot(move.spot()));
        } else {
            for (Contact contact : world.grid().contacts(key)) {
                Vertex at = world.grid().vertices().get(contact.a());
                add(ActKind.UNGROUNDING, at.conductor(), atoms.is(key, contact.value()), new Obj.Spot(at));
            }
        }
        int value = on ? world.program().spots().get(key).indexOf(move.spot()) + 1 : 0;
        contacts(key, move.phase(), on, value);
    }

    /** A contact that makes is the one at its place; one that breaks is whichever is closed. */
    private void contacts(FieldKey key, Conductor phase, boolean makes, int value) {
        for (Contact contact : world.grid().contacts(key)) {
            if (contact.phase() != phase || makes && contact.value() != value) {
                continue;
            }
            Node when = makes ? Node.Constant.TRUE : atoms.is(key, contact.value());
            add(makes ? ActKind.MAKING : ActKind.BREAKING, phase, when, new Obj.Joint(contact));
        }
    }

    /** {@return the people who act} */
    static List<String> actors(Act act) {
        return List.of(act.actor().split(" and "));
    }
}
