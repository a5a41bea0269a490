package org.keeplit.explore;

import java.util.ArrayDeque;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.keeplit.condition.Truth;
import org.keeplit.network.Conductor;
import org.keeplit.outcome.Finding;
import org.keeplit.program.Orders;
import org.keeplit.program.Program;
import org.keeplit.program.Reaction;
import org.keeplit.program.StateKey;

/**
 * Tries acts: judges everything that comes up with one, lets come what comes by itself, and tells where it leads. Who tries
 * decides which acts, in which order, and what becomes of the states.
 */
final class Trying {
    private final Machine machine;
    private final Program program;
    private final Scene scene;
    private final Judging judging;
    private final Reached reached;
    private long transitions;
    /** The state that is gone on from, if all rules are kept in it. */
    private long[] leaving;
    /** The rules after the act that is tried now, as far as it brings them up. */
    private List<RuleInstance> due = List.of();

    /** Whether a state was met before. */
    enum Met {
        /** It was not, and has to be judged. */
        NEVER,
        /** It was, after a break; it was judged then, but voltages may meet in it. */
        AFTER_A_BREAK,
        /** It was, with nothing broken; it was judged then, and nothing meets in it. */
        KEPT
    }

    /** Is told where acts lead. */
    interface Reached {
        /** {@return whether a state was met before} */
        Met met(long[] state);

        /** The state that was asked for last, and never met, is judged. */
        default void judged() {}

        /**
         * An act led to a state that is at rest, or in which voltages meet, or of which a figure could not be worked out; the scene
         * still knows of the trouble.
         *
         * @param at how; with what was broken on the way, if anything was
         */
        void keep(long[] state, Judging.At at);
    }

    Trying(Machine machine, Scene scene, Judging judging, Reached reached) {
        this.machine = machine;
        this.program = machine.world().program();
        this.scene = scene;
        this.judging = judging;
        this.reached = reached;
    }

    /** {@return how many acts were tried, and how many reactions followed} */
    long transitions() {
        return transitions;
    }

    /**
     * Tries an act in the state at which the scene looks.
     *
     * @param move the act
     * @param kept that state, if all rules that bind states are kept in it; else null
     * @param at the number of that state, the act, and how long the way is with it
     */
    void attempt(Orders.Move move, long[] kept, Judging.At at) {
        transitions++;
        leaving = kept;
        int act = move.act().id();
        if (machine.act(act).possible().eval(scene) == Truth.FALSE) {
            judging.found(Finding.Kind.CANNOT, at);
            return;
        }
        Judging.At now = judging.rules(machine.before(act), at);
        int step = move.act().stepNumber();
        if (machine.orders().isFirst(move, scene.state())
                && !judging.stated(Finding.Kind.REQUIREMENT, machine.requires(step), now)) {
            return;
        }
        if (scene.trouble() != null) {
            return;
        }
        if (machine.seen(act, scene) == Truth.FALSE) {
            judging.found(Finding.Kind.STOP, now);
            return;
        }
        boolean last = machine.orders().isLast(move, scene.state());
        due = machine.after(act, scene);
        reach(machine.apply(move, scene), last, now);
    }

    /** Judges the state that an act leads to, lets come what comes by itself, and keeps what is at rest. */
    private void reach(long[] raw, boolean last, Judging.At before) {
        Judging.At at = judge(raw, before);
        if (at == null) {
            return;
        }
        if (machine.reactions().isIdle()) {
            rest(raw, last, at);
        } else {
            react(new Reacting(raw, machine.beginning(program.acts().get(before.act())), at), last);
        }
    }

    /** A state after which something may still come by itself. */
    private record Reacting(long[] state, Reactions.Since since, Judging.At at) {
        /** {@return what tells it from others as far as the future goes} */
        Object key() {
            return List.of(since.unordered(), at.because() == null, StateKey.of(state));
        }
    }

    private void react(Reacting first, boolean last) {
        ArrayDeque<Reacting> open = new ArrayDeque<>(List.of(first));
        Set<Object> met = new HashSet<>();
        while (!open.isEmpty()) {
            Reacting now = open.poll();
            Reactions.Options options = machine.reactions().options(look(now.state), now.since);
            if (options == null) {
                judging.troubled(now.at);
                reached.keep(now.state, now.at);
                continue;
            }
            if (options.atRest()) {
                rest(now.state, last, now.at);
            }
            for (Reaction reaction : options.next()) {
                transitions++;
                List<Conductor> moved = Reactions.moved(reaction, look(now.state), now.since);
                Reactions.Since since = now.since.then(reaction, moved);
                long[] next = machine.react(reaction, moved, scene);
                Judging.At there = judge(next, now.at.further(since.reactions()));
                if (there != null) {
                    Reacting further = new Reacting(next, since, there);
                    if (met.add(further.key())) {
                        open.add(further);
                    }
                }
            }
        }
    }

    private Scene look(long[] state) {
        return scene.state() == state ? scene : scene.at(state);
    }

    /** Judges a new state; {@return the place, or null if two voltages meet there and nothing can follow} */
    private Judging.At judge(long[] state, Judging.At before) {
        Met met = reached.met(state);
        if (met == Met.KEPT) {
            return before;
        }
        Judging.At at = before;
        if (met == Met.NEVER) {
            at = judging.inStates(leaving, before);
            reached.judged();
        }
        if (!scene.analysis().status().shortedAnywhere()) {
            return at;
        }
        if (at.because() == null) {
            judging.found(Finding.Kind.FLASH, at);
            at = at.after(Finding.Kind.FLASH.word());
        }
        reached.keep(state, at);
        return null;
    }

    /** Judges what follows an act once everything is at rest, and keeps the state. */
    private void rest(long[] state, boolean last, Judging.At before) {
        Judging.At at = judging.rules(due, before);
        if (last) {
            judging.stated(
                    Finding.Kind.EXPECTATION,
                    machine.expects(program.acts().get(before.act()).stepNumber()),
                    at);
        }
        reached.keep(state, at);
    }
}
