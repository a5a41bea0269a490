package org.keeplit.explore;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.keeplit.condition.Moment;
import org.keeplit.condition.Noun;
import org.keeplit.condition.PhaseTerm;
import org.keeplit.condition.Type;
import org.keeplit.network.Element;
import org.keeplit.program.Act;

/** Tells which acts are a moment that a condition asks about. */
final class Moments {
    private final World world;
    private final ConditionCompiler conditions;
    private final List<List<Events.Event>> events = new ArrayList<>();

    Moments(World world, ConditionCompiler conditions) {
        this.world = world;
        this.conditions = conditions;
        AtomCompiler atoms = new AtomCompiler(world);
        world.program().acts().forEach(act -> events.add(Events.of(world, atoms, act)));
    }

    List<Events.Event> events(Act act) {
        return events.get(act.id());
    }

    /** {@return what must be so before an act for it to be one of some moments; false if it never is} */
    Node when(List<Moment> moments, Act act, Environment environment) {
        List<Node> any = new ArrayList<>();
        for (Events.Event event : events(act)) {
            for (Moment moment : moments) {
                if (is(moment, event, act, environment)) {
                    any.add(event.when());
                }
            }
        }
        return Node.one(any);
    }

    private boolean is(Moment moment, Events.Event event, Act act, Environment environment) {
        if (moment.act() != event.kind()
                || !event.words().containsAll(moment.words())
                || !isOn(moment.phase(), event, environment)) {
            return false;
        }
        for (int i = 0; i < moment.participants().size(); i++) {
            if (!is(moment.participants().get(i), event.participants().get(i), event, environment)) {
                return false;
            }
        }
        return moment.by().isEmpty()
                || Events.actors(act).stream()
                        .anyMatch(actor -> is(moment.by().get(), new Obj.Someone(actor), event, environment));
    }

    private static boolean isOn(Optional<PhaseTerm> phase, Events.Event event, Environment environment) {
        if (phase.isEmpty() || phase.get() instanceof PhaseTerm.All) {
            return true;
        }
        return event.phase() != null && environment.covers(phase.get(), event.phase());
    }

    private boolean is(Moment.Participant asked, Obj there, Events.Event event, Environment environment) {
        if (asked instanceof Moment.Any any) {
            return isOne(any.noun(), there);
        }
        Obj object = conditions.object(((Moment.The) asked).term(), environment);
        if (object instanceof Obj.Place && there instanceof Obj.Spot spot) {
            // A point that is meant on all its phases is touched wherever one of them is.
            return world.phasesOf(object).contains(spot.vertex().conductor())
                    && conditions.vertex(object, spot.vertex().conductor())
                            == world.grid().number(spot.vertex()).orElseThrow();
        } else if (there instanceof Obj.Site) {
            return world.siteOf(object).equals(there.words());
        }
        return object.equals(there);
    }

    private boolean isOne(Noun noun, Obj object) {
        if (object instanceof Obj.Of of) {
            boolean device = of.element() instanceof Element.Device;
            return (noun.type() == Type.DEVICE) == device
                    && (noun.kinds().isEmpty() || noun.kinds().contains(of.element().kind().name()));
        } else if (object instanceof Obj.Joint joint) {
            return noun.kinds().isEmpty() || noun.kinds().contains(joint.contact().kind().name());
        }
        return object instanceof Obj.Spot || object instanceof Obj.Site || world.domain(noun).contains(object);
    }
}
