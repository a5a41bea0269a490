package org.keeplit.explore;

import com.google.common.collect.ImmutableList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.keeplit.condition.Truth;
import org.keeplit.outcome.Finding;
import org.keeplit.program.StateKey;
import org.keeplit.rule.Rule;

/** Judges rules and statements in the scene. */
final class Judging {
    private final Machine machine;
    private final Scene scene;
    private final Ledger ledger;
    private final Set<Object> alone;
    /** For each group of rules that read the same of a state whether any of it changed. */
    private final boolean[] asked;
    /** Whether a rule was broken or unknown, of those judged last. */
    private boolean anyBroken;

    /** @param ledger takes down what comes of it */
    Judging(Machine machine, Scene scene, Ledger ledger) {
        this(machine, scene, ledger, new HashSet<>());
    }

    private Judging(Machine machine, Scene scene, Ledger ledger, Set<Object> alone) {
        this.machine = machine;
        this.scene = scene;
        this.ledger = ledger;
        this.alone = alone;
        this.asked = new boolean[machine.readsInStates().groups()];
    }

    /** {@return the same for another thread, which knows what events break alone} @param other the same program, compiled for that thread */
    Judging beside(Machine other, Scene there, Ledger into) {
        return new Judging(other, there, into, alone);
    }

    /**
     * Where something is judged.
     *
     * @param state the number of the state from which an act is tried, or that is judged itself
     * @param act the act, or -1
     * @param reactions what happened by itself after the act, by number
     * @param length how many acts and reactions lead there, these included
     * @param because what was broken first on the way, or null
     */
    record At(int state, int act, ImmutableList<Integer> reactions, int length, String because) {
        At(int state, int act, int length, String because) {
            this(state, act, ImmutableList.of(), length, because);
        }

        /** {@return the same place with something broken, if nothing was broken before} */
        At after(String broken) {
            return because == null ? new At(state, act, reactions, length, broken) : this;
        }

        At marked(String broken) {
            return new At(state, act, reactions, length, broken);
        }

        /** {@return the place after one more reaction} @param all the reactions up to it */
        At further(ImmutableList<Integer> all) {
            return new At(state, act, all, length + 1, because);
        }
    }

    /**
     * A break before it is explained.
     *
     * @param instance the rule, for a broken rule
     * @param environments what the rule's variables stand for; more than one where the model cannot tell them apart
     * @param part which of the statements of a step, for what a writer states
     * @param at where it came up
     * @param unknown whether it only cannot be shown to be kept
     */
    record Break(
            Finding.Kind kind,
            RuleInstance instance,
            ImmutableList<Environment> environments,
            int part,
            At at,
            boolean unknown) {
        static Break ofRule(RuleInstance instance, ImmutableList<Environment> environments, At at, boolean unknown) {
            return new Break(Finding.Kind.RULE, instance, environments, 0, at, unknown);
        }

        static Break of(Finding.Kind kind, int part, At at, boolean unknown) {
            return new Break(kind, null, ImmutableList.of(Environment.EMPTY), part, at, unknown);
        }

        /** {@return what the rule's variables stand for, the first where the model cannot tell several apart} */
        Environment environment() {
            return environments.get(0);
        }

        /** {@return whether it was judged in the state that the act leaves, not in the one that it leads to} */
        boolean isJudgedBefore() {
            return switch (kind) {
                case REQUIREMENT, STOP, CANNOT, STUCK -> true;
                case RULE -> instance.rule().form() == Rule.Form.BEFORE;
                case EXPECTATION, ENDING, FLASH -> false;
            };
        }

        /** {@return how much it weighs} */
        Rule.Severity severity() {
            return instance == null ? Rule.Severity.STOP : instance.rule().severity();
        }
    }

    /** Where a rule was first put to the question. @param instance the rule with a binding @param at where */
    record Example(RuleInstance instance, At at) {}

    /** Judges rules; {@return the place, marked with the first rule that is broken, or the place itself if none is} */
    At rules(List<RuleInstance> instances, At at) {
        return rules(instances, null, at);
    }

    /**
     * Judges the rules that bind states, in a state that follows another in which all of them were kept. A rule that reads
     * nothing of what changed is kept again.
     *
     * @param kept the state that it follows; null if not all were kept there
     */
    At inStates(long[] kept, At at) {
        ReadsInGroups reads = machine.readsInStates();
        if (kept == null) {
            return rules(machine.inStates(), null, at);
        }
        reads.differ(kept, scene.state(), asked);
        if (!reads.remembersPositions() || !anyAskedOfPosition(reads)) {
            return rules(machine.inStates(), kept, at);
        }
        StateKey position = reads.position(scene.state());
        if (scene.keptPositions().contains(position)) {
            for (int i = 0; i < asked.length; i++) {
                asked[i] &= !reads.isOfPosition(i);
            }
            return rules(machine.inStates(), kept, at);
        }
        anyBroken = false;
        At after = rules(machine.inStates(), kept, at);
        if (!anyBroken) {
            scene.keptPositions().add(position);
        }
        return after;
    }

