package org.keeplit.explore;

import com.google.common.base.Throwables;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Supplier;
import org.keeplit.outcome.Finding;
import org.keeplit.outcome.Effort;
import org.keeplit.outcome.Limits;
import org.keeplit.outcome.Watcher;
import org.keeplit.program.Program;

/**
 * Explores every state of a program, breadth first.
 *
 * <p>The search has two passes. The first goes on only from states that are reached with no rule broken; a break
 * that it meets is a root break, and its trace is the shortest. The second goes on from there, so that rules that
 * are broken only after another are told apart from rules that hold.
 */
final class Explorer implements Trying.Reached, Expanding.Ends, Notes.Before {
    /** How many states between two looks at the clock. */
    private static final int CHECK_EVERY = 1 << 8;
    /** How many states of one depth are taken at once. */
    private static final int AT_ONCE = 1 << 11;

    private final Machine machine;
    private final Program program;
    private final Limits limits;
    private final Watcher watcher;
    private final StateStore store;
    private final Scene scene;
    private final Judging judging;
    private final Tally tally;
    private final Expanding expanding;
    private final Spreading spreading;
    private final BitSet endStates = new BitSet();
    private final BitSet dirty = new BitSet();
    private final TreeMap<Integer, ArrayDeque<Seed>> seeds = new TreeMap<>();
    private final Depths depths = new Depths();
    /** For each state that is reached only with a rule broken, one more than the number of what was broken first. */
    private final PackedNumbers causes = new PackedNumbers(1);

    private final List<String> broken = new ArrayList<>();
    private int depth;
    private final BitSet numberless = new BitSet();
    private final Edges edges;
    private final LateStates late = new LateStates();
    private Optional<String> cut = Optional.empty();
    private final long started;
    /** How many states were gone on from, and how many acts other threads tried. */
    private int done;

    private long elsewhere;
    private final LastFound found;

    /** A state that is reached only with a rule broken. */
    private record Seed(long[] state, int parent, int edge, String cause) {}

    private Explorer(Supplier<Machine> compiled, Search search, Limits limits, long began, Watcher watcher) {
        this.started = began;
        this.machine = Effort.within(limits, began, watcher, compiled);
        this.program = machine.world().program();
        this.limits = limits;
        this.watcher = watcher;
        this.store = StateStore.of(program.layout().words(), search.packs());
        this.found = new LastFound(store::find);
        this.scene = machine.scene();
        this.tally = new Tally(machine.rules().size());
        this.judging = new Judging(machine, scene, tally);
        this.expanding = new Expanding(machine, scene, judging, this, this);
        this.spreading = new Spreading(search, compiled, store, judging, tally, this);
        this.edges = new Edges(program.acts().size());
    }

    /**
     * Explores.
     *
     * @param compiled compiles the program with its rules, for each thread once
     * @param search how the search saves work
     * @param limits how far to go
     * @param began when the run began, by {@link System#nanoTime}: getting ready counts
     * @param watcher is told how it gets on
     * @return what was found
     * @throws Effort.Spent if a limit was reached before the search began
     * @throws Reactions.Unarmed if a device comes to trip for whose poles the program has no room
     * @throws NotAtRest if something trips at the start
     */
    static Explored explore(Supplier<Machine> compiled, Search search, Limits limits, long began, Watcher watcher) {
        return new Explorer(compiled, search, limits, began, watcher).run();
    }

