package org.keeplit.explore;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.keeplit.language.Library;
import org.keeplit.language.Reader;
import org.keeplit.outcome.Limits;
import org.keeplit.outcome.Outcome;
import org.keeplit.outcome.Watcher;
import org.keeplit.procedure.Procedure;
import org.keeplit.text.Problems;
import org.keeplit.text.Source;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Level;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;

/**
 * A check of 60 steps on a large feeder, warm: with rules over connection only, once with a bypass switch and nothing that trips,
 * so that no load flow is asked for, and once with jumpers, whose clamps ask for volts where they come off; and with rules over the
 * amperes and volts of every line and load. Without a load flow the search costs the same on any feeder. Cold, as a whole process:
 * {@link LargeCase} writes the files.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
public class LargeCheckBenchmark {
    /** How many nodes the feeder has. */
    @Param({"100", "1000", "10000", "100000"})
    public int nodes;

    /** The rulebooks. */
    @Param({CONNECTION_ONLY, "no-interruption", "no-interruption, ratings"})
    public String keeps;

    private static final String CONNECTION_ONLY = "no-interruption, nothing that asks for volts";

    private Library library;
    private Procedure procedure;

    /**
     * Reads the case once.
     *
     * @throws java.io.IOException if a shipped file cannot be read
     */
    @Setup
    public void read() throws java.io.IOException {
        library = new Reader().readSources(List.of(
                shipped("equipment/overhead.equipment"),
                shipped("rules/no-interruption.rules"),
                shipped("rules/ratings.rules"),
                new Source("large.network", isConnectionOnly() ? LargeCase.networkOfConnectionOnly(nodes) : LargeCase.network(nodes)),
                new Source(
                        "large.procedure",
                        isConnectionOnly() ? LargeCase.procedureOfConnectionOnly() : LargeCase.procedure(keeps))));
        procedure = library.procedures().get("LARGE");
    }

    private boolean isConnectionOnly() {
        return keeps.equals(CONNECTION_ONLY);
    }

    private static Source shipped(String file) throws java.io.IOException {
        Path path = Path.of("shared").resolve(file);
        return new Source(path.getFileName().toString(), Files.readString(path));
    }

    /** A program whose answers nobody has asked for yet. */
    @State(Scope.Thread)
    public static class Fresh {
        private Proving.Prepared prepared;
        private Machine machine;

        /** @param of the case */
        @Setup(Level.Invocation)
        public void prepare(LargeCheckBenchmark of) {
            prepared = Proving.prepare(
                            of.procedure, of.library.networks().get("large"), of.procedure.proofs().get(0), new Problems())
                    .orElseThrow();
            machine = Machine.of(prepared);
        }
    }

    /** {@return what the program is with its rules put on the feeder, without reading it} */
    @Benchmark
    public Object preparing() {
        Proving.Prepared prepared = Proving.prepare(procedure, library.networks().get("large"), procedure.proofs().get(0), new Problems())
                .orElseThrow();
        return Machine.of(prepared);
    }

    /** {@return what the search alone finds} */
    @Benchmark
    public Explored searching(Fresh fresh) {
        return Explorer.explore(() -> fresh.machine, fresh.prepared.search().on(1), Limits.USUAL, Watcher.NOBODY);
    }

    /** {@return what is found, without reading and preparing, the rules put on the feeder included} */
    @Benchmark
    public Outcome exploring(Fresh fresh) {
        return Proving.explore(fresh.prepared, Limits.USUAL, Watcher.NOBODY);
    }

    /** {@return what the check finds} */
    @Benchmark
    public Outcome checking() {
        return Proving.prove(
                        procedure,
                        library.networks().get("large"),
                        procedure.proofs().get(0),
                        Limits.USUAL,
                        Watcher.NOBODY,
                        new Problems())
                .orElseThrow();
    }
}
