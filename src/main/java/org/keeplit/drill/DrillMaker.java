package org.keeplit.drill;

import com.google.common.collect.ImmutableList;
import com.google.common.hash.Hashing;
import java.nio.charset.StandardCharsets;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.keeplit.card.picture.SitePicture;
import org.keeplit.card.picture.WorkSite;
import org.keeplit.explore.Proving;
import org.keeplit.explore.Standing;
import org.keeplit.explore.Stepper;
import org.keeplit.network.Element;
import org.keeplit.outcome.Limits;
import org.keeplit.outcome.Outcome;
import org.keeplit.outcome.Watcher;
import org.keeplit.page.InputHash;
import org.keeplit.page.Proof;
import org.keeplit.procedure.Instance;
import org.keeplit.procedure.Person;
import org.keeplit.program.Act;
import org.keeplit.program.Astray;
import org.keeplit.program.FieldKey;
import org.keeplit.program.Orders;
import org.keeplit.program.Primitive;
import org.keeplit.program.Program;
import org.keeplit.program.StateKey;

/** Makes drills of procedures that hold. Steps are done whole; of the orders in which a step's acts may come the text's is taken. */
public final class DrillMaker {
    /** How many places there are at most beside those on the way as written. */
    private static final int ASIDE = 60;
    /** How many steps ahead something is offered too early. */
    private static final int AHEAD = 2;
    /** How many wrong choices are offered at a place at most, and right ones. */
    private static final int WRONG = 3;

    private static final int RIGHT = 3;

    private final Stepper stepper;
    private final Astray astray;
    private final Program program;
    private final Consequence consequence;
    private final ImmutableList<Element.Branch> site;
    private final Map<StateKey, Integer> numbers = new LinkedHashMap<>();
    private final List<Seen> seen = new ArrayList<>();
    private final Map<String, Integer> pictures = new LinkedHashMap<>();

    private DrillMaker(Stepper stepper, Astray astray) {
        this.stepper = stepper;
        this.astray = astray;
        this.program = stepper.program();
        this.consequence = new Consequence(stepper, astray);
        this.site = WorkSite.of(program);
    }

    /** A place while it is worked on. */
    private static final class Seen {
        private final long[] state;
        private final int done;
        private boolean asWritten;
        private final List<Step> steps = new ArrayList<>();

        Seen(long[] state, int done) {
            this.state = state;
            this.done = done;
        }
    }

    /** A right step from a place. @param acts its acts @param ends where it leads, by what was found */
    private record Step(int number, List<Act> acts, Map<Optional<String>, long[]> ends) {}

    /**
     * Makes a drill.
     *
     * @param instance the procedure, where it is explored and from which start
     * @param prepared the same, ready to be explored
     * @param limits how many states are looked at for the proof
     * @param watcher is told how it gets on
     * @return the drill; without places of what does not hold
     */
    public static Drill of(Instance instance, Proving.Prepared prepared, Limits limits, Watcher watcher) {
        Outcome outcome = Proving.proved(prepared, limits, watcher).outcome();
        Proof proof = Proof.of(outcome);
        if (proof != Proof.HOLDS) {
            return new Drill(instance, proof, InputHash.of(instance), new Drill.Next(-1, Optional.empty(), ImmutableList.of()), ImmutableList.of(), ImmutableList.of());
        }
        Astray astray = Astray.of(prepared.program());
        return Stepper.with(Proving.with(prepared, astray.program()), stepper -> new DrillMaker(stepper, astray).make(instance, watcher));
    }

    private Drill make(Instance instance, Watcher watcher) {
        walk();
        List<Drill.Place> places = new ArrayList<>();
        for (int i = 0; i < seen.size() && watcher.goOn(i, seen.size() - i); i++) {
            places.add(place(seen.get(i)));
        }
        if (places.size() < seen.size()) {
            return new Drill(
                    instance, Proof.UNDECIDED, InputHash.of(instance), new Drill.Next(-1, Optional.empty(), ImmutableList.of()),
                    ImmutableList.of(), ImmutableList.of());
        }
        return new Drill(
                instance, Proof.HOLDS, InputHash.of(instance), Skipping.on(places, new Drill.Next(0, Optional.empty(), ImmutableList.of())),
                Skipping.of(places), ImmutableList.copyOf(pictures.keySet()));
    }

    /** Goes through the way as written, then aside from it as far as there is room. */
    private void walk() {
        ArrayDeque<Integer> open = new ArrayDeque<>();
        chain(stepper.start(), 0, open);
        seen.forEach(s -> s.asWritten = true);
        int most = seen.size() + ASIDE;
        while (!open.isEmpty()) {
            Seen here = seen.get(open.poll());
            for (Step step : List.copyOf(here.steps)) {
                for (long[] end : step.ends.values()) {
                    if (!numbers.containsKey(StateKey.of(end)) && seen.size() < most) {
                        chain(end, here.done + 1, open);
                    }
                }
            }
        }
    }

