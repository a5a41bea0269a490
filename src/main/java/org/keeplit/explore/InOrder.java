package org.keeplit.explore;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.Function;

/** Does the same with many things, several at a time. What comes out does not depend on how many at a time. */
public final class InOrder {
    private InOrder() {}

    /**
     * Does something with each of some things.
     *
     * @param <A> the things
     * @param <B> what comes of each
     * @param things the things
     * @param threads how many are worked on at a time, 1 or more
     * @param work what is done; it must not depend on what is done with another
     * @return what came of each, in the order of the things
     */
    public static <A, B> ImmutableList<B> map(List<A> things, int threads, Function<A, B> work) {
        if (threads == 1 || things.size() == 1) {
            return things.stream().map(work).collect(ImmutableList.toImmutableList());
        }
        ExecutorService pool = Executors.newFixedThreadPool(threads);
        try {
            List<Future<B>> futures = new ArrayList<>();
            for (A thing : things) {
                futures.add(pool.submit(() -> work.apply(thing)));
            }
            ImmutableList.Builder<B> all = ImmutableList.builder();
            for (Future<B> future : futures) {
                all.add(future.get());
            }
            return all.build();
        } catch (ExecutionException failed) {
            if (failed.getCause() instanceof Error error) {
                throw error;
            }
            throw failed.getCause() instanceof RuntimeException own ? own : new IllegalStateException(failed.getCause());
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("stopped from outside", stopped);
        } finally {
            pool.shutdownNow();
        }
    }
}
