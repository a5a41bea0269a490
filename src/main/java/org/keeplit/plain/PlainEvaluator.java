package org.keeplit.plain;

import com.google.common.collect.ImmutableMap;
import com.google.common.collect.ImmutableSet;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.keeplit.condition.Condition;
import org.keeplit.condition.Truth;
import org.keeplit.procedure.Block;
import org.keeplit.procedure.Bound;
import org.keeplit.procedure.Permit;
import org.keeplit.rule.Rule;
import org.keeplit.rule.Rulebook;

/** Explores a bound procedure, plainly. */
public final class PlainEvaluator {
    private static final List<Rule.Form> IN_STATES = List.of(Rule.Form.ALWAYS, Rule.Form.WHILE, Rule.Form.BETWEEN);

    private record State(Process left, Facts facts) {}

    /** A rule that is kept, and where it stands: names alone do not tell rules apart. */
    private record Kept(String rulebook, Rule rule) {
        String words() {
            return rulebook + "/" + rule.name();
        }
    }

    private static List<Rule> only(List<Kept> rules) {
        return rules.stream().map(Kept::rule).toList();
    }

    private final Bound bound;
    private final int events;
    private final PlainWatcher watcher;
    private boolean stopped;
    private final Names names;
    private final Map<String, Integer> normal;
    private final Writing writing;
    private final Process program;
    private final Scenery scenery;
    private final Map<String, List<String>> heldAt = new HashMap<>();
    private final List<Kept> rules = new ArrayList<>();
    private final Mishaps mishaps;
    private final Doings doings;
    /** What events break with nothing done: a rule, its bindings, and the events. */
    private final Set<List<Object>> alone = new HashSet<>();
    private final Recalling recalling;
    private final Ruling ruling;
    private final PlainWords words;
    /** For each place the shortest way, and what the rule's variables stand for. */
    private final Map<PlainPlace, Nearest> roots = new TreeMap<>();
    private final Map<PlainPlace, Set<Object>> bindings = new HashMap<>();
    private final Set<PlainPlace> cautions = new HashSet<>();
    private final Set<String> later = new TreeSet<>();
    private final Set<String> exercised = new TreeSet<>();
    private final Set<State> seen = new HashSet<>();
    private final Map<Facts, Asking> askings = new HashMap<>();

    private PlainEvaluator(Bound bound, int events, PlainWatcher watcher) {
        this.watcher = watcher;
        this.events = events;
        this.bound = bound;
        this.names = new Names(bound);
        Normal start = new Normal(names);
        this.normal = start.facts();
        Wiring atStart = new Wiring(names, List.of(), start.clamps());
        Circuit circuit = new Circuit(names, atStart, withoutClamps());
        this.writing = new Writing(names, start.clamps(), site -> List.copyOf(circuit.feeding(site)));
        this.program = writing.write(Block.Order.IN_ORDER, bound.body());
        List<Deed> deeds = new ArrayList<>();
        Set<String> climbed = new LinkedHashSet<>();
        List<PlainAct> acts = new ArrayList<>();
        Process.acts(program, acts);
        acts.forEach(act -> deeds.addAll(act.deeds()));
        deeds.forEach(d -> {
            if (d instanceof Deed.Climb climb) {
                climbed.add(climb.site());
            }
        });
        this.scenery = new Scenery(names, new Wiring(names, deeds, start.clamps()), climbed);
        for (Permit permit : bound.permits()) {
            heldAt.put(permit.name(), Asking.heldAt(permit, writing));
        }
        for (Rulebook book : bound.procedure().keeps()) {
            book.rules().forEach(rule -> rules.add(new Kept(book.name(), rule)));
        }
        this.mishaps = new Mishaps(scenery, events == 0 ? List.of() : only(rules), acts.size() + writing.steps().size());
        this.doings = new Doings(scenery, heldAt, acts);
        this.recalling = new Recalling(scenery, doings, only(rules), acts);
        this.ruling = new Ruling(doings, recalling, mishaps);
        this.words = new PlainWords(names, mishaps);
    }

    /** The feeding devices that a procedure names are those of the network before anything temporary is there. */
    private Facts withoutClamps() {
        Map<String, Integer> bare = new HashMap<>(normal);
        bare.keySet().removeIf(f -> f.startsWith("clamp "));
        return new Facts(bare);
    }

