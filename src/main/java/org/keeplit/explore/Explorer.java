package org.keeplit.explore;

import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.BitSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.keeplit.condition.Truth;
import org.keeplit.electric.Electric;
import org.keeplit.program.Automaton;
import org.keeplit.program.Program;

/**
 * Explores every state of a program, breadth first.
 *
 * <p>The search has two passes. The first goes on only from states that are reached with no rule broken; a break
 * that it meets is a root break, and its trace is the shortest. The second goes on from there, so that rules that
 * are broken only after another are told apart from rules that hold.
 */
public final class Explorer {
    /** How many states between two looks at the clock. */
    private static final int CHECK_EVERY = 1 << 12;

    private final Machine machine;
    private final Program program;
    private final Limits limits;
    private final Watcher watcher;
    private final StateStore store;
    private final Scene scene;
    private final BitSet exercised = new BitSet();
    private final long[] judged;
    private final Map<String, Break> roots = new LinkedHashMap<>();
    private final Map<String, Break> later = new LinkedHashMap<>();
    private final BitSet endStates = new BitSet();
    private final BitSet dirty = new BitSet();
    private final TreeMap<Integer, ArrayDeque<Seed>> seeds = new TreeMap<>();
    private int[] depths = new int[1024];
    private String[] cause = new String[1024];
    private long transitions;
    private int depth;
    private final BitSet numberless = new BitSet();
    private Optional<String> cut = Optional.empty();
    private Optional<String> trouble = Optional.empty();
    private long started;

    /** A break before it is explained: where it came up and what was broken. */
    record Break(
            Finding.Kind kind,
            RuleInstance instance,
            Node node,
            int part,
            int state,
            int act,
            boolean unknown,
            int length,
            String after) {}

    /** A state that is reached only with a rule broken. */
    private record Seed(long[] state, int parent, int act, String cause) {}

    private Explorer(Program program, Electric electric, Limits limits, Watcher watcher) {
        this.machine = new Machine(new World(program, electric));
        this.program = program;
        this.limits = limits;
        this.watcher = watcher;
        this.store = new StateStore(program.layout().words());
        this.scene = machine.scene();
        this.judged = new long[machine.rules().size()];
    }

    /**
     * Explores.
     *
     * @param program the program
     * @param electric the electrical side of it
     * @param limits how far to go
     * @param watcher is told how it gets on
     * @return what was found
     */
    public static Outcome explore(Program program, Electric electric, Limits limits, Watcher watcher) {
        return new Explorer(program, electric, limits, watcher).run();
    }

    private Outcome run() {
        started = System.nanoTime();
        watcher.begins(
                program.bound().procedure().name(),
                program.automaton().size(),
                program.layout().bits());
        start();
        int next = 0;
        while (cut.isEmpty() && next < store.size()) {
            if (!dirty.get(next)) {
                expand(next, null);
            }
            next++;
            checkLimits(next);
        }
        secondPass();
        return new Reporting(machine, store, scene).outcome(this);
    }

    private void start() {
        long[] first = program.layout().initial();
        int number = add(first, -1, -1, 0);
        scene.at(first);
        boolean broken = judge(machine.inStates(), number, -1, 0, null);
        broken |= judge(machine.atStart(), number, -1, 0, null);
        if (scene.analysis().status().shortedAnywhere()) {
            found(new Break(Finding.Kind.FLASH, null, null, 0, number, -1, false, 0, null), "flash");
            broken = true;
        }
        if (broken) {
            dirty.set(number);
            seed(first, -1, -1, "the start", 0);
        }
    }

    private int add(long[] state, int parent, int act, int at) {
        int number = store.add(state, parent, act);
        if (number >= depths.length) {
            depths = Arrays.copyOf(depths, number * 2);
            cause = Arrays.copyOf(cause, number * 2);
        }
        depths[number] = at;
        depth = Math.max(depth, at);
        return number;
    }

