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
     * @param byItself the devices that did something by themselves after the act, one after another
     */
    record Done(PlainAct act, Optional<At> to, Set<String> found, List<String> byItself) {
        Done(PlainAct act, Optional<At> to, Set<String> found) {
            this(act, to, found, List.of());
        }

        /** {@return whether no rule was broken; an expectation that is not true breaks none} */
        boolean keepsAllRules() {
            return found.stream().allMatch(f -> f.startsWith("expectation"));
        }
    }

    private final Bound bound;
    private final Names names;
    private final Scenery scenery;
    private final Doings doings;
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
        Writing writing = new Writing(names, site -> List.copyOf(circuit.feeding(site)));
        Process program = writing.write(Block.Order.IN_ORDER, bound.body());
        List<Deed> deeds = new ArrayList<>();
        collect(program, deeds);
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
        this.doings = new Doings(scenery, heldAt);
        this.start = new At(program, new Facts(normal.facts()));
    }

    private static void collect(Process process, List<Deed> deeds) {
        if (process instanceof Process.Once once) {
            once.ways().forEach(act -> deeds.addAll(act.deeds()));
        } else if (process instanceof Process.OfStep step) {
            step.left().forEach(p -> collect(p, deeds));
        } else if (process instanceof Process.Parts parts) {
            parts.left().forEach(p -> collect(p, deeds));
        } else if (process instanceof Process.Branch branch) {
            collect(branch.then(), deeds);
            collect(branch.otherwise(), deeds);
        } else if (process instanceof Process.Either either) {
            collect(either.body(), deeds);
            collect(either.skip(), deeds);
        }
    }

    At start() {
        return start;
    }

    Scenery scenery() {
        return scenery;
    }

    Asking asking(At at) {
        return new Asking(scenery, at.facts(), heldAt);
    }

    /** {@return what comes up at the start, with nothing done} */
    Set<String> foundAtStart() {
        Asking asking = asking(start);
        Set<String> found = broken(List.of(Rule.Form.ALWAYS, Rule.Form.WHILE), null, asking);
        if (found.isEmpty()) {
            found = broken(List.of(Rule.Form.AT_START), null, asking);
        } else {
            found.addAll(broken(List.of(Rule.Form.AT_START), null, asking));
        }
        if (asking.circuit().now().anythingShorted()) {
            found.add("flash");
        }
        return found;
    }

    boolean isEnd(At at) {
        return at.left() instanceof Process.Done;
    }

    /** {@return what comes up at the end of the procedure} */
    Set<String> foundAtEnd(At at) {
        Asking asking = asking(at);
        Set<String> found = broken(List.of(Rule.Form.AT_END), null, asking);
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
        if (!doings.possible(act, at.facts())) {
            return List.of(new Done(act, Optional.empty(), Set.of("cannot " + act.stepNumber())));
        }
        Set<String> found = broken(List.of(Rule.Form.BEFORE), act, asking);
        boolean kept = !next.first() || all(act.step().requires(), asking);
        if (!kept) {
            return List.of(new Done(act, Optional.empty(), or(found, "requirement " + act.stepNumber())));
        }
        if (doings.seen(act, asking) == Truth.FALSE) {
            return List.of(new Done(act, Optional.empty(), or(found, "stop " + act.stepNumber())));
        }
        List<Done> all = new ArrayList<>();
        At raw = new At(next.rest(), doings.after(act, asking, at.facts()));
        follow(next, raw, PlainTrips.Happened.NOTHING, List.of(), found, all);
        return all;
    }

    private void follow(
            Process.Next next, At to, PlainTrips.Happened happened, List<String> by, Set<String> before, List<Done> all) {
        PlainAct act = next.act();
        Asking then = asking(to);
        Set<String> found =
                before.isEmpty() ? broken(List.of(Rule.Form.ALWAYS, Rule.Form.WHILE), null, then) : before;
        if (then.circuit().now().anythingShorted()) {
            all.add(new Done(act, Optional.empty(), or(found, "flash"), by));
            return;
        }
        PlainTrips.Ways ways = doings.byItself(then, to.facts(), happened);
        all.add(ways.rest() ? rested(next, to, then, by, found) : new Done(act, Optional.empty(), found, by));
        if (found.isEmpty()) {
            for (PlainTrips.Move move : ways.moves()) {
                List<String> further = new ArrayList<>(by);
                further.add(move.device());
                follow(next, new At(to.left(), move.facts()), move.happened(), further, found, all);
            }
        }
    }

    private Done rested(Process.Next next, At to, Asking then, List<String> by, Set<String> before) {
        PlainAct act = next.act();
        Set<String> found = before.isEmpty() ? broken(List.of(Rule.Form.AFTER), act, then) : before;
        boolean expected = !next.last() || all(act.step().expects(), then);
        return new Done(
                act, Optional.of(to), expected ? found : or(found, "expectation " + act.stepNumber()), by);
    }

    private static Set<String> or(Set<String> found, String otherwise) {
        return found.isEmpty() ? Set.of(otherwise) : found;
    }

    private static boolean all(List<Condition> conditions, Asking asking) {
        return conditions.stream().allMatch(c -> asking.ask(c, Map.of()) == Truth.TRUE);
    }

    private Set<String> broken(List<Rule.Form> forms, PlainAct act, Asking asking) {
        Set<String> all = new TreeSet<>();
        for (Rule rule : rules) {
            if (forms.contains(rule.form())) {
                for (Map<String, Thing> env : doings.bindings(rule, act, asking)) {
                    Truth kept = doings.scope(rule, env, asking)
                            .not()
                            .or(rule.unless().map(c -> asking.ask(c, env)).orElse(Truth.FALSE))
                            .or(asking.ask(rule.body(), env));
                    if (kept != Truth.TRUE) {
                        all.add(rule.name());
                    }
                }
            }
        }
        return all;
    }
}
