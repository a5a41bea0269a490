package org.keeplit.explore;

import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import org.keeplit.condition.Truth;
import org.keeplit.program.Orders;
import org.keeplit.program.Program;

/**
 * Explores every state of a program, breadth first.
 *
 * <p>The search has two passes. The first goes on only from states that are reached with no rule broken; a break
 * that it meets is a root break, and its trace is the shortest. The second goes on from there, so that rules that
 * are broken only after another are told apart from rules that hold.
 */
final class Explorer implements Trying.Reached {
    /** How many states between two looks at the clock. */
    private static final int CHECK_EVERY = 1 << 8;

    private final Machine machine;
    private final Program program;
    private final Limits limits;
    private final Watcher watcher;
    private final StateStore store;
    private final Scene scene;
    private final Judging judging;
    private final Trying trying;
    private final BitSet endStates = new BitSet();
    private final BitSet dirty = new BitSet();
    private final TreeMap<Integer, ArrayDeque<Seed>> seeds = new TreeMap<>();
    private int[] depths = new int[1024];
    private String[] cause = new String[1024];
    private int depth;
    private final BitSet numberless = new BitSet();
    private final Edges edges;
    private final LateStates late = new LateStates();
    private Optional<String> cut = Optional.empty();
    private long started;
    /** The state that was looked for last, and its number; nothing once another is kept. Most states are found again, not new. */
    private long[] asked;

    private int askedNumber;

    /** A state that is reached only with a rule broken. */
    private record Seed(long[] state, int parent, int edge, String cause) {}

    private Explorer(Machine machine, Limits limits, Watcher watcher) {
        this.machine = machine;
        this.program = machine.world().program();
        this.limits = limits;
        this.watcher = watcher;
        this.store = new StateStore(program.layout().words());
        this.scene = machine.scene();
        this.judging = new Judging(machine, scene);
        this.trying = new Trying(machine, scene, judging, this);
        this.edges = new Edges(program.acts().size());
    }

    /**
     * Explores.
     *
     * @param machine the program with its rules
     * @param limits how far to go
     * @param watcher is told how it gets on
     * @return what was found
     * @throws Reactions.Unarmed if a device comes to trip for whose poles the program has no room
     * @throws NotAtRest if something trips at the start
     */
    static Explored explore(Machine machine, Limits limits, Watcher watcher) {
        return new Explorer(machine, limits, watcher).run();
    }

    private Explored run() {
        started = System.nanoTime();
        watcher.begins(
                program.bound().procedure().name(),
                machine.orders().count(),
                program.layout().bits());
        try {
            start();
            EventsAlone.judge(machine, scene, judging);
            firstPass();
            secondPass();
        } catch (OutOfMemoryError full) {
            // What was found so far stands; what was kept to save work goes, so that it can be told.
            machine.world().electric().forget();
            cut = Optional.of("more memory than the program was given");
        }
        Reporting reporting = new Reporting(machine, store, edges, scene, watcher.wantsReasons());
        return new Explored(machine, store, judging, reporting, this);
    }

    private void firstPass() {
        int next = 0;
        int done = 0;
        while (cut.isEmpty()) {
            while (next < store.size() && (dirty.get(next) || late.isWaiting(next))) {
                next++;
            }
            int depthOfNext = next < store.size() ? depths[next] : Integer.MAX_VALUE;
            int number = late.before(depthOfNext) ? late.poll() : next < store.size() ? next++ : -1;
            if (number < 0) {
                return;
            }
            expand(number, null);
            checkLimits(++done);
        }
    }

    private void start() {
        long[] first = program.layout().initial();
        int number = add(first, -1, -1, 0);
        scene.at(first);
        Judging.At here = new Judging.At(number, -1, 0, null);
        boolean broken = judging.rules(machine.inStates(), here) != here;
        broken |= judging.rules(machine.atStart(), here) != here;
        if (scene.analysis().status().shortedAnywhere()) {
            judging.found(Finding.Kind.FLASH, here);
            broken = true;
        } else if (!machine.reactions().isIdle()) {
            restsAtStart(number, here);
        }
        if (broken) {
            dirty.set(number);
            seed(first, -1, -1, "the start", 0);
        }
    }