    private Explored run() {
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
        } finally {
            spreading.close();
        }
        Reporting reporting = new Reporting(machine, store, edges, scene, watcher.wantsReasons());
        return new Explored(machine, store, tally, reporting, this);
    }

    private void firstPass() {
        Queue queue = new Queue();
        while (cut.isEmpty()) {
            List<Integer> numbers = queue.nextOfOneDepth();
            if (numbers.isEmpty()) {
                return;
            }
            if (spreading.isWorth(numbers.size())) {
                for (Spreading.Part part : spreading.expand(numbers, depth(numbers.get(0)))) {
                    handIn(part);
                }
            } else {
                expandAll(numbers);
            }
        }
    }

    /** The states that are still to be gone on from, the nearest first. */
    private final class Queue {
        private int next;

        /** {@return some states of the least depth that there is; none at the end} */
        List<Integer> nextOfOneDepth() {
            List<Integer> numbers = new ArrayList<>();
            int of = -1;
            while (numbers.size() < AT_ONCE) {
                while (next < store.size() && (dirty.get(next) || late.isWaiting(next))) {
                    next++;
                }
                int depthOfNext = next < store.size() ? depth(next) : Integer.MAX_VALUE;
                boolean fromLate = late.before(depthOfNext);
                int here = fromLate ? late.depth() : depthOfNext;
                if (here == Integer.MAX_VALUE || of >= 0 && here != of) {
                    break;
                }
                of = here;
                numbers.add(fromLate ? late.poll() : next++);
            }
            return numbers;
        }
    }

    private void expandAll(List<Integer> numbers) {
        for (int number : numbers) {
            if (cut.isPresent()) {
                return;
            }
            expand(number, null);
            checkLimits(++done);
        }
    }

    /** Takes in what another thread found, as if it were found now. */
    private void handIn(Spreading.Part part) {
        if (cut.isPresent()) {
            return;
        }
        if (store.size() + part.sheet().kept() > limits.states()) {
            // A limit is met at the same state, whoever looks.
            expandAll(part.numbers());
            return;
        }
        part.sheet().notes().forEach(this::handIn);
        tally.judged(part.sheet().judged());
        elsewhere += part.sheet().transitions();
        for (int i = 0; i < part.numbers().size() && cut.isEmpty(); i++) {
            checkLimits(++done);
        }
    }

    private void handIn(Notes.Note note) {
        if (note instanceof Notes.Kept kept) {
            keep(kept.state(), kept.at(), kept.numberless());
        } else if (note instanceof Notes.Judged judged) {
            if (met(judged.state()) == Trying.Met.NEVER) {
                tally.judged(machine.inStates(), judged.rules());
                judged.inside().forEach(this::handIn);
            }
        } else if (note instanceof Notes.Exercised exercised) {
            tally.exercised(exercised.instance(), exercised.at());
        } else if (note instanceof Notes.Broken broken) {
            tally.broken(broken.found(), broken.key());
        } else if (note instanceof Notes.ByEvent byEvent) {
            tally.byEvent(byEvent.found());
        } else if (note instanceof Notes.Trouble trouble) {
            tally.trouble(trouble.what());
        } else if (note instanceof Notes.End end) {
            end(end.number());
        } else if (note instanceof Notes.Failed failed) {
            Throwables.throwIfUnchecked(failed.cause());
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
            if (!broken) {
                judging.found(Finding.Kind.FLASH, here);
            }
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
        found.forget();
        depths.append(at);
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
            if (known >= 0 && !(dirty.get(known) && cause(known) == 0)) {
                continue;
            }
            int number = known >= 0 ? known : add(seed.state, seed.parent, seed.edge, at);
            dirty.set(number);
            because(number, seed.cause);
            if (!isVoid(seed.state)) {
                expand(number, seed.cause);
            }
            checkLimits(store.size());
        }
    }

    private int cause(int number) {
        return number < causes.size() ? (int) causes.get(number) : 0;
    }

    private void because(int number, String cause) {
        while (causes.size() <= number) {
            causes.append(0);
        }
        if (!broken.contains(cause)) {
            broken.add(cause);
        }
        causes.set(number, broken.indexOf(cause) + 1);
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
        expanding.expand(number, state, depth(number), because);
    }

    @Override
    public boolean isNumberless(int number) {
        return numberless.get(number);
    }

    @Override
    public boolean isWaiting(int number) {
        return late.isWaiting(number);
    }

    @Override
    public Trying.Met met(long[] state) {
        return met(found.find(state));
    }

    @Override
    public Trying.Met met(int known) {
        return known < 0 ? Trying.Met.NEVER : dirty.get(known) ? Trying.Met.AFTER_A_BREAK : Trying.Met.KEPT;
    }

    @Override
    public void keep(long[] state, Judging.At at) {
        keep(state, at, scene.trouble() != null);
    }

    private void keep(long[] state, Judging.At at, boolean unsolved) {
        int known = found.find(state);
        int edge = edges.number(at.act(), at.reactions());
        if (at.because() != null) {
            seed(state, at.state(), edge, at.because(), at.length());
        } else if (known < 0) {
            int added = add(state, at.state(), edge, at.length());
            // Where the load flow has no solution nothing is known, and nothing is gone on from.
            numberless.set(added, unsolved);
            if (!at.reactions().isEmpty()) {
                late.add(added, at.length());
            }
        } else if (late.isWaiting(known) && at.length() < depth(known)) {
            store.reach(known, at.state(), edge);
            depths.set(known, at.length());
            late.add(known, at.length());
        }
    }

    @Override
    public void end(int number) {
        endStates.set(number);
    }

    private void checkLimits(int done) {
        if (store.size() > limits.states()) {
            cut = Optional.of("more than " + limits.states() + " states");
        } else if (done % CHECK_EVERY == 0) {
            if (System.nanoTime() - started > limits.time().toNanos()) {
                cut = Optional.of("longer than " + limits.time().toSeconds() + " s");
            } else if (bytes() > limits.bytes()) {
                cut = Optional.of("more than " + (limits.bytes() >> 20) + " MiB of states");
            } else if (!watcher.goOn(store.size(), store.size() - done)) {
                cut = Optional.of("stopped from outside");
            }
        }
    }

    // What the report needs.

    long transitions() {
        return expanding.transitions() + elsewhere;
    }

    int depth() {
        return depth;
    }

    /** {@return the length of the shortest way to a state that was found} */
    int depth(int state) {
        return depths.get(state);
    }

    /** {@return whether a state is reached only with a rule broken on the way} */
    boolean isAfterBreak(int state) {
        return dirty.get(state);
    }

    /** {@return how many bytes the states take} */
    long bytes() {
        return store.bytes() + depths.bytes() + causes.bytes();
    }

    int endings() {
        return endStates.cardinality();
    }

    Optional<String> cut() {
        return cut.isPresent() ? cut : tally.trouble();
    }
}
