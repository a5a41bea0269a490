package org.keeplit.plain;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.keeplit.condition.Condition;
import org.keeplit.condition.Truth;
import org.keeplit.condition.Type;
import org.keeplit.network.Base;
import org.keeplit.network.Conductor;
import org.keeplit.network.Place;
import org.keeplit.rule.ActKind;
import org.keeplit.rule.Rule;
import org.keeplit.rule.Trigger;

/** What acts can do, what people find, and which rules bind to an act. */
final class Doings {
    private final Scenery scenery;
    private final Names names;
    private final Possible possible;
    private final Effects effects;
    private final PlainTrips trips;

    Doings(Scenery scenery, Map<String, List<String>> heldAt) {
        this.scenery = scenery;
        this.names = scenery.names();
        this.possible = new Possible(names);
        this.effects = new Effects(scenery, heldAt);
        this.trips = new PlainTrips(scenery, effects);
    }

    boolean possible(PlainAct act, Facts facts) {
        return act.deeds().stream().allMatch(d -> possible.is(d, facts));
    }

    Truth awaited(PlainAct act, Asking asking) {
        return act.deeds().stream()
                .map(d -> d instanceof Deed.Hold hold ? asking.ask(hold.condition(), Map.of()) : Truth.TRUE)
                .reduce(Truth.TRUE, Truth::and);
    }

    Truth seen(PlainAct act, Asking asking) {
        return act.deeds().stream().map(d -> effects.seen(d, asking)).reduce(Truth.TRUE, Truth::and);
    }

    Facts after(PlainAct act, Asking before, Facts facts) {
        return effects.after(act, before, facts);
    }

    /** {@return what may happen by itself} */
    PlainTrips.Ways byItself(Asking asking, Facts facts, PlainTrips.Happened happened) {
        return trips.ways(asking, facts, happened);
    }

    /** A moment: what kind, who and what takes part, on which phase, and whether the act is it in this state. */
    private record Moment(ActKind kind, List<Thing> things, Conductor phase, List<String> words, boolean is) {}

    /** {@return all bindings of a rule's variables, in a state or at an act} */
    List<Map<String, Thing>> bindings(Rule rule, PlainAct act, Asking asking) {
        List<Map<String, Thing>> all = new ArrayList<>();
        if (rule.triggers().isEmpty()) {
            all.add(Map.of());
        } else {
            for (Deed deed : act.deeds()) {
                for (Moment moment : moments(deed, asking)) {
                    for (Trigger trigger : rule.triggers()) {
                        match(trigger, moment, act, all);
                    }
                }
            }
        }
        for (Condition.Binder binder : rule.binders()) {
            List<Map<String, Thing>> more = new ArrayList<>();
            for (Map<String, Thing> env : all) {
                for (Thing thing : scenery.range(binder, env)) {
                    Map<String, Thing> next = new HashMap<>(env);
                    next.put(binder.variable(), thing);
                    more.add(next);
                }
            }
            all = more;
        }
        return all;
    }

    /** {@return whether a rule is to be judged with these bindings} */
    Truth scope(Rule rule, Map<String, Thing> env, Asking asking) {
        Truth all = rule.scope().map(c -> asking.ask(c, env)).orElse(Truth.TRUE);
        List<Condition.Binder> binders = new ArrayList<>(rule.binders());
        rule.triggers().forEach(t -> binders.addAll(t.binders()));
        for (Condition.Binder binder : binders) {
            if (binder.such().isPresent() && env.containsKey(binder.variable())) {
                all = all.and(asking.ask(binder.such().get(), env));
            }
        }
        return all;
    }

