package org.keeplit.insight;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.keeplit.explore.Stepper;
import org.keeplit.outcome.Finding;
import org.keeplit.outcome.Harm;
import org.keeplit.program.Orders;
import org.keeplit.program.Parts;

/** Does whole parts of a procedure one after another, in whatever order is asked for, each in all ways in which its acts may come. */
final class PartRunner {
    private final Stepper stepper;
    private final Parts parts;
    private long acts;

    /** Begins. @param stepper of a program whose parts are free, see {@link Parts#free} */
    PartRunner(Stepper stepper, Parts parts) {
        this.stepper = stepper;
        this.parts = parts;
    }

    /**
     * Where some parts led.
     *
     * @param states all states that they may lead to; none if something went wrong
     * @param harm what went wrong first
     * @param trouble what could not be worked out
     * @param part the number of the part at which it did, or that could not be told; -1 at the end
     */
    record Ran(List<long[]> states, Optional<Harm> harm, Optional<String> trouble, int part) {
        boolean isSafe() {
            return harm.isEmpty() && trouble.isEmpty();
        }
    }

    /** {@return how many acts were tried} */
    long acts() {
        return acts;
    }

    List<long[]> start() {
        return List.of(stepper.start());
    }

    /** Does one part from each of some states. */
    Ran run(List<long[]> from, int part) {
        States met = new States(from);
        ArrayDeque<long[]> open = new ArrayDeque<>(from);
        States done = new States();
        while (!open.isEmpty()) {
            long[] state = open.poll();
            boolean goes = false;
            for (Orders.Move move : stepper.moves(state)) {
                if (parts.of(move.act().id()) != part) {
                    continue;
                }
                goes = true;
                acts++;
                Stepper.Tried tried = stepper.attempt(state, move);
                if (!tried.isSafe()) {
                    return new Ran(List.of(), tried.harms().stream().findFirst(), tried.trouble(), part);
                }
                for (long[] next : tried.states()) {
                    if (stepper.isDone(next, part)) {
                        done.add(next);
                    } else if (met.add(next)) {
                        open.add(next);
                    }
                }
            }
            if (!goes) {
                return new Ran(List.of(), Optional.of(stuck(part)), Optional.empty(), part);
            }
        }
        return new Ran(done.list(), Optional.empty(), Optional.empty(), part);
    }

    private Harm stuck(int part) {
        Parts.Part it = parts.all().get(part);
        return new Harm(
                Finding.Kind.STUCK,
                Optional.empty(),
                false,
                () -> "what " + it.name() + " waits for, or was to find, is not so",
                it.name(),
                Optional.empty());
    }

    /** Does some parts in an order and, if they are all, ends. */
    Ran run(List<long[]> from, List<Integer> order, boolean ends) {
        Ran now = new Ran(from, Optional.empty(), Optional.empty(), -1);
        for (int part : order) {
            now = run(now.states, part);
            if (!now.isSafe()) {
                return now;
            }
        }
        return ends ? end(now.states) : now;
    }

    private Ran end(List<long[]> states) {
        List<Harm> harms = new ArrayList<>();
        states.forEach(state -> harms.addAll(stepper.atEnd(state)));
        return new Ran(states, harms.stream().findFirst(), Optional.empty(), -1);
    }
}