    /**
     * Explores.
     *
     * @param bound the bound procedure
     * @param most how many states to look at before giving up
     * @return what was found
     */
    public static PlainResult evaluate(Bound bound, int most) {
        return evaluate(bound, 0, most);
    }

    /** The same, with events. @param events how many of them may happen at most */
    public static PlainResult evaluate(Bound bound, int events, int most) {
        return evaluate(bound, events, most, PlainWatcher.NOBODY);
    }

    /** The same. @param watcher is told of every state */
    public static PlainResult evaluate(Bound bound, int events, int most, PlainWatcher watcher) {
        return new PlainEvaluator(bound, events, watcher).run(most);
    }

    private PlainResult run(int most) {
        State first = new State(program, recalling.begin(new Facts(normal), this::asking));
        scenery.startsFrom(first.facts());
        Asking asking = asking(first.facts());
        byEventsAlone(first.facts());
        watcher.begins(fact -> words.value(fact, first.facts().get(fact)));
        boolean dirty = judge(IN_STATES, null, asking, null, 0, false);
        dirty |= judge(List.of(Rule.Form.AT_START), null, asking, null, 0, false);
        if (asking.circuit().now().anythingShorted()) {
            root(PlainPlace.of("flash", null), null, 0, dirty);
            dirty = true;
        }
        Set<State> clean = new HashSet<>();
        TreeMap<Integer, Set<State>> byLength = new TreeMap<>();
        ArrayDeque<State> dirtyStates = new ArrayDeque<>();
        meet(first);
        if (dirty) {
            dirtyStates.add(first);
        } else {
            byLength.put(0, Set.of(first));
        }
        while (!byLength.isEmpty() && seen.size() <= most && !stopped) {
            int length = byLength.firstKey();
            for (State state : byLength.remove(length)) {
                if (!clean.add(state)) {
                    continue;
                }
                meet(state);
                for (Step step : successors(state, length + 1, false)) {
                    if (step.dirty) {
                        dirtyStates.add(step.state);
                    } else {
                        byLength.computeIfAbsent(step.length, l -> new LinkedHashSet<>()).add(step.state);
                    }
                }
            }
        }
        Set<State> done = new HashSet<>();
        while (!dirtyStates.isEmpty() && seen.size() <= most && !stopped) {
            State state = dirtyStates.poll();
            if (clean.contains(state) || !done.add(state)) {
                continue;
            }
            meet(state);
            if (!asking(state.facts()).circuit().now().anythingShorted()) {
                successors(state, 0, true).forEach(step -> dirtyStates.add(step.state));
            }
        }
        roots.keySet().forEach(place -> later.remove(place.rulebook() + "/" + place.name()));
        ImmutableMap.Builder<PlainPlace, PlainResult.Root> places = ImmutableMap.builder();
        roots.forEach((place, nearest) -> places.put(
                place,
                new PlainResult.Root(
                        nearest.length(), nearest.step(), bindings.getOrDefault(place, Set.of()).size(), !cautions.contains(place))));
        return new PlainResult(
                seen.size(),
                places.build(),
                ImmutableSet.copyOf(later),
                ImmutableSet.copyOf(exercised),
                dirtyStates.isEmpty() && byLength.isEmpty());
    }

    private void meet(State state) {
        if (seen.add(state) && watcher != PlainWatcher.NOBODY) {
            stopped |= !watcher.met(words.state(state.left(), state.facts()));
        }
    }

    /** {@return what can be asked of a state; states with the same facts share it} */
    private Asking asking(Facts facts) {
        return askings.computeIfAbsent(facts, f -> new Asking(scenery, f, heldAt));
    }

    /** @param length how many acts and reactions lead there */
    private record Step(State state, boolean dirty, int length) {}

    /** The shortest way to a break. @param step the number of the step there */
    private record Nearest(int length, int step) {}

    private void root(PlainPlace place, PlainAct act, int length, boolean broken) {
        if (!broken) {
            Nearest now = new Nearest(length, act == null ? -1 : act.stepNumber());
            roots.merge(place, now, (a, b) -> a.length() <= b.length() ? a : b);
        }
    }

    /** What the writer states is not asked for any more once an event has happened. */
    private void stated(String sort, PlainAct act, int length, boolean broken, Facts facts) {
        if (!mishaps.any(facts)) {
            root(PlainPlace.of(sort, act == null ? null : act.step()), act, length, broken);
        }
    }

