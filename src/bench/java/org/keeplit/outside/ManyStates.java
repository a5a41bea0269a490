package org.keeplit.outside;

import java.io.IOException;
import java.nio.file.Path;
import org.keeplit.outcome.Outcome;

/** Ten million states in a process of 512 MiB: three crews at switches of their own. */
public final class ManyStates {
    private ManyStates() {}

    /**
     * Prints a line.
     *
     * @param arguments nothing; the process starts another one with less memory, which is told to search
     * @throws IOException if that cannot be started
     * @throws InterruptedException if it is interrupted
     */
    public static void main(String[] arguments) throws IOException, InterruptedException {
        if (arguments.length == 0) {
            new ProcessBuilder(
                            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                            "-Xmx512m",
                            "-cp",
                            System.getProperty("java.class.path"),
                            ManyStates.class.getName(),
                            "search")
                    .inheritIO()
                    .start()
                    .waitFor();
            return;
        }
        SwitchingModel model = SwitchingModel.make(5, 24, 3, 241).apart();
        long start = System.nanoTime();
        Outcome outcome = SpinTest.prove(model, Runtime.getRuntime().availableProcessors());
        System.out.printf(
                "%,d states, %,d transitions, %.1f bytes a state, %.1f s, most memory %,d MiB, %s%n",
                outcome.states(), outcome.transitions(), (double) outcome.bytes() / outcome.states(),
                (System.nanoTime() - start) / 1e9, Runtime.getRuntime().maxMemory() >> 20, outcome.cut().orElse("all of them"));
    }
}
