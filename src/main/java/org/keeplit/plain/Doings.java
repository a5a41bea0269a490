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
import org.keeplit.network.Conductor;
import org.keeplit.procedure.Person;
import org.keeplit.rule.Rule;
import org.keeplit.rule.Trigger;

/** What acts can do, what people find, and which rules bind to an act. */
final class Doings {
    private final Scenery scenery;
    private final Names names;
    private final Possible possible;
    private final Effects effects;
    private final PlainTrips trips;
    private final Events events;

    /** @param acts all that may come up */
    Doings(Scenery scenery, Map<String, List<String>> heldAt, List<PlainAct> acts) {
        this.scenery = scenery;
        this.names = scenery.names();
        this.possible = new Possible(names);
        this.effects = new Effects(scenery, heldAt, acts);
        this.trips = new PlainTrips(scenery, effects);
        this.events = new Events(scenery);
    }

    boolean possible(PlainAct act, Facts facts) {
        boolean talks = act.deeds().stream().anyMatch(Deed.Talk.class::isInstance);
        for (Person person : names.bound().procedure().crew()) {
            boolean acts = act.actors().contains(person.name());
            boolean cutOff = facts.get("cut off " + person.name()) == 1;
            if (acts && (cutOff || facts.get("where " + person.name()) == Effects.GONE) || talks && cutOff) {
                return false;
            }
        }
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

    /** {@return whether something that nobody does would change anything} */
    boolean changes(Deed deed, Facts facts, Asking asking) {
        if (deed instanceof Deed.Adjust d) {
            int value = names.element(d.device()).kind().mode(d.mode()).orElseThrow().values().indexOf(d.value());
            return facts.get(names.mode(d.device(), d.phase(), d.mode())) != value;
        } else if (deed instanceof Deed.Leave d) {
            return facts.get("where " + d.person()) != Effects.GONE;
        } else if (deed instanceof Deed.CutOff d) {
            return facts.get("cut off " + d.person()) == 0;
        } else if (deed instanceof Deed.Lame d) {
            return facts.get("lame " + d.device()) == 0;
        } else if (deed instanceof Deed.Fault d) {
            return PlainTrips.places(names, d).stream().anyMatch(p -> asking.circuit().now().level(p) != Voltages.DEAD);
        }
        return possible.is(deed, facts);
    }

    Facts happened(List<Deed> deeds, Asking before, Facts facts) {
        return effects.happened(deeds, before, facts);
    }

    /** {@return what may happen by itself} */
    PlainTrips.Ways byItself(Asking asking, Facts facts, PlainTrips.Happened happened) {
        return trips.ways(asking, facts, happened);
    }

    /** {@return whether an act, done in a state, is what begins a rule's stretch or duty with some bindings} */
    boolean begins(Rule rule, PlainAct act, Asking before, Map<String, Thing> env) {
        List<Map<String, Thing>> all = new ArrayList<>();
        for (Events.Event event : events.of(act, before)) {
            rule.triggers().forEach(t -> match(t, event, act, all));
        }
        return all.stream().anyMatch(found -> env.entrySet().containsAll(found.entrySet()));
    }

    /** {@return whether an act, done in a state, is a moment} */
    boolean comes(Moment moment, PlainAct act, Asking before, Map<String, Thing> env) {
        return events.of(act, before).stream().anyMatch(event -> isIt(moment, event, act, env));
    }

    private boolean isIt(Moment moment, Events.Event event, PlainAct act, Map<String, Thing> env) {
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
            for (Events.Event event : events.of(act, asking)) {
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

    private void match(Trigger trigger, Events.Event moment, PlainAct act, List<Map<String, Thing>> all) {
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
            case JUMPER, GROUND, MOBILE -> noun.kinds()
                    .contains(names.bound().temporary(thing.name()).orElseThrow().kind().name());
            default -> true;
        };
    }
}
