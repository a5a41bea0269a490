package org.keeplit.plain;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.keeplit.condition.Condition;
import org.keeplit.condition.PhaseTerm;
import org.keeplit.condition.Truth;
import org.keeplit.network.Conductor;
import org.keeplit.network.Element;
import org.keeplit.network.Mode;
import org.keeplit.network.Phases;
import org.keeplit.network.Trait;
import org.keeplit.procedure.Action;
import org.keeplit.procedure.Block;
import org.keeplit.rule.Chance;
import org.keeplit.rule.Rule;
import org.keeplit.rule.Rulebook;

/** What may happen with nobody doing it. */
final class Mishaps {
    /** One event to one thing. @param envs for each way of naming what happens @param key tells it from others, see {@link #happened} */
    record One(Chance chance, List<Map<String, Thing>> envs, PlainAct act, String key, List<String> tripping) {}

    private static final String FACT = "event ";

    private final Scenery scenery;
    private final List<One> all = new ArrayList<>();
    private final Map<String, String> names = new HashMap<>();

    /** @param first the number of the first act, and of its step */
    Mishaps(Scenery scenery, List<Rule> rules, int first) {
        this.scenery = scenery;
        for (Rulebook book : scenery.bound().procedure().keeps()) {
            for (Chance chance : book.chances()) {
                if (rules.stream().anyMatch(r -> r.evenIf().contains(chance.name()))) {
                    bind(chance, 0, Map.of(), first);
                }
            }
        }
    }

    List<One> all() {
        return all;
    }

    private void bind(Chance chance, int binder, Map<String, Thing> env, int first) {
        if (binder == chance.binders().size()) {
            List<List<Deed>> ways = new ArrayList<>();
            deeds(chance, 0, env, List.of(), ways);
            List<String> tripping = chance.effects().stream()
                    .filter(e -> e.kind() == Chance.Kind.TRIPS)
                    .map(e -> scenery.thing(e.of(), env).name())
                    .toList();
            for (List<Deed> way : ways) {
                String key = FACT + chance.name() + " " + way;
                if (names.containsKey(key)) {
                    all.stream().filter(one -> one.key.equals(key)).forEach(one -> one.envs.add(env));
                } else if (!way.isEmpty()) {
                    names.put(key, chance.name());
                    Block.Step step = Block.Step.unwritten(
                            Optional.of(chance.name()),
                            ImmutableList.of(),
                            new Action.Happen(chance.name()),
                            chance.name(),
                            chance.span());
                    int number = first + all.size();
                    all.add(new One(chance, new ArrayList<>(List.of(env)), new PlainAct(number, number, step, List.of(), way), key, tripping));
                }
            }
            return;
        }
        Condition.Binder one = chance.binders().get(binder);
        for (Thing thing : scenery.range(one, env)) {
            Map<String, Thing> more = new HashMap<>(env);
            more.put(one.variable(), thing);
            bind(chance, binder + 1, more, first);
        }
    }

    private void deeds(Chance chance, int effect, Map<String, Thing> env, List<Deed> so, List<List<Deed>> into) {
        if (effect == chance.effects().size()) {
            into.add(so);
            return;
        }
        for (List<Deed> way : ways(chance.effects().get(effect), env)) {
            List<Deed> more = new ArrayList<>(so);
            more.addAll(way);
            deeds(chance, effect + 1, env, more, into);
        }
    }

    private List<List<Deed>> ways(Chance.Effect effect, Map<String, Thing> env) {
        Thing thing = scenery.thing(effect.of(), env);
        if (effect.kind() == Chance.Kind.LEAVES) {
            return List.of(List.of(new Deed.Leave(thing.name())));
        } else if (effect.kind() == Chance.Kind.OUT_OF_REACH) {
            return List.of(List.of(new Deed.CutOff(thing.name())));
        } else if (effect.kind() == Chance.Kind.FAILS) {
            return List.of(List.of(new Deed.Lame(thing.name())));
        }
        List<Conductor> phases = new ArrayList<>();
        for (Conductor p : scenery.phasesOf(thing)) {
            if (p.isPhase() && meant(effect.phase(), p, env)) {
                phases.add(p);
            }
        }
        if (phases.isEmpty()) {
            return List.of();
        }
        return switch (effect.kind()) {
            case TRIPS, OPENS, CLOSES -> moves(effect.kind(), thing, phases);
            case COMES_OFF -> clamps(thing, phases, 0, List.of());
            case BECOMES -> becomes(effect, thing, phases);
            default -> {
                Phases all = Phases.NONE;
                for (Conductor p : phases) {
                    all = all.or(Phases.of(p));
                }
                yield List.of(List.of(new Deed.Fault(thing.name(), all, effect.kind() == Chance.Kind.FAULT_STAYS)));
            }
        };
    }