    private boolean anyAskedOfPosition(ReadsInGroups reads) {
        for (int i = 0; i < asked.length; i++) {
            if (asked[i] && reads.isOfPosition(i)) {
                return true;
            }
        }
        return false;
    }

    private At rules(List<RuleInstance> instances, long[] kept, At at) {
        At marked = at;
        for (int i = 0; i < instances.size(); i++) {
            if (kept != null && !asked[machine.readsInStates().group(i)]) {
                continue;
            }
            RuleInstance instance = instances.get(i);
            Truth truth = truth(instance, at);
            anyBroken |= truth != Truth.TRUE;
            if (truth == Truth.UNKNOWN && scene.trouble() != null) {
                // A figure that could not be worked out says nothing, for or against.
                ledger.judged(instances, i + 1);
                troubled(at);
                return marked;
            }
            if (truth != Truth.TRUE && instances == machine.inStates() && isByEventAlone(i, at)) {
                continue;
            }
            if (truth != Truth.TRUE && breaks(instance, truth, at)) {
                // Marked even where something was broken before, so that the caller sees that a rule was broken here.
                marked = marked == at ? at.marked(first(at, instance.rule().name())) : marked;
            }
        }
        ledger.judged(instances, instances.size());
        return marked;
    }

    /**
     * Judges the rules that bind states where only events happened since the start, and keeps which they break: what the same events break
     * again later is none of the procedure's doing.
     */
    void alone() {
        for (int i = 0; i < machine.inStates().size(); i++) {
            if (machine.inStates().get(i).judge(scene) != Truth.TRUE) {
                alone.add(List.of(i, machine.eventsIn(scene.state())));
            }
        }
    }

    /** {@return whether the events that happened break a rule with these bindings by themselves} @param number the rule's, in states */
    private boolean isByEventAlone(int number, At at) {
        boolean is = !alone.isEmpty()
                && machine.isAfterEvent(scene.state())
                && alone.contains(List.of(number, machine.eventsIn(scene.state())));
        if (is) {
            RuleInstance instance = machine.inStates().get(number);
            ledger.byEvent(Break.ofRule(instance, instance.environments(), at, false));
        }
        return is;
    }

    private Truth truth(RuleInstance instance, At at) {
        if (!ledger.isExercised(instance.number()) && instance.isExercised(scene)) {
            ledger.exercised(instance, at);
        }
        return instance.judge(scene);
    }

    /** Keeps a break. @return whether it stops: a caution or advice is told, and the way goes on as if nothing was broken */
    private boolean breaks(RuleInstance instance, Truth truth, At at) {
        // Each phase is a place of its own, also where the model cannot tell them apart.
        for (ImmutableList<Environment> onPhase : instance.byPhase()) {
            broken(Break.ofRule(instance, onPhase, at, truth == Truth.UNKNOWN));
        }
        return instance.rule().severity() == Rule.Severity.STOP;
    }

    private static String first(At at, String name) {
        return at.because() == null ? name : at.because();
    }

    private String place(At at) {
        return at.act() < 0
                ? "at the start"
                : "after " + (at.length() - 1) + " acts, at \""
                        + machine.world().program().acts().get(at.act()).text() + "\"";
    }

    /** Notes that a figure could not be worked out, so that nothing more is known of what follows. */
    void troubled(At at) {
        ledger.trouble(scene.trouble() + " " + place(at));
    }

    /** Judges what the writer states; {@return whether all of it is so}. What must hold at the end is told line by line. */
    boolean stated(Finding.Kind kind, List<Node> nodes, At at) {
        boolean all = true;
        for (int i = 0; i < nodes.size() && (all || kind == Finding.Kind.ENDING); i++) {
            Truth truth = nodes.get(i).eval(scene);
            if (truth != Truth.TRUE) {
                all = false;
                if (!machine.isAfterEvent(scene.state())) {
                    broken(Break.of(kind, i, at, truth == Truth.UNKNOWN));
                }
            }
        }
        return all;
    }

    /** Keeps something that no rule says. Once an event has happened, what the writer states is not what was planned for. */
    void found(Finding.Kind kind, At at) {
        if (machine.isAfterEvent(scene.state())) {
            return;
        }
        broken(Break.of(kind, 0, at, false));
    }

    private void broken(Break found) {
        ledger.broken(found, ViolationKey.of(found, machine.world().program()));
    }
}