    /** States that follow a break are gone on from afterwards, the nearest first. */
    private void secondPass() {
        while (cut.isEmpty() && !seeds.isEmpty()) {
            int at = seeds.firstKey();
            Seed seed = seeds.get(at).poll();
            if (seeds.get(at).isEmpty()) {
                seeds.remove(at);
            }
            int known = store.find(seed.state);
            if (known >= 0 && !(dirty.get(known) && cause[known] == null)) {
                continue;
            }
            int number = known >= 0 ? known : add(seed.state, seed.parent, seed.act, at);
            dirty.set(number);
            cause[number] = seed.cause;
            if (!isVoid(seed.state)) {
                expand(number, seed.cause);
            }
            checkLimits(store.size());
        }
    }

    private boolean isVoid(long[] state) {
        return scene.at(state).analysis().status().shortedAnywhere();
    }

    private void seed(long[] state, int parent, int act, String cause, int at) {
        seeds.computeIfAbsent(at, d -> new ArrayDeque<>()).add(new Seed(state, parent, act, cause));
    }

    /** Tries every act from a state. @param because the rule that was broken on the way, or null */
    private void expand(int number, String because) {
        long[] state = new long[program.layout().words()];
        store.load(number, state);
        int at = depths[number];
        List<Automaton.Move> moves = program.automaton().moves(program.layout().control(state));
        if (moves.isEmpty()) {
            end(number, state, because);
            return;
        }
        if (numberless.get(number)) {
            return;
        }
        int waits = -1;
        boolean goes = false;
        for (Automaton.Move move : moves) {
            scene.at(state);
            if (!machine.isOpen(move, state)) {
                continue;
            }
            if (machine.act(move.act().id()).awaited().eval(scene) != Truth.TRUE) {
                waits = waits < 0 ? move.act().id() : waits;
                continue;
            }
            goes = true;
            transitions++;
            attempt(number, state, move, at + 1, because);
        }
        if (waits >= 0 && !goes) {
            found(Finding.Kind.STUCK, number, waits, at, because);
        }
    }

    private void attempt(int number, long[] state, Automaton.Move move, int length, String because) {
        int act = move.act().id();
        ActCompiler.Compiled compiled = machine.act(act);
        if (compiled.possible().eval(scene) == Truth.FALSE) {
            found(Finding.Kind.CANNOT, number, act, length, because);
            return;
        }
        String broken = because;
        if (judge(machine.before(act), number, act, length, because)) {
            broken = because == null ? lastBroken : because;
        }
        if (move.first() && !stated(Finding.Kind.REQUIREMENT, requires(move), number, act, length, broken)) {
            return;
        }
        if (machine.seen(act, scene) == Truth.FALSE) {
            found(Finding.Kind.STOP, number, act, length, broken);
            return;
        }
        long[] next = machine.apply(move, scene);
        settle(number, next, move, length, broken);
    }

    private List<Node> requires(Automaton.Move move) {
        return machine.requires(move.act().stepNumber());
    }

    /** Judges a state that an act leads to, and keeps it. */
    private void settle(int number, long[] next, Automaton.Move move, int length, String broken) {
        int act = move.act().id();
        int known = store.find(next);
        String now = broken;
        // A state that is known was judged when it was first reached.
        if (known < 0 && judge(machine.inStates(), number, act, length, broken) && now == null) {
            now = lastBroken;
        }
        boolean flash = scene.analysis().status().shortedAnywhere();
        if (flash && now == null) {
            found(new Break(Finding.Kind.FLASH, null, null, 0, number, act, false, length, null), "flash");
            now = Finding.Kind.FLASH.word();
        }
        if (!flash) {
            if (judge(machine.after(act), number, act, length, now) && now == null) {
                now = lastBroken;
            }
            if (move.last()) {
                stated(
                        Finding.Kind.EXPECTATION,
                        machine.expects(move.act().stepNumber()),
                        number,
                        act,
                        length,
                        now);
            }
        }
        if (now != null) {
            seed(next, number, act, now, length);
        } else if (known < 0) {
            int added = add(next, number, act, length);
            // Where the load flow has no solution nothing is known, and nothing is gone on from.
            numberless.set(added, scene.trouble() != null);
        }
    }

