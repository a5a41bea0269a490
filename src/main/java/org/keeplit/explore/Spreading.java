package org.keeplit.explore;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Supplier;

/** Has several threads try what may come next from states of one depth, each with the program compiled for itself. */
final class Spreading implements AutoCloseable {
    /** How many states a thread takes at once. */
    private static final int CHUNK = 32;

    private final Search search;
    private final Supplier<Machine> machine;
    private final StateStore store;
    private final Judging judging;
    private final Tally tally;
    private final Notes.Before before;
    private final List<One> all = new ArrayList<>();
    private ExecutorService executor;

    /**
     * @param search how many threads there are
     * @param machine compiles the program once more
     * @param store the states; nobody adds to it while the threads are at work
     * @param judging knows what events break alone
     * @param tally knows which cases have come up
     * @param before what was found before
     */
    Spreading(
            Search search, Supplier<Machine> machine, StateStore store, Judging judging, Tally tally, Notes.Before before) {
        this.search = search;
        this.machine = machine;
        this.store = store;
        this.judging = judging;
        this.tally = tally;
        this.before = before;
    }

    /** {@return whether several threads are worth their while} @param states how many states there are */
    boolean isWorth(int states) {
        return search.threads() > 1 && states >= search.worth();
    }

    /** One thread's own. */
    private final class One {
        private final Machine own = machine.get();
        private final Scene scene = own.scene();
        private final Notes notes = new Notes(scene, own.rules().size(), store.finder(), before);
        private final Expanding expanding =
                new Expanding(own, scene, judging.beside(own, scene, notes), notes, notes);

        Notes.Sheet expand(List<Integer> numbers, int depth) {
            notes.begin(tally.exercised());
            long sofar = expanding.transitions();
            try {
                for (int number : numbers) {
                    long[] state = new long[scene.layout().words()];
                    store.load(number, state);
                    expanding.expand(number, state, depth, null);
                }
            } catch (RuntimeException | OutOfMemoryError failure) {
                // Raised again when its turn comes: what others found before it comes first.
                notes.failed(failure);
            }
            return notes.sheet(expanding.transitions() - sofar);
        }
    }

    /** The notes of some states. @param numbers the numbers of the states */
    record Part(List<Integer> numbers, Notes.Sheet sheet) {}

    /** {@return what may come next from states of one depth, in their order} @param numbers the numbers of the states */
    List<Part> expand(List<Integer> numbers, int depth) {
        if (executor == null) {
            executor = Executors.newFixedThreadPool(search.threads() - 1, work -> {
                Thread thread = new Thread(work, "exploring");
                thread.setDaemon(true);
                return thread;
            });
            for (int i = 0; i < search.threads(); i++) {
                all.add(new One());
            }
        }
        int chunks = (numbers.size() + CHUNK - 1) / CHUNK;
        Part[] parts = new Part[chunks];
        AtomicInteger next = new AtomicInteger();
        List<Future<?>> others = new ArrayList<>();
        for (int i = 1; i < search.threads(); i++) {
            One one = all.get(i);
            others.add(executor.submit(() -> work(one, numbers, depth, parts, next)));
        }
        work(all.get(0), numbers, depth, parts, next);
        for (Future<?> other : others) {
            await(other);
        }
        return List.of(parts);
    }

    private static void work(One one, List<Integer> numbers, int depth, Part[] parts, AtomicInteger next) {
        for (int chunk = next.getAndIncrement(); chunk < parts.length; chunk = next.getAndIncrement()) {
            List<Integer> mine = numbers.subList(chunk * CHUNK, Math.min(numbers.size(), (chunk + 1) * CHUNK));
            parts[chunk] = new Part(mine, one.expand(mine, depth));
        }
    }

    private static void await(Future<?> other) {
        boolean interrupted = false;
        while (true) {
            try {
                other.get();
                break;
            } catch (InterruptedException stop) {
                // Whoever interrupts is heard at the next look at the clock; half of the notes are of no use.
                interrupted = true;
            } catch (ExecutionException failure) {
                throw new IllegalStateException(failure.getCause());
            }
        }
        if (interrupted) {
            Thread.currentThread().interrupt();
        }
    }

    @Override
    public void close() {
        if (executor != null) {
            executor.shutdownNow();
        }
    }
}