    private void match(Trigger trigger, Moment moment, PlainAct act, List<Map<String, Thing>> all) {
        if (!moment.is()
                || trigger.act() != moment.kind()
                || !moment.words().containsAll(trigger.words())
                || trigger.phase().isPresent() && moment.phase() == null) {
            return;
        }
        Map<String, Thing> env = new HashMap<>();
        for (int i = 0; i < trigger.binders().size(); i++) {
            Condition.Binder binder = trigger.binders().get(i);
            Thing thing = moment.things().get(i);
            if (!isOne(binder, thing)) {
                return;
            }
            env.put(binder.variable(), thing);
        }
        trigger.phase().ifPresent(p -> env.put(p, Thing.phase(moment.phase())));
        if (trigger.by().isEmpty()) {
            all.add(env);
            return;
        }
        for (String actor : act.actors()) {
            Map<String, Thing> with = new HashMap<>(env);
            with.put(trigger.by().get(), Thing.named(Type.PERSON, actor));
            all.add(with);
        }
    }

    private boolean isOne(Condition.Binder binder, Thing thing) {
        if (thing.type() != binder.noun().type()) {
            return false;
        }
        if (binder.noun().kinds().isEmpty()) {
            return true;
        }
        return switch (thing.type()) {
            case DEVICE, REGULATOR -> binder.noun().kinds().contains(names.element(thing.name()).kind().name());
            case CONTACT -> binder.noun().kinds().contains(thing.joint().kind().name());
            case JUMPER, GROUND -> binder.noun()
                    .kinds()
                    .contains(names.bound().temporary(thing.name()).orElseThrow().kind().name());
            default -> true;
        };
    }

    private List<Moment> moments(Deed deed, Asking asking) {
        List<Moment> all = new ArrayList<>();
        if (deed instanceof Deed.Switch d) {
            for (Conductor p : d.phases()) {
                add(all, d.close() ? ActKind.CLOSING : ActKind.OPENING, p, Thing.named(Type.DEVICE, d.device()));
                for (Joint joint : scenery.wiring().joints()) {
                    if (joint.part() == Joint.Part.POLE && joint.owner().equals(d.device()) && joint.phase() == p) {
                        contact(all, joint, d.close(), p, asking);
                    }
                }
            }
        } else if (deed instanceof Deed.LeadMove d) {
            add(all, ActKind.LANDING, d.phase(), Thing.named(Type.DEVICE, d.device()));
            contacts(all, Names.end(d.device(), d.side(), d.phase(), d.end()), Wiring.leadValue(d), d.phase(), asking);
        } else if (deed instanceof Deed.LeadOff d) {
            add(all, ActKind.LIFTING, d.phase(), Thing.named(Type.DEVICE, d.device()));
            contacts(all, Names.end(d.device(), d.side(), d.phase(), d.end()), 0, d.phase(), asking);
        } else if (deed instanceof Deed.ClampOn d) {
            clampOn(all, d, asking);
        } else if (deed instanceof Deed.ClampOff d) {
            clampOff(all, d, asking);
        } else if (deed instanceof Deed.Adjust d) {
            Type type = Scenery.typeOf(names.element(d.device()));
            all.add(new Moment(
                    ActKind.SETTING,
                    List.of(Thing.named(type, d.device())),
                    d.phase(),
                    List.of(d.mode(), d.value()),
                    true));
        } else if (deed instanceof Deed.Neutral d) {
            add(all, ActKind.TAPPING, d.phase(), Thing.named(Type.REGULATOR, d.regulator()));
        } else if (deed instanceof Deed.Bring d && d.place() != Place.SHOP) {
            for (Conductor p : d.phases()) {
                ActKind kind = d.place() == Place.POLE ? ActKind.RAISING : ActKind.LOWERING;
                add(all, kind, p, Thing.named(Type.DEVICE, d.device()));
            }
        } else if (deed instanceof Deed.Climb d) {
            add(all, ActKind.GOING_ALOFT, null, Thing.named(Type.PERSON, d.person()), Thing.named(Type.SITE, d.site()));
        } else if (deed instanceof Deed.Descend d) {
            add(all, ActKind.COMING_DOWN, null, Thing.named(Type.PERSON, d.person()));
        } else if (deed instanceof Deed.Talk d) {
            Type type = names.bound().permit(d.permit()).orElseThrow().type();
            add(all, spoken(d), null, Thing.named(type, d.permit()));
        } else if (deed instanceof Deed.Tie d) {
            add(all, d.on() ? ActKind.TAGGING : ActKind.UNTAGGING, null, Thing.named(Type.DEVICE, d.device()));
        } else if (deed instanceof Deed.Test d) {
            add(all, ActKind.TESTING, d.phase(), Thing.spot(d.vertex(), d.phase()));
        } else if (deed instanceof Deed.Touch d) {
            add(all, ActKind.WORKING, d.phase(), Thing.spot(d.vertex(), d.phase()));
        }
        return all;
    }

