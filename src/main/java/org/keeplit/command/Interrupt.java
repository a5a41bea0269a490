package org.keeplit.command;

import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;

/** Somebody stops a run with Ctrl-C: it ends where it stands, and tells what it has found so far before the process goes. */
final class Interrupt implements AutoCloseable {
    /** How long the process waits for what is to be told. */
    private static final int SECONDS = 30;

    private static final CompletableFuture<Integer> CODE = new CompletableFuture<>();

    private final Thread hook = new Thread(this::stop, "interrupt");
    private volatile boolean stopped;

    /** Begins to wait for it. */
    Interrupt() {
        Runtime.getRuntime().addShutdownHook(hook);
    }

    /** {@return whether the run is to end where it stands} */
    boolean isStopped() {
        return stopped;
    }

    /** The virtual machine goes when this returns; the run itself goes on beside it until then. */
    private void stop() {
        stopped = true;
        try {
            Runtime.getRuntime().halt(CODE.get(SECONDS, TimeUnit.SECONDS));
        } catch (InterruptedException | ExecutionException | TimeoutException late) {
            System.err.println("Stopped before it could be told what was found so far.");
        }
    }

    /** Everything is told. @param code the exit code, also of a process that is stopped */
    static void told(int code) {
        CODE.complete(code);
    }

    @Override
    public void close() {
        if (!stopped) {
            try {
                Runtime.getRuntime().removeShutdownHook(hook);
            } catch (IllegalStateException going) {
                // It was stopped just now, with all of it done: the hook waits for the exit code.
                stopped = true;
            }
        }
    }
}