    private Optional<String> outcome(Facts facts, String item) {
        int found = facts.get("found " + item);
        return found == 0
                ? Optional.empty()
                : Optional.of(names.words(found).substring("outcome ".length()));
    }

    private List<Step> successors(State state, int length, boolean broken) {
        List<Step> all = new ArrayList<>();
        Asking asking = asking(state.facts());
        for (Mishaps.One one : mishaps.from(state.facts(), asking, doings, events)) {
            Process.Next next = new Process.Next(one.act(), state.left(), true, true);
            follow(next, asking, happened(one, asking, state.facts()), PlainTrips.Happened.of(one.act().deeds(), one.tripping(), names), length, broken, all);
        }
        if (state.left() instanceof Process.Done) {
            ending(state, length - 1, broken);
            return all;
        }
        boolean goes = false;
        boolean waits = false;
        PlainAct waiting = null;
        for (Process.Next next : Process.next(state.left(), item -> outcome(state.facts(), item))) {
            if (doings.awaited(next.act(), asking) != Truth.TRUE) {
                waiting = waits ? waiting : next.act();
                waits = true;
                continue;
            }
            goes = true;
            all.addAll(attempt(state, asking, next, length, broken));
        }
        if (waits && !goes) {
            stated("stuck", waiting, length - 1, broken, state.facts());
        }
        return all;
    }

    private Facts happened(Mishaps.One one, Asking asking, Facts facts) {
        Facts now = doings.happened(one.act().deeds(), asking, facts).with(one.key(), 1);
        return recalling.after(null, asking, now, this::asking);
    }

    /** Notes which rules events break where nothing was done. */
    private void byEventsAlone(Facts start) {
        ArrayDeque<Facts> open = new ArrayDeque<>(List.of(start));
        Set<Facts> met = new HashSet<>();
        while (!open.isEmpty()) {
            Facts facts = open.poll();
            Asking asking = asking(facts);
            for (Mishaps.One one : mishaps.from(facts, asking, doings, events)) {
                settleAlone(happened(one, asking, facts), PlainTrips.Happened.of(one.act().deeds(), one.tripping(), names), met, open);
            }
        }
    }

    private void settleAlone(Facts facts, PlainTrips.Happened happened, Set<Facts> met, ArrayDeque<Facts> open) {
        Asking then = asking(facts);
        for (Kept one : rules) {
            Rule rule = one.rule();
            if (IN_STATES.contains(rule.form())) {
                for (Map<String, Thing> env : ruling.bindings(rule, null, then)) {
                    if (ruling.kept(rule, env, then) != Truth.TRUE) {
                        alone.add(List.of(one.words(), env, mishaps.happened(facts)));
                    }
                }
            }
        }
        if (then.circuit().now().anythingShorted()) {
            return;
        }
        PlainTrips.Ways ways = doings.byItself(then, facts, happened);
        if (ways.known() && ways.rest() && met.add(facts)) {
            open.add(facts);
        }
        for (PlainTrips.Move move : ways.moves()) {
            settleAlone(recalling.after(null, then, move.facts(), this::asking), move.happened(), met, open);
        }
    }

    private List<Step> attempt(State state, Asking asking, Process.Next next, int length, boolean broken) {
        PlainAct act = next.act();
        if (!doings.possible(act, state.facts())) {
            stated("cannot", act, length, broken, state.facts());
            return List.of();
        }
        boolean dirty = broken | judge(List.of(Rule.Form.BEFORE), act, asking, act, length, broken);
        if (next.first()) {
            for (Condition condition : act.step().requires()) {
                if (asking.ask(condition, Map.of()) != Truth.TRUE) {
                    stated("requirement", act, length, dirty, state.facts());
                    return List.of();
                }
            }
        }
        if (doings.seen(act, asking) == Truth.FALSE) {
            stated("stop", act, length, dirty, state.facts());
            return List.of();
        }
        List<Step> all = new ArrayList<>();
        follow(next, asking, recalling.after(act, asking, doings.after(act, asking, state.facts()), this::asking), PlainTrips.Happened.NOTHING, length, dirty, all);
        return all;
    }