    private static boolean meant(PhaseTerm term, Conductor p, Map<String, Thing> env) {
        if (term instanceof PhaseTerm.Variable variable) {
            return env.get(variable.name()).phase() == p;
        }
        return !(term instanceof PhaseTerm.Given given) || given.phases().contains(p);
    }

    private List<List<Deed>> moves(Chance.Kind kind, Thing thing, List<Conductor> phases) {
        Element.Device device = (Element.Device) scenery.names().element(thing.name());
        if (kind == Chance.Kind.TRIPS && !PlainTrips.trips(device)) {
            return List.of();
        }
        boolean close = kind == Chance.Kind.CLOSES;
        if (device.ganged()) {
            return List.of(List.of(new Deed.Switch(device.name(), device.phases(), close)));
        }
        return List.of(phases.stream().<Deed>map(p -> new Deed.Switch(device.name(), Phases.of(p), close)).toList());
    }

    /** Either clamp of each. */
    private static List<List<Deed>> clamps(Thing thing, List<Conductor> phases, int at, List<Deed> so) {
        if (at == phases.size()) {
            return List.of(so);
        }
        List<List<Deed>> all = new ArrayList<>();
        for (int clamp = 1; clamp <= 2; clamp++) {
            List<Deed> more = new ArrayList<>(so);
            more.add(new Deed.ClampOff(thing.name(), phases.get(at), clamp));
            all.addAll(clamps(thing, phases, at + 1, more));
        }
        return all;
    }

    private List<List<Deed>> becomes(Chance.Effect effect, Thing thing, List<Conductor> phases) {
        Element element = scenery.names().element(thing.name());
        String value = effect.words().get(1);
        Optional<Mode> mode = element.kind().mode(effect.words().get(0)).filter(m -> m.values().contains(value));
        if (mode.isEmpty()) {
            return List.of();
        }
        List<Deed> all = new ArrayList<>();
        List<String> known = new ArrayList<>();
        for (Conductor p : phases) {
            // One setting for all phases is one thing, under whichever phase it is kept.
            String fact = scenery.names().mode(element.name(), p, mode.get().name());
            if (!known.contains(fact)) {
                known.add(fact);
                Conductor kept = fact.endsWith(" " + p) ? p : element.phases().list().get(0);
                all.add(new Deed.Adjust(element.name(), kept, mode.get().name(), value));
            }
        }
        return List.of(all);
    }

    /** {@return the events that may happen in a state} @param most how many may happen in all */
    List<One> from(Facts facts, Asking asking, Doings doings, int most) {
        if (happened(facts).size() >= most) {
            return List.of();
        }
        return all.stream()
                .filter(one -> facts.get(one.key) == 0)
                .filter(one -> one.act.deeds().stream().anyMatch(d -> doings.changes(d, facts, asking)))
                .filter(one -> may(one, asking))
                .toList();
    }

    /** Of several ways to name what happens any will do. */
    private static boolean may(One one, Asking asking) {
        for (Map<String, Thing> env : one.envs) {
            Truth may = one.chance.when().map(c -> asking.ask(c, env)).orElse(Truth.TRUE);
            for (Condition.Binder binder : one.chance.binders()) {
                may = may.and(binder.such().map(c -> asking.ask(c, env)).orElse(Truth.TRUE));
            }
            if (may != Truth.FALSE) {
                return true;
            }
        }
        return false;
    }

    /** {@return the keys of the events that happened} */
    List<String> happened(Facts facts) {
        return all.stream().map(One::key).filter(key -> facts.get(key) == 1).toList();
    }

    /** {@return whether an event happened in spite of which a rule is not judged} */
    boolean excuses(Rule rule, Facts facts) {
        return happened(facts).stream().anyMatch(key -> !rule.evenIf().contains(names.get(key)));
    }

    boolean any(Facts facts) {
        return !happened(facts).isEmpty();
    }
}
