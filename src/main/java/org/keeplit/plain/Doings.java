package org.keeplit.plain;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.keeplit.condition.Condition;
import org.keeplit.condition.Moment;
import org.keeplit.condition.Noun;
import org.keeplit.condition.PhaseTerm;
import org.keeplit.condition.Truth;
import org.keeplit.condition.Type;
import org.keeplit.network.Base;
import org.keeplit.network.Conductor;
import org.keeplit.network.Place;
import org.keeplit.procedure.Action;
import org.keeplit.condition.ActKind;
import org.keeplit.rule.Rule;
import org.keeplit.rule.Trigger;

/** What acts can do, what people find, and which rules bind to an act. */
final class Doings {
    private final Scenery scenery;
    private final Names names;
    private final Possible possible;
    private final Effects effects;

    Doings(Scenery scenery, Map<String, List<String>> heldAt) {
        this.scenery = scenery;
        this.names = scenery.names();
        this.possible = new Possible(names);
        this.effects = new Effects(scenery, heldAt);
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

    /** A moment: what kind, who and what takes part, on which phase, and whether the act is it in this state. */
    private record Event(ActKind kind, List<Thing> things, Conductor phase, List<String> words, boolean is) {}

    /** {@return all events that an act is, in a state; in none at all those that it may be} */
    private List<Event> events(PlainAct act, Asking asking) {
        List<Event> all = new ArrayList<>();
        act.deeds().forEach(deed -> all.addAll(moments(deed, asking)));
        act.step().records().forEach(item -> word(all, ActKind.RECORDING, item));
        if (act.step().action() instanceof Action.Brief brief) {
            brief.people().forEach(p -> add(all, ActKind.BRIEFING, null, Thing.named(Type.PERSON, p.toString())));
        } else if (act.step().action() instanceof Action.Do done) {
            word(all, ActKind.DOING, done.words());
        }
        return all;
    }

    private static void word(List<Event> all, ActKind kind, String text) {
        all.add(new Event(kind, List.of(), null, List.of(text), true));
    }

    /** {@return whether an act, done in a state, is what begins a rule's stretch or duty with some bindings} */
    boolean begins(Rule rule, PlainAct act, Asking before, Map<String, Thing> env) {
        List<Map<String, Thing>> all = new ArrayList<>();
        for (Event event : events(act, before)) {
            rule.triggers().forEach(t -> match(t, event, act, all));
        }
        return all.stream().anyMatch(found -> env.entrySet().containsAll(found.entrySet()));
    }

    /** {@return whether an act, done in a state, is a moment} */
    boolean comes(Moment moment, PlainAct act, Asking before, Map<String, Thing> env) {
        return events(act, before).stream().anyMatch(event -> isIt(moment, event, act, env));
    }

    private boolean isIt(Moment moment, Event event, PlainAct act, Map<String, Thing> env) {
        boolean is = event.is()
                && moment.act() == event.kind()
                && event.words().containsAll(moment.words())
                && moment.phase().map(p -> isOn(p, event.phase(), env)).orElse(true);
        for (int i = 0; is && i < moment.participants().size(); i++) {
            is = takesPart(moment.participants().get(i), event.things().get(i), env);
        }
        return is
                && (moment.by().isEmpty()
                        || act.actors().stream()
                                .map(a -> Thing.named(Type.PERSON, a))
                                .anyMatch(a -> takesPart(moment.by().get(), a, env)));
    }

    private static boolean isOn(PhaseTerm phase, Conductor there, Map<String, Thing> env) {
        if (phase instanceof PhaseTerm.Given given) {
            return there != null && given.phases().contains(there);
        } else if (phase instanceof PhaseTerm.Variable variable) {
            return env.get(variable.name()).phase() == there;
        }
        return true;
    }

    private boolean takesPart(Moment.Participant asked, Thing there, Map<String, Thing> env) {
        if (asked instanceof Moment.Any any) {
            return isOne(any.noun(), there);
        }
        Thing thing = scenery.thing(((Moment.The) asked).term(), env);
        if (thing.place() != null) {
            return scenery.phasesOf(thing).contains(there.phase())
                    && scenery.vertex(thing, there.phase()).equals(there.name());
        } else if (there.type() == Type.SITE) {
            return scenery.siteOf(thing).equals(there.name());
        }
        return thing.equals(there);
    }

    /** {@return all bindings of a rule's variables, in a state or at an act; with no state, all that may come up} */
    List<Map<String, Thing>> bindings(Rule rule, PlainAct act, Asking asking) {
        List<Map<String, Thing>> all = new ArrayList<>();
        if (rule.triggers().isEmpty()) {
            all.add(Map.of());
        } else {
            for (Event event : events(act, asking)) {
                for (Trigger trigger : rule.triggers()) {
                    match(trigger, event, act, all);
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

    private void match(Trigger trigger, Event moment, PlainAct act, List<Map<String, Thing>> all) {
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
            if (!isOne(binder.noun(), thing)) {
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

    private boolean isOne(Noun noun, Thing thing) {
        if (thing.type() != noun.type()) {
            return false;
        }
        if (noun.kinds().isEmpty()) {
            return true;
        }
        return switch (thing.type()) {
            case DEVICE, REGULATOR -> noun.kinds().contains(names.element(thing.name()).kind().name());
            case CONTACT -> noun.kinds().contains(thing.joint().kind().name());
            case JUMPER, GROUND -> noun.kinds()
                    .contains(names.bound().temporary(thing.name()).orElseThrow().kind().name());
            default -> true;
        };
    }

    private List<Event> moments(Deed deed, Asking asking) {
        List<Event> all = new ArrayList<>();
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
            all.add(new Event(
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
        } else if (deed instanceof Deed.Note d) {
            word(all, ActKind.RECORDING, d.item());
        } else if (deed instanceof Deed.Find d) {
            word(all, ActKind.INSPECTING, d.item());
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

    private static void add(List<Event> all, ActKind kind, Conductor phase, Thing... things) {
        all.add(new Event(kind, List.of(things), phase, List.of(), true));
    }

    private void contacts(List<Event> all, String fact, int value, Conductor p, Asking asking) {
        for (Joint joint : scenery.wiring().joints()) {
            if (fact.equals(joint.fact()) && (value == 0 || joint.value() == value)) {
                contact(all, joint, value != 0, p, asking);
            }
        }
    }

    /** What breaks is whatever is closed; what makes is the contact at the place where it goes. */
    private static void contact(List<Event> all, Joint joint, boolean makes, Conductor p, Asking asking) {
        all.add(new Event(
                makes ? ActKind.MAKING : ActKind.BREAKING,
                List.of(Thing.contact(joint)),
                p,
                List.of(),
                makes || asking == null || asking.circuit().isClosed(joint)));
    }

    private boolean isGround(String family) {
        return names.bound().temporary(family).orElseThrow().kind().base() == Base.GROUND;
    }

    private void clampOn(List<Event> all, Deed.ClampOn d, Asking asking) {
        if (!isGround(d.family())) {
            add(all, ActKind.CLAMPING, d.phase(), Thing.named(Type.JUMPER, d.family()));
        } else if (d.clamp() == 1) {
            add(all, ActKind.EARTHING, d.phase(), Thing.named(Type.GROUND, d.family()));
        } else {
            add(all, ActKind.GROUNDING, d.there(), Thing.spot(d.vertex(), d.there()));
        }
        contacts(all, Names.clamp(d.family(), d.phase(), d.clamp()), names.number(d.vertex()), d.phase(), asking);
    }

    private void clampOff(List<Event> all, Deed.ClampOff d, Asking asking) {
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
                    all.add(new Event(
                            ActKind.UNGROUNDING,
                            List.of(Thing.spot(joint.a(), there)),
                            there,
                            List.of(),
                            asking == null || asking.circuit().isClosed(joint)));
                }
            }
        }
        contacts(all, fact, 0, d.phase(), asking);
    }
}
