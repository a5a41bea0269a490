package org.keeplit.editor;

import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Future;
import java.util.concurrent.ScheduledThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.BiConsumer;
import org.keeplit.explore.AtOnePlace;
import org.keeplit.explore.Explored;
import org.keeplit.explore.Proving;
import org.keeplit.insight.AsWritten;
import org.keeplit.outcome.Limits;
import org.keeplit.procedure.Instance;
import org.keeplit.procedure.Procedure;
import org.keeplit.text.Problems;
import org.keeplit.verdict.Judgement;

/** Proves open files behind the editor's back, one at a time; the next edit of a file stops its proof. */
final class Proofs implements AutoCloseable {
    private static final Limits LIMITS = new Limits(2_000_000, Duration.ofSeconds(60), 256L << 20);
    /** How long a file must rest before it is proved. */
    private static final long REST_MS = 250;

    private final ScheduledThreadPoolExecutor thread = new ScheduledThreadPoolExecutor(1, work -> {
        Thread one = new Thread(work, "keeplit proof");
        one.setDaemon(true);
        one.setPriority(Thread.MIN_PRIORITY);
        return one;
    });
    private final Map<String, Begun> begun = new HashMap<>();
    private final BiConsumer<Page, Proved> told;

    /** Begins. @param told is told of a page's proof each time that a verdict is there, in the proof's thread */
    Proofs(BiConsumer<Page, Proved> told) {
        this.told = told;
        // What was stopped before its turn came would hold its page for as long as another file is being proved.
        thread.setRemoveOnCancelPolicy(true);
    }

    /** A proof that waits or runs. */
    private record Begun(AtomicBoolean stop, Future<?> work) {
        void end() {
            stop.set(true);
            work.cancel(false);
        }
    }

    /** Stops the proof of a file, if one runs. @param uri the file */
    synchronized void stop(String uri) {
        Begun one = begun.remove(uri);
        if (one != null) {
            one.end();
        }
    }

    /** Begins the proof of a page, if there is anything to prove; that of its older text stops. @param page the page */
    synchronized void begin(Page page) {
        stop(page.uri());
        if (thread.isShutdown() || page.library().givenProcedures().isEmpty()) {
            return;
        }
        AtomicBoolean stop = new AtomicBoolean();
        begun.put(page.uri(), new Begun(stop, thread.schedule(() -> prove(page, stop), REST_MS, TimeUnit.MILLISECONDS)));
    }

    private void prove(Page page, AtomicBoolean stop) {
        List<Instance> all = new ArrayList<>();
        for (Procedure procedure : page.library().givenProcedures()) {
            all.addAll(Instance.of(procedure, page.library().networks()));
        }
        List<Proved.Verdict> verdicts = new ArrayList<>();
        Problems problems = new Problems();
        for (int i = 0; i < all.size() && !stop.get(); i++) {
            Instance one = all.get(i);
            AtOnePlace.guarded(one, problems, () -> prove(one, stop, problems)).ifPresent(verdicts::add);
            if (!stop.get()) {
                told.accept(page, new Proved(page.version(), List.copyOf(verdicts), problems.sorted(), i == all.size() - 1));
            }
        }
    }

    private static Optional<Proved.Verdict> prove(Instance one, AtomicBoolean stop, Problems problems) {
        Optional<Explored> explored =
                Proving.explored(one.procedure(), one.network(), one.proof(), LIMITS, (states, open) -> !stop.get(), problems);
        return explored.map(found -> {
            Judgement judgement = Judgement.of(one, found.outcome());
            Optional<AsWritten> written = stop.get()
                    ? Optional.empty()
                    : Proving.using(one.procedure(), one.network(), one.proof(), new Problems(), AsWritten::of);
            return new Proved.Verdict(judgement, written);
        });
    }

    @Override
    public void close() {
        // Nothing begins between the two: a reading may still be under way.
        synchronized (this) {
            begun.values().forEach(Begun::end);
            thread.shutdownNow();
        }
    }
}