    /** Adds a state and all that follows it in the order of the text, up to what is known. */
    private void chain(long[] from, int done, ArrayDeque<Integer> open) {
        long[] state = from;
        int steps = done;
        while (state != null && numbers.putIfAbsent(StateKey.of(state), seen.size()) == null) {
            open.add(seen.size());
            Seen here = new Seen(state, steps++);
            seen.add(here);
            steps(here);
            state = here.steps.isEmpty() ? null : here.steps.get(0).ends.values().iterator().next();
        }
    }

    /** Finds the steps that are right at a place, in the order of the text. */
    private void steps(Seen here) {
        Set<Integer> tried = new HashSet<>();
        for (Orders.Move move : right(here.state)) {
            if (tried.add(move.act().stepNumber())) {
                List<Act> acts = new ArrayList<>();
                Map<Optional<String>, long[]> ends = new LinkedHashMap<>();
                for (Orders.Move first : right(here.state)) {
                    if (first.act().stepNumber() == move.act().stepNumber()) {
                        follow(here.state, first, acts, ends);
                    }
                }
                here.steps.add(new Step(move.act().stepNumber(), acts.stream().distinct().toList(), ends));
            }
        }
    }

    /** Does a step from one of its first acts. Answers to a look are ends of their own; other acts of the step lead to the same end. */
    private void follow(long[] from, Orders.Move first, List<Act> acts, Map<Optional<String>, long[]> ends) {
        Optional<String> found = first.act().primitives().stream()
                .filter(Primitive.ComeOut.class::isInstance)
                .map(p -> ((Primitive.ComeOut) p).words())
                .findFirst();
        if (ends.containsKey(found)) {
            return;
        }
        long[] state = from;
        Orders.Move move = first;
        while (true) {
            acts.add(move.act());
            boolean last = stepper.isLast(move, state);
            state = stepper.attempt(state, move).states().get(0);
            if (last) {
                ends.put(found, state);
                return;
            }
            int step = first.act().stepNumber();
            move = right(state).stream().filter(m -> m.act().stepNumber() == step).findFirst().orElseThrow();
        }
    }

    private List<Orders.Move> right(long[] state) {
        return stepper.moves(state).stream().filter(m -> !astray.slips().containsKey(m.act().id())).toList();
    }

    private Drill.Place place(Seen here) {
        List<Drill.Option> options = new ArrayList<>();
        List<Step> known = here.steps.stream()
                .filter(s -> s.ends.values().stream().allMatch(end -> numbers.containsKey(StateKey.of(end))))
                .limit(RIGHT)
                .toList();
        known.forEach(step -> options.add(right(here, step)));
        Set<String> words = new LinkedHashSet<>();
        here.steps.forEach(step -> words.add(words(step.acts)));
        if (!here.steps.isEmpty()) {
            wrong(here).stream()
                    .filter(o -> words.add(o.words()))
                    .sorted(Comparator.comparing(Drill.Option::ending))
                    .limit(WRONG)
                    .forEach(options::add);
        }
        options.sort(Comparator.comparing((Drill.Option o) -> mixed(here.done + o.words())).thenComparing(Drill.Option::words));
        return new Drill.Place(
                here.done, here.asWritten, people(here.state), picture(here.state, here.state), ImmutableList.copyOf(options),
                known.isEmpty() ? ImmutableList.of() : Hints.of(known.get(0).acts, options));
    }

    /** Mixes the options so that their order says nothing, and is the same every time. */
    private static int mixed(String words) {
        return Hashing.murmur3_32_fixed().hashString(words, StandardCharsets.UTF_8).asInt();
    }

    private Drill.Option right(Seen here, Step step) {
        long[] first = step.ends.values().iterator().next();
        ImmutableList<Drill.Next> next = step.ends.entrySet().stream()
                .map(e -> new Drill.Next(numbers.get(StateKey.of(e.getValue())), e.getKey(), ImmutableList.of()))
                .collect(ImmutableList.toImmutableList());
        return new Drill.Option(
                words(step.acts), Drill.Ending.RIGHT, step.ends.size() > 1 ? ImmutableList.of() : stepper.changes(here.state, first), "", "", "", 0,
                ImmutableList.of(), picture(here.state, first), next);
    }

    /** {@return what is done, in words: who, and each act once; of an answer to a look only the look} */
    private static String words(List<Act> acts) {
        List<String> all = new ArrayList<>();
        for (Act act : acts) {
            boolean look = act.primitives().stream().anyMatch(Primitive.ComeOut.class::isInstance);
            String text = act.actor() + " " + (look ? act.text().replaceFirst(" and finds \".*\"$", "") : act.text());
            if (!all.contains(text)) {
                all.add(text);
            }
        }
        return String.join("; ", all);
    }