    /** Judges what an act, or a reaction after it, leads to, and goes on until everything is at rest. */
    private void follow(
            Process.Next next, Asking left, Facts facts, PlainTrips.Happened happened, int length, boolean broken, List<Step> all) {
        Asking then = asking(facts);
        State reached = new State(next.rest(), facts);
        boolean dirty = broken | judge(IN_STATES, null, then, next.act(), length, broken);
        if (then.circuit().now().anythingShorted()) {
            stated("flash", next.act(), length, dirty, facts);
            all.add(new Step(reached, true, length));
            return;
        }
        PlainTrips.Ways ways = doings.byItself(then, facts, happened);
        if (!ways.known()) {
            watcher.unsolved();
            meet(reached);
            return;
        }
        if (ways.rest()) {
            all.add(new Step(reached, dirty | rested(next, left, then, length, dirty), length));
        }
        for (PlainTrips.Move move : ways.moves()) {
            Facts remembered = recalling.after(null, then, move.facts(), this::asking);
            follow(next, left, remembered, move.happened(), length + 1, dirty, all);
        }
    }

    /** Judges what follows an act at rest; {@return whether a rule is broken}. @param left the state that the act leaves, which says what moment it is */
    private boolean rested(Process.Next next, Asking left, Asking then, int length, boolean broken) {
        PlainAct act = next.act();
        boolean dirty = judge(List.of(Rule.Form.AFTER), act, left, then, act, length, broken);
        rules.stream().filter(r -> r.rule().form() == Rule.Form.EVENTUALLY).forEach(r -> putToTheQuestion(r, act, left, then));
        if (next.last()) {
            for (Condition condition : act.step().expects()) {
                if (then.ask(condition, Map.of()) != Truth.TRUE) {
                    stated("expectation", act, length, broken | dirty, then.facts());
                    break;
                }
            }
        }
        return dirty;
    }

    private void ending(State state, int length, boolean broken) {
        Asking asking = asking(state.facts());
        judge(List.of(Rule.Form.AT_END, Rule.Form.EVENTUALLY), null, asking, null, length, broken);
        for (Condition condition : bound.ends()) {
            if (asking.ask(condition, Map.of()) != Truth.TRUE) {
                stated("ending", null, length, broken, state.facts());
                return;
            }
        }
    }

    /** Judges all rules of some forms; {@return whether any is broken}. */
    private boolean judge(
            List<Rule.Form> forms, PlainAct act, Asking asking, PlainAct at, int length, boolean broken) {
        return judge(forms, act, asking, asking, at, length, broken);
    }

    /** @param moment the state in which an act is looked at for the moments that it is @param at the act that led here, if one did */
    private boolean judge(
            List<Rule.Form> forms, PlainAct act, Asking moment, Asking asking, PlainAct at, int length, boolean broken) {
        boolean any = false;
        for (Kept one : rules) {
            Rule rule = one.rule();
            if (!forms.contains(rule.form())) {
                continue;
            }
            for (Map<String, Thing> env : ruling.bindings(rule, act, moment)) {
                if (ruling.scope(rule, env, asking) == Truth.TRUE && ruling.excuse(rule, env, asking) != Truth.TRUE) {
                    exercised.add(one.words());
                }
                boolean byEvent = mishaps.any(asking.facts())
                        && alone.contains(List.of(one.words(), env, mishaps.happened(asking.facts())));
                if (!byEvent && ruling.kept(rule, env, asking) != Truth.TRUE) {
                    // What is only a caution or advice leaves the way as it is, and stays so in the states that follow: it is
                    // told once, where it comes up first.
                    boolean stops = rule.severity() == Rule.Severity.STOP;
                    any |= stops;
                    String step = PlainPlace.words(stops && at != null ? at.step() : null);
                    PlainPlace place = new PlainPlace("rule", one.rulebook(), rule.name(), step);
                    root(place, at, length, broken);
                    if (!broken && stops) {
                        bindings.computeIfAbsent(place, p -> new HashSet<>()).add(env);
                    } else if (!stops) {
                        cautions.add(place);
                    }
                    later.add(one.words());
                }
            }
        }
        return any;
    }

    /** A rule on what must come at last has come up with the moment that asks for it. */
    private void putToTheQuestion(Kept one, PlainAct act, Asking left, Asking then) {
        Rule rule = one.rule();
        for (Map<String, Thing> env : doings.bindings(rule, act, left)) {
            boolean excused = ruling.excuse(rule, env, then) == Truth.TRUE;
            if (doings.scope(rule, env, then) == Truth.TRUE && !excused) {
                exercised.add(one.words());
            }
        }
    }
}