    private void end(int number, long[] state, String because) {
        endStates.set(number);
        scene.at(state);
        int at = depths[number];
        judge(machine.atEnd(), number, -1, at, because);
        stated(Finding.Kind.ENDING, machine.ends(), number, -1, at, because);
    }

    /** The name of the rule that {@link #judge} last found broken. */
    private String lastBroken;

    /** Judges rules in the scene; {@return whether any is broken}. */
    private boolean judge(List<RuleInstance> instances, int state, int act, int length, String because) {
        boolean any = false;
        for (RuleInstance instance : instances) {
            judged[instance.number()]++;
            if (!exercised.get(instance.number()) && instance.isExercised(scene)) {
                exercised.set(instance.number());
            }
            Truth truth = instance.judge(scene);
            if (truth == Truth.UNKNOWN && scene.trouble() != null) {
                // A figure that could not be worked out says nothing, for or against.
                trouble = Optional.of(scene.trouble() + " " + place(state, act));
                return any;
            }
            if (truth != Truth.TRUE) {
                String name = machine.rules().get(instance.number()).name();
                if (!any) {
                    lastBroken = name;
                }
                any = true;
                found(
                        new Break(
                                Finding.Kind.RULE,
                                instance,
                                null,
                                0,
                                state,
                                act,
                                truth == Truth.UNKNOWN,
                                length,
                                because),
                        name);
            }
        }
        return any;
    }

    private String place(int state, int act) {
        return act < 0 ? "at the start" : "after " + depths[state] + " acts, at \"" + program.acts().get(act).text() + "\"";
    }

    /** Judges what the writer states; {@return whether all of it is so}. */
    private boolean stated(
            Finding.Kind kind, List<Node> nodes, int state, int act, int length, String because) {
        for (int i = 0; i < nodes.size(); i++) {
            Truth truth = nodes.get(i).eval(scene);
            if (truth != Truth.TRUE) {
                found(
                        new Break(kind, null, nodes.get(i), i, state, act, truth == Truth.UNKNOWN, length, because),
                        key(kind, act));
                return false;
            }
        }
        return true;
    }

    private void found(Finding.Kind kind, int state, int act, int length, String because) {
        found(new Break(kind, null, null, 0, state, act, false, length, because), key(kind, act));
    }

    private String key(Finding.Kind kind, int act) {
        return kind.word() + (act < 0 ? "" : " " + program.acts().get(act).stepNumber());
    }

    private void found(Break found, String key) {
        Map<String, Break> into = found.after == null ? roots : later;
        Break known = into.get(key);
        if (known == null || found.length < known.length) {
            into.put(key, found);
        }
    }

    private void checkLimits(int done) {
        if (store.size() > limits.states()) {
            cut = Optional.of("more than " + limits.states() + " states");
        } else if (done % CHECK_EVERY == 0) {
            if (System.nanoTime() - started > limits.time().toNanos()) {
                cut = Optional.of("longer than " + limits.time().toSeconds() + " s");
            } else if (store.bytes() > limits.bytes()) {
                cut = Optional.of("more than " + (limits.bytes() >> 20) + " MiB of states");
            } else if (!watcher.goOn(store.size(), store.size() - done)) {
                cut = Optional.of("stopped from outside");
            }
        }
    }

    // What the report needs.

    Map<String, Break> roots() {
        return roots;
    }

    Map<String, Break> later() {
        return later;
    }

    boolean isExercised(int rule) {
        return exercised.get(rule);
    }

    long judged(int rule) {
        return judged[rule];
    }

    long transitions() {
        return transitions;
    }

    int depth() {
        return depth;
    }

    int endings() {
        return endStates.cardinality();
    }

    Optional<String> cut() {
        return cut.isPresent() ? cut : trouble;
    }
}