    /** {@return wrong choices at a place with what comes of them} */
    private List<Drill.Option> wrong(Seen here) {
        List<Drill.Option> all = new ArrayList<>();
        Step first = here.steps.get(0);
        for (Orders.Move move : stepper.moves(here.state)) {
            boolean slip = astray.slips().containsKey(move.act().id()) && !astray.leftOut().containsValue(move.act().id());
            if (slip && first.acts.stream().anyMatch(a -> a.id() == astray.slips().get(move.act().id()).act())) {
                all.add(option(here, move.act().actor() + " " + move.act().text(), List.of(move), Set.of()));
            }
        }
        if (first.acts.stream().anyMatch(DrillMaker::tells)) {
            leftOut(here, first).ifPresent(all::add);
        }
        early(here, all);
        return all;
    }

    /** {@return whether an act moves something, or finds something out} */
    private static boolean tells(Act act) {
        return act.primitives().stream()
                .noneMatch(p -> p instanceof Primitive.Nothing || p instanceof Primitive.Write || p instanceof Primitive.ComeOut);
    }

    /** Leaves a step out, and says what comes next instead. */
    private Optional<Drill.Option> leftOut(Seen here, Step step) {
        List<Orders.Move> out = new ArrayList<>();
        long[] state = here.state;
        for (int i = 0; i < step.acts.size(); i++) {
            Set<Integer> mine = new HashSet<>();
            step.acts.forEach(a -> mine.add(astray.leftOut().getOrDefault(a.id(), -1)));
            Optional<Orders.Move> move = stepper.moves(state).stream().filter(m -> mine.contains(m.act().id())).findFirst();
            if (move.isEmpty()) {
                return Optional.empty();
            }
            out.add(move.get());
            Stepper.Tried tried = stepper.attempt(state, move.get());
            if (!tried.isSafe()) {
                return Optional.empty();
            }
            state = tried.states().get(0);
        }
        return Optional.of(option(here, "nobody does this, and the crew goes on: " + words(step.acts), out, Set.of()));
    }

    /** Offers the next steps that move something and are not right yet. */
    private void early(Seen here, List<Drill.Option> all) {
        Set<Integer> now = new HashSet<>();
        here.steps.forEach(s -> now.add(s.number));
        long[] state = here.state;
        int offered = 0;
        for (int ahead = 0; offered < AHEAD; ahead++) {
            Integer number = numbers.get(StateKey.of(state));
            if (number == null || seen.get(number).steps.isEmpty()) {
                return;
            }
            Step step = seen.get(number).steps.get(0);
            if (ahead > 0 && now.add(step.number) && step.acts.stream().allMatch(DrillMaker::moves)) {
                List<Orders.Move> moves = step.acts.stream().map(Orders.Move::atWill).toList();
                Set<Integer> acts = new HashSet<>();
                step.acts.forEach(a -> acts.add(a.id()));
                all.add(option(here, words(step.acts), moves, acts));
                offered++;
            }
            state = step.ends.values().iterator().next();
        }
    }

    private static boolean moves(Act act) {
        return Stream.of(
                        Primitive.MovePole.class, Primitive.MoveEnd.class, Primitive.MoveClamp.class, Primitive.SetMode.class,
                        Primitive.RunToNeutral.class, Primitive.Carry.class, Primitive.GoUp.class, Primitive.ComeDown.class,
                        Primitive.Speak.class, Primitive.MoveTag.class, Primitive.Touch.class)
                .anyMatch(type -> act.primitives().stream().anyMatch(type::isInstance));
    }

    private Drill.Option option(Seen here, String words, List<Orders.Move> moves, Set<Integer> early) {
        Consequence.Came came = consequence.of(here.state, moves, early);
        return new Drill.Option(
                words, came.ending(), came.now(), came.told(), came.why(), came.by(), came.at(), came.lost(),
                picture(here.state, came.state()), ImmutableList.of());
    }

    private ImmutableList<String> people(long[] state) {
        Standing standing = stepper.standing(state);
        return program.bound().procedure().crew().stream()
                .map(p -> p.name() + ", " + p.title() + ": " + where(p, standing))
                .collect(ImmutableList.toImmutableList());
    }

    private String where(Person person, Standing standing) {
        int where = standing.value(new FieldKey.Where(person.name()));
        return person.desk() ? "at control" : where == 0 ? "on the ground" : "aloft at " + program.sites().get(where - 1);
    }

    /** {@return the number of a picture of the site} */
    private int picture(long[] before, long[] now) {
        if (site.isEmpty()) {
            return -1;
        }
        String svg = SitePicture.of(site, stepper.standing(before), stepper.standing(now), "The work site");
        return pictures.computeIfAbsent(svg, k -> pictures.size());
    }
}
