package org.keeplit.proof;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import org.keeplit.network.Conductor;
import org.keeplit.network.Element;
import org.keeplit.network.Mode;
import org.keeplit.procedure.Action;
import org.keeplit.program.Act;
import org.keeplit.program.FieldKey;
import org.keeplit.program.Primitive;
import org.keeplit.program.Program;
import org.keeplit.program.Units;
import org.keeplit.program.Vertex;

/** Says fields of a packed state in the words in which another evaluator says its facts. */
final class FieldWords {
    private final Program program;
    private final List<Act> events;
    /** The places that are tested for dead, by the field of the test. */
    private final Map<FieldKey, Vertex> tested = new HashMap<>();

    FieldWords(Program program) {
        this.program = program;
        this.events = program.acts().stream().filter(a -> a.step().action() instanceof Action.Happen).toList();
        program.acts().forEach(act -> act.primitives().forEach(p -> {
            if (p instanceof Primitive.TestDead test) {
                tested.put(Units.provedDead(test.vertex()), test.vertex());
            }
        }));
    }

    /** {@return whether a field is something of this evaluator's own, with no value at the start that another knows} */
    static boolean isOwn(FieldKey key) {
        return key instanceof FieldKey.Remembered || key instanceof FieldKey.Happened;
    }

    /** {@return what a field is called} @param value its value, which for an event tells which it was */
    String name(FieldKey key, int value) {
        return key instanceof FieldKey.Happened ? event(events.get(value - 1)) : name(key);
    }

    /** {@return what a field is called that is not this evaluator's own} */
    String name(FieldKey key) {
        if (key instanceof FieldKey.Pole k) {
            return "pole " + k.device() + " " + k.phase();
        } else if (key instanceof FieldKey.End k) {
            return "end " + k.device() + " " + k.side() + " " + k.phase() + " " + k.end();
        } else if (key instanceof FieldKey.Clamp k) {
            return clamp(k.family(), k.phase(), k.clamp());
        } else if (key instanceof FieldKey.Mode k) {
            return "mode " + k.device() + " " + k.mode() + (isEach(k) ? " " + k.phase() : "");
        } else if (key instanceof FieldKey.Tap k) {
            return "tap " + k.regulator() + " " + k.phase();
        } else if (key instanceof FieldKey.Placed k) {
            return "placed " + k.device() + " " + k.phase();
        } else if (key instanceof FieldKey.Count k) {
            return "count " + k.device() + " " + k.phase();
        } else if (key instanceof FieldKey.Waited k) {
            return "waited " + k.capacitor() + " " + k.phase();
        } else if (key instanceof FieldKey.Proved k) {
            Vertex dead = tested.get(key);
            return "proved " + (dead == null ? k.proof() + " " + k.subject() : "DEAD " + place(dead)) + " " + k.phase();
        }
        return nameOfWords(key);
    }

    private static String nameOfWords(FieldKey key) {
        if (key instanceof FieldKey.Where k) {
            return "where " + k.person();
        } else if (key instanceof FieldKey.CutOff k) {
            return "cut off " + k.person();
        } else if (key instanceof FieldKey.Failed k) {
            return "lame " + k.device();
        } else if (key instanceof FieldKey.Permitted k) {
            return "permit " + k.permit();
        } else if (key instanceof FieldKey.Tagged k) {
            return "tag " + k.device();
        } else if (key instanceof FieldKey.Recorded k) {
            return "record " + k.item();
        } else if (key instanceof FieldKey.Found k) {
            return "found " + k.item();
        }
        throw new IllegalStateException("no words for " + key);
    }

    private static String clamp(String family, Conductor phase, int clamp) {
        return "clamp " + family + " " + phase + " " + clamp;
    }

    private boolean isEach(FieldKey.Mode key) {
        Element element = program.bound().network().element(key.device()).orElseThrow();
        boolean ganged = element instanceof Element.Device device && device.ganged();
        return !ganged && element.kind().mode(key.mode()).map(Mode::each).orElse(false);
    }

    /** {@return a value of a field in words; a number where numbers mean the same to everybody} */
    String value(FieldKey key, int value) {
        if (key instanceof FieldKey.Where) {
            return value == 0 ? "ground" : value > program.sites().size() ? "gone" : program.sites().get(value - 1);
        } else if (key instanceof FieldKey.Clamp clamp) {
            return value == 0 ? "off" : place(program.spots().get(clamp).get(value - 1));
        } else if (key instanceof FieldKey.Found found) {
            return value == 0 ? "nothing" : program.outcomes(found.item()).get(value - 1);
        } else if (key instanceof FieldKey.End && value > 1) {
            return "on " + Conductor.values()[value - 2];
        } else if (key instanceof FieldKey.Happened) {
            return "1";
        }
        return Integer.toString(value);
    }

    private static String place(Vertex vertex) {
        if (vertex instanceof Vertex.AtNode at) {
            return at.node() + "/" + at.conductor();
        } else if (vertex instanceof Vertex.Lead lead) {
            return lead.device() + "/" + lead.side() + "-lead/" + lead.conductor();
        } else if (vertex instanceof Vertex.Bushing bushing) {
            return bushing.device() + "/" + bushing.side() + "-bushing/" + bushing.conductor();
        } else if (vertex instanceof Vertex.Machine machine) {
            return "machine/" + machine.family() + "/" + machine.conductor();
        } else if (vertex instanceof Vertex.Temporary piece) {
            return piece.family() + "/piece/" + piece.conductor();
        }
        return "earth";
    }

    private static String event(Act act) {
        String name = ((Action.Happen) act.step().action()).event();
        return "event " + name + ": " + String.join(", ", new TreeSet<>(act.primitives().stream().map(FieldWords::happening).toList()));
    }

    private static String happening(Primitive primitive) {
        if (primitive instanceof Primitive.MovePole p) {
            return (p.closed() ? "closes " : "opens ") + p.device() + " " + p.phases();
        } else if (primitive instanceof Primitive.MoveClamp p) {
            return "off " + clamp(p.family(), p.phase(), p.clamp());
        } else if (primitive instanceof Primitive.SetMode p) {
            return "sets " + p.mode() + " of " + p.device() + " " + p.phase() + " to " + p.value();
        } else if (primitive instanceof Primitive.Leave p) {
            return "leaves " + p.person();
        } else if (primitive instanceof Primitive.CutOff p) {
            return "cut off " + p.person();
        } else if (primitive instanceof Primitive.FailToTrip p) {
            return "fails " + p.device();
        } else if (primitive instanceof Primitive.Fault p) {
            return (p.stays() ? "lasting" : "passing") + " fault " + p.line() + " " + p.phases();
        }
        throw new IllegalStateException("no event does this: " + primitive);
    }
}
