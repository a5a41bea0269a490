package org.keeplit.plain;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.keeplit.condition.Condition;
import org.keeplit.condition.Truth;
import org.keeplit.procedure.Block;
import org.keeplit.procedure.Bound;
import org.keeplit.procedure.Permit;
import org.keeplit.rule.Rule;
import org.keeplit.rule.Rulebook;

/** Does a procedure one act after another, with no search and nothing merged: what happens at each act, no more. */
final class Walk {
    /** Where somebody stands. @param left what is left to do @param facts what is so */
    record At(Process left, Facts facts) {}

    /**
     * What one act comes to.
     *
     * @param act the act
     * @param to where it leads; empty if the path ends with it
     * @param found what came up first, all that came up at the same point; empty if nothing did
     * @param notes the rules broken up to there that are only cautions or advice
     * @param byItself the devices that did something by themselves after the act, one after another
     */
    record Done(PlainAct act, Optional<At> to, Set<String> found, Set<String> notes, List<String> byItself) {
        Done(PlainAct act, Optional<At> to, Set<String> found, Set<String> notes) {
            this(act, to, found, notes, List.of());
        }

        /** {@return whether no rule was broken; an expectation that is not true breaks none} */
        boolean keepsAllRules() {
            return found.stream().allMatch(f -> f.startsWith("expectation"));
        }
    }

    private static final List<Rule.Form> IN_STATES = List.of(Rule.Form.ALWAYS, Rule.Form.WHILE, Rule.Form.BETWEEN);

    private final Bound bound;
    private final Names names;
    private final Scenery scenery;
    private final Doings doings;
    private final Recalling recalling;
    private final Map<String, List<String>> heldAt = new HashMap<>();
    private final List<Rule> rules = new ArrayList<>();
    private final At start;

    Walk(Bound bound) {
        this.bound = bound;
        this.names = new Names(bound);
        Normal normal = new Normal(names);
        Map<String, Integer> bare = new HashMap<>(normal.facts());
        bare.keySet().removeIf(f -> f.startsWith("clamp "));
        Circuit circuit = new Circuit(names, new Wiring(names, List.of(), normal.clamps()), new Facts(bare));
        Writing writing = new Writing(names, normal.clamps(), site -> List.copyOf(circuit.feeding(site)));
        Process program = writing.write(Block.Order.IN_ORDER, bound.body());
        List<Deed> deeds = new ArrayList<>();
        List<PlainAct> all = new ArrayList<>();
        Process.acts(program, all);
        all.forEach(act -> deeds.addAll(act.deeds()));
        Set<String> climbed = new LinkedHashSet<>();
        deeds.stream().filter(Deed.Climb.class::isInstance).forEach(d -> climbed.add(((Deed.Climb) d).site()));
        this.scenery = new Scenery(names, new Wiring(names, deeds, normal.clamps()), climbed);
        scenery.startsFrom(new Facts(normal.facts()));
        for (Permit permit : bound.permits()) {
            heldAt.put(permit.name(), Asking.heldAt(permit, writing));
        }
        for (Rulebook book : bound.procedure().keeps()) {
            rules.addAll(book.rules());
        }
        List<PlainAct> acts = new ArrayList<>();
        Process.acts(program, acts);
        this.doings = new Doings(scenery, heldAt, acts);
        this.recalling = new Recalling(scenery, doings, rules, acts);
        this.start = new At(program, recalling.begin(new Facts(normal.facts()), this::asking));
    }

    At start() {
        return start;
    }

    Scenery scenery() {
        return scenery;
    }

    Asking asking(At at) {
        return asking(at.facts());
    }

    private Asking asking(Facts facts) {
        return new Asking(scenery, facts, heldAt);
    }

    /** {@return what comes up at the start, with nothing done} @param notes collects what is only told */
    Set<String> foundAtStart(Set<String> notes) {
        Asking asking = asking(start);
        Set<String> found = broken(IN_STATES, null, asking, notes);
        found.addAll(broken(List.of(Rule.Form.AT_START), null, asking, notes));
        if (found.isEmpty() && asking.circuit().now().anythingShorted()) {
            found.add("flash");
        }
        return found;
    }

    boolean isEnd(At at) {
        return at.left() instanceof Process.Done;
    }

    /** {@return what comes up at the end of the procedure} @param notes collects what is only told */
    Set<String> foundAtEnd(At at, Set<String> notes) {
        Asking asking = asking(at);
        Set<String> found = broken(List.of(Rule.Form.AT_END, Rule.Form.EVENTUALLY), null, asking, notes);
        if (bound.ends().stream().anyMatch(c -> asking.ask(c, Map.of()) != Truth.TRUE)) {
            found.add("ending");
        }
        return found;
    }

    /** {@return the step at which everybody waits for ever, if they do} */
    Optional<Integer> stuck(At at) {
        Asking asking = asking(at);
        List<Process.Next> all = next(at);
        if (all.isEmpty() || all.stream().anyMatch(n -> doings.awaited(n.act(), asking) == Truth.TRUE)) {
            return Optional.empty();
        }
        return Optional.of(all.get(0).act().stepNumber());
    }