    private void restsAtStart(int number, Judging.At here) {
        if (!machine.reactions().isKnown(scene)) {
            judging.troubled(here);
            numberless.set(number);
            return;
        }
        machine.reactions().atStart(scene).ifPresent(what -> {
            throw new NotAtRest(what);
        });
    }

    private int add(long[] state, int parent, int edge, int at) {
        int number = store.add(state, parent, edge);
        asked = null;
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
            int number = known >= 0 ? known : add(seed.state, seed.parent, seed.edge, at);
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

    private void seed(long[] state, int parent, int edge, String cause, int at) {
        seeds.computeIfAbsent(at, d -> new ArrayDeque<>()).add(new Seed(state, parent, edge, cause));
    }

    /** Tries every act from a state. @param because the rule that was broken on the way, or null */
    private void expand(int number, String because) {
        long[] state = new long[program.layout().words()];
        store.load(number, state);
        int at = depths[number];
        List<Orders.Move> moves = machine.orders().moves(state);
        if (moves.isEmpty()) {
            end(number, state, because);
        }
        if (numberless.get(number)) {
            return;
        }
        byChance(number, state, because);
        int waits = -1;
        boolean goes = false;
        for (Orders.Move move : moves) {
            scene.at(state);
            if (!machine.isOpen(move, state)) {
                continue;
            }
            int act = move.act().id();
            if (machine.waits(move, scene)) {
                waits = waits < 0 ? act : waits;
                continue;
            }
            goes = true;
            trying.attempt(move, because == null ? state : null, new Judging.At(number, act, at + 1, because));
        }
        if (waits >= 0 && !goes) {
            judging.found(Finding.Kind.STUCK, new Judging.At(number, waits, at, because));
        }
    }

    /** Whatever may happen with nobody doing it may happen in every state. */
    private void byChance(int number, long[] state, String because) {
        for (Orders.Move move : machine.byChance()) {
            if (machine.act(move.act().id()).possible().eval(scene.at(state)) != Truth.FALSE) {
                trying.attempt(
                        move,
                        because == null ? state : null,
                        new Judging.At(number, move.act().id(), depths[number] + 1, because));
            }
        }
    }

    @Override
    public Trying.Met met(long[] state) {
        int known = store.find(state);
        asked = state;
        askedNumber = known;
        return known < 0 ? Trying.Met.NEVER : dirty.get(known) ? Trying.Met.AFTER_A_BREAK : Trying.Met.KEPT;
    }

    @Override
    public void keep(long[] state, Judging.At at) {
        int known = state == asked ? askedNumber : store.find(state);
        int edge = edges.number(at.act(), at.reactions());
        if (at.because() != null) {
            seed(state, at.state(), edge, at.because(), at.length());
        } else if (known < 0) {
            int added = add(state, at.state(), edge, at.length());
            // Where the load flow has no solution nothing is known, and nothing is gone on from.
            numberless.set(added, scene.trouble() != null);
            if (!at.reactions().isEmpty()) {
                late.add(added, at.length());
            }
        } else if (late.isWaiting(known) && at.length() < depths[known]) {
            store.reach(known, at.state(), edge);
            depths[known] = at.length();
            late.add(known, at.length());
        }
    }

    private void end(int number, long[] state, String because) {
        endStates.set(number);
        scene.at(state);
        Judging.At at = new Judging.At(number, -1, depths[number], because);
        judging.rules(machine.atEnd(), at);
        judging.stated(Finding.Kind.ENDING, machine.ends(), at);
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

    long transitions() {
        return trying.transitions();
    }

    int depth() {
        return depth;
    }

    /** {@return the length of the shortest way to a state that was found} */
    int depth(int state) {
        return depths[state];
    }

    /** {@return whether a state is reached only with a rule broken on the way} */
    boolean isAfterBreak(int state) {
        return dirty.get(state);
    }

    int endings() {
        return endStates.cardinality();
    }

    Optional<String> cut() {
        return cut.isPresent() ? cut : judging.trouble();
    }
}