    private static ActKind spoken(Deed.Talk talk) {
        return switch (talk.speech()) {
            case ASK -> ActKind.ASKING;
            case ISSUE -> ActKind.ISSUING;
            case REPEAT -> ActKind.REPEATING;
            case CONFIRM -> ActKind.CONFIRMING;
            case RELEASE -> ActKind.RELEASING;
        };
    }

    private static void add(List<Moment> all, ActKind kind, Conductor phase, Thing... things) {
        all.add(new Moment(kind, List.of(things), phase, List.of(), true));
    }

    private void contacts(List<Moment> all, String fact, int value, Conductor p, Asking asking) {
        for (Joint joint : scenery.wiring().joints()) {
            if (fact.equals(joint.fact()) && (value == 0 || joint.value() == value)) {
                contact(all, joint, value != 0, p, asking);
            }
        }
    }

    /** What breaks is whatever is closed; what makes is the contact at the place where it goes. */
    private static void contact(List<Moment> all, Joint joint, boolean makes, Conductor p, Asking asking) {
        all.add(new Moment(
                makes ? ActKind.MAKING : ActKind.BREAKING,
                List.of(Thing.contact(joint)),
                p,
                List.of(),
                makes || asking.circuit().isClosed(joint)));
    }

    private boolean isGround(String family) {
        return names.bound().temporary(family).orElseThrow().kind().base() == Base.GROUND;
    }

    private void clampOn(List<Moment> all, Deed.ClampOn d, Asking asking) {
        if (!isGround(d.family())) {
            add(all, ActKind.CLAMPING, d.phase(), Thing.named(Type.JUMPER, d.family()));
        } else if (d.clamp() == 1) {
            add(all, ActKind.EARTHING, d.phase(), Thing.named(Type.GROUND, d.family()));
        } else {
            add(all, ActKind.GROUNDING, d.there(), Thing.spot(d.vertex(), d.there()));
        }
        contacts(all, Names.clamp(d.family(), d.phase(), d.clamp()), names.number(d.vertex()), d.phase(), asking);
    }

    private void clampOff(List<Moment> all, Deed.ClampOff d, Asking asking) {
        String fact = Names.clamp(d.family(), d.phase(), d.clamp());
        if (!isGround(d.family())) {
            add(all, ActKind.UNCLAMPING, d.phase(), Thing.named(Type.JUMPER, d.family()));
        } else if (d.clamp() == 1) {
            add(all, ActKind.UNEARTHING, d.phase(), Thing.named(Type.GROUND, d.family()));
        } else {
            for (Joint joint : scenery.wiring().joints()) {
                if (fact.equals(joint.fact())) {
                    Conductor there =
                            Conductor.valueOf(joint.a().substring(joint.a().lastIndexOf('/') + 1));
                    all.add(new Moment(
                            ActKind.UNGROUNDING,
                            List.of(Thing.spot(joint.a(), there)),
                            there,
                            List.of(),
                            asking.circuit().isClosed(joint)));
                }
            }
        }
        contacts(all, fact, 0, d.phase(), asking);
    }
}