    private List<Process.Next> next(At at) {
        return Process.next(at.left(), item -> {
            int found = at.facts().get("found " + item);
            return found == 0 ? Optional.empty() : Optional.of(names.words(found).substring("outcome ".length()));
        });
    }

    /** {@return every act that may come now, with what it and what follows by itself come to} */
    List<Done> acts(At at) {
        Asking asking = asking(at);
        List<Done> all = new ArrayList<>();
        for (Process.Next next : next(at)) {
            if (doings.awaited(next.act(), asking) == Truth.TRUE) {
                all.addAll(act(at, asking, next));
            }
        }
        return all;
    }

    private List<Done> act(At at, Asking asking, Process.Next next) {
        PlainAct act = next.act();
        Set<String> notes = new TreeSet<>();
        if (!doings.possible(act, at.facts())) {
            return List.of(new Done(act, Optional.empty(), Set.of("cannot " + act.stepNumber()), notes));
        }
        Set<String> found = broken(List.of(Rule.Form.BEFORE), act, asking, notes);
        boolean kept = !next.first() || all(act.step().requires(), asking);
        if (!kept) {
            return List.of(new Done(act, Optional.empty(), or(found, "requirement " + act.stepNumber()), notes));
        }
        if (doings.seen(act, asking) == Truth.FALSE) {
            return List.of(new Done(act, Optional.empty(), or(found, "stop " + act.stepNumber()), notes));
        }
        List<Done> all = new ArrayList<>();
        Facts facts = doings.after(act, asking, at.facts());
        At raw = new At(next.rest(), recalling.after(act, asking, facts, this::asking));
        follow(next, asking, raw, PlainTrips.Happened.NOTHING, new Told(List.of(), found, notes), all);
        return all;
    }

    /** What was told on the way. @param by what came by itself @param found what came up first @param notes cautions */
    private record Told(List<String> by, Set<String> found, Set<String> notes) {}

    private void follow(
            Process.Next next, Asking left, At to, PlainTrips.Happened happened, Told before, List<Done> all) {
        PlainAct act = next.act();
        Asking then = asking(to);
        Set<String> notes = new TreeSet<>(before.notes());
        Set<String> found = before.found().isEmpty() ? broken(IN_STATES, null, then, notes) : before.found();
        if (then.circuit().now().anythingShorted()) {
            all.add(new Done(act, Optional.empty(), or(found, "flash"), notes, before.by()));
            return;
        }
        PlainTrips.Ways ways = doings.byItself(then, to.facts(), happened);
        Told told = new Told(before.by(), found, notes);
        all.add(ways.rest() ? rested(next, left, to, then, told) : new Done(act, Optional.empty(), found, notes, told.by()));
        if (found.isEmpty()) {
            for (PlainTrips.Move move : ways.moves()) {
                List<String> further = new ArrayList<>(before.by());
                further.add(move.device());
                Facts remembered = recalling.after(null, then, move.facts(), this::asking);
                follow(next, left, new At(to.left(), remembered), move.happened(), new Told(further, found, notes), all);
            }
        }
    }

    private Done rested(Process.Next next, Asking left, At to, Asking then, Told told) {
        PlainAct act = next.act();
        Set<String> notes = new TreeSet<>(told.notes());
        Set<String> found = told.found().isEmpty() ? broken(List.of(Rule.Form.AFTER), act, left, then, notes) : told.found();
        boolean expected = !next.last() || all(act.step().expects(), then);
        return new Done(
                act, Optional.of(to), expected ? found : or(found, "expectation " + act.stepNumber()), notes, told.by());
    }

    private static Set<String> or(Set<String> found, String otherwise) {
        return found.isEmpty() ? Set.of(otherwise) : found;
    }

    private static boolean all(List<Condition> conditions, Asking asking) {
        return conditions.stream().allMatch(c -> asking.ask(c, Map.of()) == Truth.TRUE);
    }

    private Set<String> broken(List<Rule.Form> forms, PlainAct act, Asking asking, Set<String> notes) {
        return broken(forms, act, asking, asking, notes);
    }

    /** @param left the state that the act leaves, which says what moments it is */
    private Set<String> broken(List<Rule.Form> forms, PlainAct act, Asking left, Asking asking, Set<String> notes) {
        Set<String> all = new TreeSet<>();
        for (Rule rule : rules) {
            if (forms.contains(rule.form())) {
                boolean stretch = rule.form() == Rule.Form.BETWEEN || rule.form() == Rule.Form.EVENTUALLY;
                for (Map<String, Thing> env :
                        stretch ? recalling.bindings(rule) : doings.bindings(rule, act, left)) {
                    Truth scope = doings.scope(rule, env, asking);
                    Truth kept = (stretch ? scope.and(Recalling.isOpen(rule, env, asking.facts())) : scope)
                            .not()
                            .or(rule.unless().map(c -> asking.ask(c, env)).orElse(Truth.FALSE));
                    if (rule.form() != Rule.Form.EVENTUALLY) {
                        kept = kept.or(asking.ask(rule.body(), env));
                    }
                    if (kept != Truth.TRUE) {
                        (rule.severity() == Rule.Severity.STOP ? all : notes).add(rule.name());
                    }
                }
            }
        }
        return all;
    }
}
