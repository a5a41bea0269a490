package org.keeplit.log;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.keeplit.electric.Level;
import org.keeplit.explore.Stepper;
import org.keeplit.network.Conductor;
import org.keeplit.network.Element;
import org.keeplit.program.Act;
import org.keeplit.program.Orders;
import org.keeplit.program.Primitive;
import org.keeplit.program.Vertex;

/** Follows a log through the orders that the procedure allows. Steps are taken whole, in the order in which they were finished. */
final class Run {
    /** How many empty branches in a row are looked through for a step. */
    private static final int BRANCHES = 8;

    private final Stepper stepper;
    private long[] state;
    private final Map<List<String>, Integer> operations = new LinkedHashMap<>();

    Run(Stepper stepper) {
        this.stepper = stepper;
        this.state = stepper.start();
    }

    /**
     * A step that was followed.
     *
     * @param harm what goes wrong with it, in words
     * @param acts its acts, each with the state that it leaves
     */
    record Followed(Optional<String> harm, ImmutableList<Done> acts) {}

    /** An act. @param act the act @param from the state that it leaves */
    record Done(Act act, long[] from) {}

    /** {@return the numbers of the steps that may come now} */
    Set<Integer> next() {
        Set<Integer> all = new LinkedHashSet<>();
        next(state, BRANCHES, all);
        return all;
    }

    private void next(long[] from, int deep, Set<Integer> into) {
        for (Orders.Move move : stepper.moves(from)) {
            if (!goesOn(move)) {
                into.add(move.act().stepNumber());
            } else if (deep > 0) {
                stepper.attempt(from, move).states().stream().findFirst().ifPresent(to -> next(to, deep - 1, into));
            }
        }
    }

    private static boolean goesOn(Orders.Move move) {
        return SheetMaker.isGoingOn(move.act().step());
    }

    /** {@return whether all is done, or could be without doing anything more} */
    boolean isOver() {
        return over(state, BRANCHES);
    }

    private boolean over(long[] from, int deep) {
        return stepper.isOver(from)
                || deep > 0 && stepper.moves(from).stream()
                        .filter(Run::goesOn)
                        .anyMatch(move -> stepper.attempt(from, move).states().stream().anyMatch(to -> over(to, deep - 1)));
    }

    /**
     * Follows a step that may come now.
     *
     * @param step its number
     * @param found what a look found, by the words of its outcomes
     */
    Followed follow(int step, Optional<String> found) {
        long[] from = before(state, step, BRANCHES);
        List<Done> acts = new ArrayList<>();
        while (true) {
            long[] here = from;
            List<Orders.Move> moves = stepper.moves(here).stream().filter(m -> m.act().stepNumber() == step).toList();
            if (moves.isEmpty()) {
                return new Followed(Optional.of("it waits for what is not so"), ImmutableList.copyOf(acts));
            }
            Orders.Move move = moves.stream()
                    .filter(m -> found.isPresent() && m.act().primitives().stream()
                            .anyMatch(p -> p instanceof Primitive.ComeOut out && out.words().equals(found.get())))
                    .findFirst()
                    .orElse(moves.get(0));
            boolean last = stepper.isLast(move, here);
            Stepper.Tried tried = stepper.attempt(here, move);
            acts.add(new Done(move.act(), here));
            if (tried.states().isEmpty()) {
                String harm = tried.harms().isEmpty() ? tried.trouble().orElse("") : tried.harms().get(0).sentence();
                state = tried.worst().get().orElse(here);
                return new Followed(Optional.of(harm), ImmutableList.copyOf(acts));
            }
            count(move.act());
            from = tried.states().get(0);
            if (last) {
                state = from;
                return new Followed(Optional.empty(), ImmutableList.copyOf(acts));
            }
        }
    }

    /** {@return the state in which a step may come, past empty branches} */
    private long[] before(long[] from, int step, int deep) {
        for (Orders.Move move : stepper.moves(from)) {
            if (move.act().stepNumber() == step) {
                return from;
            }
        }
        for (Orders.Move move : stepper.moves(from)) {
            if (deep > 0 && goesOn(move)) {
                for (long[] to : stepper.attempt(from, move).states()) {
                    long[] there = before(to, step, deep - 1);
                    if (there != null) {
                        return there;
                    }
                }
            }
        }
        return null;
    }

    private void count(Act act) {
        act.primitives().forEach(p -> {
            if (p instanceof Primitive.MovePole pole && !pole.closed()) {
                operations.merge(List.of(pole.device(), pole.phases().toString()), 1, Integer::sum);
            }
        });
    }

    /** {@return how often something was opened} @param counter the device and the phases */
    int operations(List<String> counter) {
        return operations.getOrDefault(counter, 0);
    }

    /** {@return whether a bank's phase is dead now} */
    boolean isDead(String bank, Conductor phase) {
        Element.Shunt shunt = (Element.Shunt) stepper.program().bound().network().element(bank).orElseThrow();
        return stepper.standing(state).level(new Vertex.AtNode(shunt.node(), phase)).map(l -> l == Level.DEAD).orElse(false);
    }

    /** {@return what an act that measures must find} */
    ImmutableList<Stepper.Bound> bounds(Done done) {
        return stepper.bounds(done.act(), done.from());
    }

    /** {@return what must hold at the end and does not} */
    List<String> wrongAtEnd() {
        return stepper.atEnd(state).stream().map(h -> h.sentence()).toList();
    }
}
